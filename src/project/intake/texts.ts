/** What is said of files that are taken in comes with the first of them. */
import intake from "../../../data/text/intake.json" with { type: "json" };
import { addCatalogue } from "../../text/catalogue.ts";

addCatalogue(intake);

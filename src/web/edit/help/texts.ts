/** What is said beside the fields comes with the first note that is opened. */
import help from "../../../../data/text/page-help.json" with { type: "json" };
import { addCatalogue } from "../../../text/catalogue.ts";

addCatalogue(help);

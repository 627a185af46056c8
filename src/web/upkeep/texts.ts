/** What upkeep says on the page comes with its band. */
import upkeep from "../../../data/text/page-upkeep.json" with { type: "json" };
import { addCatalogue } from "../../text/catalogue.ts";

addCatalogue(upkeep);

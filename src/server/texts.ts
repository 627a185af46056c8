/** What the description of the programs' interface says; pages do without. */
import api from "../../data/text/api.json" with { type: "json" };
import { addCatalogue } from "../text/catalogue.ts";

addCatalogue(api);

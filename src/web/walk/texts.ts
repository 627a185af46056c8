/** What the walk says comes with the walk. */
import walk from "../../../data/text/page-walk.json" with { type: "json" };
import { addCatalogue } from "../../text/catalogue.ts";

addCatalogue(walk);

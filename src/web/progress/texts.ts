/** What the site's part says comes with its band. */
import progress from "../../../data/text/page-progress.json" with { type: "json" };
import { addCatalogue } from "../../text/catalogue.ts";

addCatalogue(progress);

/** What the site pages say comes with them. */
import site from "../../../data/text/page-site.json" with { type: "json" };
import { addCatalogue } from "../../text/catalogue.ts";

addCatalogue(site);

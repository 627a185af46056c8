/** What the dialogs of kept projects say comes with them. */
import kept from "../../../data/text/page-kept.json" with { type: "json" };
import { addCatalogue } from "../../text/catalogue.ts";

addCatalogue(kept);

/** What the survey says comes with its band. */
import survey from "../../../data/text/page-survey.json" with { type: "json" };
import { addCatalogue } from "../../text/catalogue.ts";

addCatalogue(survey);

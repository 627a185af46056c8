/** Makes the description of the server's interface for other programs, from the table that its door reads. */

import { VERSION } from "../src/cli/version.ts";
import { apiDescription } from "../src/server/api/description.ts";

/** The text of docs/openapi.json, before the formatter folds short lists. */
export function apiDescriptionFile(): string {
  return `${JSON.stringify(apiDescription(VERSION), null, 2)}\n`;
}

/** Makes `schemas/project.schema.json`, the published schema of the project file, from the one that the program reads with. */
import { projectJsonSchema } from "../src/project/schema/project.ts";

/** The file's text. The same schema gives the same bytes, before the formatter folds short lists. */
export function projectSchemaFile(): string {
  return `${JSON.stringify(projectJsonSchema(), null, 2)}\n`;
}

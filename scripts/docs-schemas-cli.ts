/** Makes the published schemas of what the command line prints, from the shapes that its output is typed by. */
import * as z from "zod";
import { SHAPES } from "../src/cli/shapes/all.ts";

/** The files of `schemas/` by name. The same shapes give the same bytes, before the formatter folds short lists. */
export function commandSchemaFiles(): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(SHAPES).map(([name, shape]) => {
      const schema = z.toJSONSchema(shape, { target: "draft-2020-12", io: "output" });
      return [`${name}.schema.json`, `${JSON.stringify(schema, null, 2)}\n`];
    }),
  );
}

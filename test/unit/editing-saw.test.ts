/** What the saw can be asked, typed into the project file. Follows from RFC 6902 and the file's own schema; no outside source. */
import { expect, it } from "vitest";
import { applyPatch } from "../../src/project/edit.ts";
import { type SawField, setSaw } from "../../src/project/editing/saw.ts";
import { readDocument } from "../../src/project/read.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { example } from "../contract/cut-facade-examples.ts";

function typed(
  saw: unknown,
  field: SawField,
  value: number,
): { saw: Project["stock"]["saw"]; written: unknown } {
  const { project } = example("atelier-bouleau");
  const document = { ...project, stock: { ...project.stock, saw } } as unknown as Project;
  const before = readDocument(document, "demo");
  if (!before.ok) throw new Error(JSON.stringify(before.findings));
  const patched = applyPatch(
    document,
    setSaw({ project: before.project, document }, field, value).operations,
  );
  const read = patched.ok ? readDocument(patched.document, "demo") : undefined;
  if (!read?.ok) throw new Error("the change does not fit");
  return { saw: read.project.stock.saw, written: (read.document as Project).stock.saw };
}

const BARE = { kerf: 3, sheetTrim: 0, boardEndTrim: 10, boardEdgeTrim: 3 };

it("each is written, told before or not", () => {
  expect(typed(BARE, "kerf", 2.4).saw).toEqual({ ...BARE, kerf: 2.4 });
  expect(typed(BARE, "fence", 650).saw).toEqual({ ...BARE, fence: 650 });
  expect(typed({ ...BARE, fence: 1300 }, "fence", 650).saw).toEqual({ ...BARE, fence: 650 });
  expect(typed(BARE, "lift", 23).saw).toEqual({ ...BARE, lift: 23 });
});

it("a table that was not told is square until its other side is typed", () => {
  expect(typed(BARE, "table-length", 3100).saw.table).toEqual({ length: 3100, width: 3100 });
  const table = { length: 3100, width: 1300 };
  expect(typed({ ...BARE, table }, "table-width", 1250).saw.table).toEqual({ length: 3100, width: 1250 });
});

it("a length stays in feet and inches where the file has it so", () => {
  expect(typed({ ...BARE, fence: "4'" }, "fence", 609.6).written).toMatchObject({ fence: "2'-0\"" });
});

/** The drawings of a set that are drawn to scale, a DXF each; covers, tables and lists have their own files. */
import type { SheetKind } from "../../project/schema/sheets.ts";
import type { Reader } from "../../text/say.ts";
import type { DrawingPaper } from "../drawings/facts.ts";
import { dxfOfDrawing } from "./dxf.ts";

const TO_SCALE: ReadonlySet<SheetKind> = new Set<SheetKind>([
  "key-plan",
  "set-out",
  "battens",
  "packing",
  "fixings",
  "wind",
  "sections",
  "plan-sections",
  "drilling",
  "cut-sheets",
  "bent-metal",
]);

export interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export function isToScale({ kind }: Pick<DrawingPaper, "kind">): boolean {
  return TO_SCALE.has(kind);
}

export function dxfFiles(papers: readonly DrawingPaper[], reader: Reader): NamedBytes[] {
  return papers
    .filter(isToScale)
    .map(({ name, drawing }) => ({ name: `${name}.dxf`, bytes: dxfOfDrawing(drawing, reader) }));
}

/** The sheet set of a project: every kind of sheet that is asked for, numbered, on its paper. */
import { SHEET_KINDS, type SheetKind } from "../../project/schema/sheets.ts";
import type { Reader } from "../../text/say.ts";
import { renderSceneSvg } from "../svg/scene-svg.ts";
import { renderSheetSvg } from "../svg/sheet-svg.ts";
import type { Drawing, DrawingFacts, DrawingPaper, KindFacts, NumberedDrawing } from "./facts.ts";
import { INDEXES, KINDS } from "./kinds/index.ts";
import { onPaper, onUsualPaper, tableRoom } from "./paper.ts";

export type { DrawingFacts, DrawingPaper } from "./facts.ts";

/** A drawing as an SVG document at full size. */
export interface DrawingSheet extends Pick<DrawingPaper, "name" | "kind" | "title"> {
  readonly svg: string;
}

export function drawingSheets(facts: DrawingFacts): DrawingSheet[] {
  return drawingPapers(facts).map((paper) => drawingSheet(paper, facts.reader));
}

export function drawingSheet({ name, kind, title, drawing }: DrawingPaper, reader: Reader): DrawingSheet {
  const options = { reader, theme: "print" } as const;
  return {
    name,
    kind,
    title,
    svg: "viewports" in drawing ? renderSheetSvg(drawing, options) : renderSceneSvg(drawing, options),
  };
}

export function drawingPapers(facts: DrawingFacts): DrawingPaper[] {
  const { design, reader } = facts;
  const asked = { units: reader.units, paper: design.project.sheets?.paper };
  const set = numberedSet({ ...facts, room: tableRoom(asked) });
  return set.flatMap((one): DrawingPaper[] => {
    const label = `${initials(design.project.title)}-${String(one.number).padStart(2, "0")}`;
    const drawing = onPaper(one, { design, ...asked, label, of: set.length });
    return drawing ? [{ name: one.name, kind: one.kind, title: one.title, label, drawing }] : [];
  });
}

/** Indexes say how many sheets there are, themselves among them: they are drawn again until that holds. */
const MOST_ROUNDS = 4;

function numberedSet(facts: KindFacts): NumberedDrawing[] {
  const { project } = facts.design;
  const asked = { units: facts.reader.units, paper: project.sheets?.paper };
  const order = [...new Set(facts.only ?? project.sheets?.order ?? SHEET_KINDS)];
  const leaveOut = new Set(project.sheets?.leaveOut);
  const onSheets = (drawings: readonly Drawing[]): Drawing[] =>
    drawings.flatMap((one) => onUsualPaper(one, asked)).filter(({ name }) => !leaveOut.has(name));
  const made = new Map<SheetKind, Drawing[]>();
  for (const kind of order) {
    const make = KINDS[kind];
    if (make) made.set(kind, onSheets(make(facts)));
  }
  let set = numbered(order, made);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    for (const kind of order) {
      const make = INDEXES[kind];
      if (make) made.set(kind, onSheets(make(facts, set)));
    }
    const next = numbered(order, made);
    const settled = next.length === set.length;
    set = next;
    if (settled) break;
  }
  return set;
}

function numbered(
  order: readonly SheetKind[],
  made: ReadonlyMap<SheetKind, readonly Drawing[]>,
): NumberedDrawing[] {
  return order
    .flatMap((kind) => (made.get(kind) ?? []).map((one) => ({ ...one, kind })))
    .map((one, at) => ({ ...one, number: at + 1, title: one.scenes[0]?.title ?? one.name }));
}

function initials(title: string): string {
  const words = title.match(/[\p{L}\p{N}]+/gu) ?? [];
  return words
    .slice(0, 4)
    .map((word) => [...word][0]?.toUpperCase() ?? "")
    .join("");
}

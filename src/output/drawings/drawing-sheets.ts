/** The sheet set of a project: every kind of sheet that is asked for, numbered, on its paper. */
import { SHEET_KINDS, type SheetKind } from "../../project/schema/sheets.ts";
import type { Scene } from "../../scene/model.ts";
import type { Reader } from "../../text/say.ts";
import { renderSceneSvg } from "../svg/scene-svg.ts";
import { renderSheetSvg } from "../svg/sheet-svg.ts";
import { type DrawMemo, NO_MEMO } from "./draw-memo.ts";
import type { DrawingFacts, DrawingPaper, DrawingPart, KindFacts, ListedDrawing } from "./facts.ts";
import { INDEXES, KINDS } from "./kinds/index.ts";
import { linkedScenes, type Shown, targetsOf } from "./links.ts";
import { onPaper, onUsualPaper, tableRoom, usualPaper } from "./paper.ts";
import { sheetState } from "./revision.ts";

export type { DrawingFacts, DrawingPaper } from "./facts.ts";

/** A drawing as an SVG document at full size. */
export interface DrawingSheet extends Pick<DrawingPaper, "name" | "kind" | "title"> {
  readonly svg: string;
}

/** A sheet that the project leaves out. */
export interface LeftOut extends Pick<DrawingPaper, "name" | "kind" | "title"> {
  /** How many sheets of the set stand before its place. */
  readonly after: number;
}

/** A set as it is shown: its sheets, and those that could be among them. */
export interface DrawnSet {
  readonly sheets: readonly DrawingSheet[];
  readonly leftOut: readonly LeftOut[];
}

export function drawingSheets(facts: DrawingFacts, memo = NO_MEMO): readonly DrawingSheet[] {
  return drawnSet(facts, memo).sheets;
}

/** A memo draws again only what was drawn from something else than before; the sheets are the same either way. */
export function drawnSet(facts: DrawingFacts, memo = NO_MEMO): DrawnSet {
  const set = sheetSet(facts, { memo, keep: true });
  const sheets = [...set.papers()].map((paper) => {
    memo.byThemselves([paper]);
    return memo.recall(sheetFor, { paper, reader: facts.reader });
  });
  return { sheets, leftOut: set.leftOut };
}

function sheetFor({ paper, reader }: { paper: DrawingPaper; reader: Reader }): DrawingSheet {
  return drawingSheet(paper, reader);
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

/** The whole set at once. */
export function drawingPapers(facts: DrawingFacts, memo = NO_MEMO): DrawingPaper[] {
  return [...sheetSet(facts, { memo, keep: true }).papers()];
}

/** A set whose sheets are known and drawn one after another. */
export interface SheetSet {
  readonly count: number;
  /** In their places, of the kinds that are asked for. */
  readonly leftOut: readonly LeftOut[];
  /** Each is let go before the next is drawn, unless the set keeps them. */
  papers(): Generator<DrawingPaper>;
}

/** A sheet in its set, its views put aside: they are drawn again when its turn comes. */
interface Listed extends ListedDrawing, Shown {
  readonly scenes: readonly Scene[] | undefined;
}

/**
 * Every sheet must be counted before the first is numbered. Without `keep` the views are drawn twice, to count them and to hand them
 * out, so that no more than one sheet's are held at a time; with it once, and held together.
 */
export function sheetSet(
  facts: DrawingFacts,
  { memo = NO_MEMO, keep = false }: { readonly memo?: DrawMemo; readonly keep?: boolean } = {},
): SheetSet {
  const { design, reader } = facts;
  const { project } = design;
  const { units, denominator } = reader;
  const asked = { units, paper: project.sheets?.paper };
  memo.nextSet();
  memo.byThemselves(design.facade.faces);
  const { revision, date, changed } = sheetState(design);
  const own: KindFacts = {
    ...facts,
    reader: { units, denominator },
    language: reader.language,
    room: tableRoom(asked),
    paper: usualPaper(asked),
    changed: new Set(changed),
    memo,
  };
  const { set, leftOut } = numberedSet(own, keep);
  const shared = {
    ...asked,
    of: set.length,
    project: project.title,
    revision,
    date,
    waivers: project.waivers ?? [],
  };
  const targets = targetsOf(set);
  const paperOf = (sheet: Listed, drawn: readonly Scene[]) => {
    const { name, kind, type, number, title } = sheet;
    const paper = sheet.paper ?? asked.paper;
    const label = `${initials(project.title)}-${String(number).padStart(2, "0")}`;
    const scenes = linkedScenes(drawn, { targets, memo });
    memo.byThemselves(scenes);
    return memo.recall(onPaper, { name, kind, type, scenes, number, title, label, ...shared, paper });
  };
  return {
    count: set.length,
    leftOut,
    *papers() {
      let drawn: { readonly kind: SheetKind; readonly sheets: Iterator<DrawingPart> } | undefined;
      for (const sheet of set) {
        const { kind, scenes } = sheet;
        if (!scenes && drawn?.kind !== kind) drawn = { kind, sheets: onSheets(own, kind, set) };
        const paper = paperOf(sheet, scenes ?? drawn?.sheets.next().value?.scenes ?? []);
        if (paper) yield paper;
      }
    },
  };
}

/** Drawings of one kind on as many sheets as they take, less those that the project leaves out. */
function* onSheets(facts: KindFacts, kind: SheetKind, set: readonly ListedDrawing[]): Generator<DrawingPart> {
  for (const { drawing, out } of everySheet(facts, kind, set)) if (!out) yield drawing;
}

/** The same with those that are left out. */
function* everySheet(
  facts: KindFacts,
  kind: SheetKind,
  set: readonly ListedDrawing[],
): Generator<{ readonly drawing: DrawingPart; readonly out: boolean }> {
  const { sheets } = facts.design.project;
  const leaveOut = new Set(sheets?.leaveOut);
  const asked = { units: facts.reader.units, paper: sheets?.paper };
  for (const drawing of KINDS[kind]?.(facts) ?? INDEXES[kind]?.(facts, set) ?? []) {
    for (const one of onUsualPaper(drawing, asked)) yield { drawing: one, out: leaveOut.has(one.name) };
  }
}

/** Indexes say how many sheets there are, themselves among them: they are drawn again until that holds. */
const MOST_ROUNDS = 4;

function numberedSet(facts: KindFacts, keep: boolean): Numbered {
  const { project } = facts.design;
  const order = [...new Set(facts.only ?? project.sheets?.order ?? SHEET_KINDS)];
  const made = new Map<SheetKind, Unnumbered[]>();
  const list = (kind: SheetKind, set: readonly Listed[]): Unnumbered[] =>
    Array.from(everySheet(facts, kind, set), ({ drawing: { scenes, ...one }, out }) => ({
      ...one,
      title: scenes[0]?.title ?? one.name,
      shows: scenes.map(({ id }) => id),
      scenes: keep && !out ? scenes : undefined,
      out,
    }));
  for (const kind of order) if (KINDS[kind]) made.set(kind, list(kind, []));
  let all = numbered(order, made);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    for (const kind of order) if (INDEXES[kind]) made.set(kind, list(kind, all.set));
    const next = numbered(order, made);
    const settled = next.set.length === all.set.length;
    all = next;
    if (settled) break;
  }
  return all;
}

type Unnumbered = Omit<Listed, "kind" | "number"> & { readonly out: boolean };

interface Numbered {
  readonly set: Listed[];
  readonly leftOut: LeftOut[];
}

function numbered(
  order: readonly SheetKind[],
  made: ReadonlyMap<SheetKind, readonly Unnumbered[]>,
): Numbered {
  const all: Numbered = { set: [], leftOut: [] };
  for (const kind of order) {
    for (const { out, ...one } of made.get(kind) ?? []) {
      const { name, title } = one;
      if (out) all.leftOut.push({ name, kind, title, after: all.set.length });
      else all.set.push({ ...one, kind, number: all.set.length + 1 });
    }
  }
  return all;
}

function initials(title: string): string {
  const words = title.match(/[\p{L}\p{N}]+/gu) ?? [];
  return words
    .slice(0, 4)
    .map((word) => [...word][0]?.toUpperCase() ?? "")
    .join("");
}

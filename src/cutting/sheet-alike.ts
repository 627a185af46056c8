/**
 * At one cost and with offcuts no smaller: sheets of the same pieces are all cut in the one way that leaves the largest offcut and then
 * sets the saw least, and follow one another. Without chance, and apart from the search, which so finds the same at every effort.
 */

import { countOf, inOrder, type Settings } from "./settings.ts";
import type { Layout, PieceType, Region, SheetJob, Way } from "./sheet-nodes.ts";
import { lay, Sheet } from "./sheet-nodes.ts";
import { LayoutSearch } from "./sheet-ruin.ts";

/** What a way of cutting a sheet comes to. */
export interface Judged extends Settings {
  /** Area of the largest offcut that is kept, mm². */
  readonly offcut: number;
}

/** Orders in which the pieces of a sheet are laid anew. */
const RANKS: readonly ((type: PieceType) => number)[] = [
  ({ width, height }) => width * height,
  ({ width, height }) => Math.max(width, height),
  ({ height }) => height,
  ({ width }) => width,
];
/** Of sheets with more pieces only the ways that were found are compared. */
const MOST_LAID = 40;

export function cutAlike(job: SheetJob, sheets: readonly Sheet[], judge: (sheet: Sheet) => Judged): Sheet[] {
  const known = new Map<Sheet, Judged>();
  const judged = (sheet: Sheet): Judged => {
    const found = known.get(sheet) ?? judge(sheet);
    known.set(sheet, found);
    return found;
  };
  const groups = new Map<string, Sheet[]>();
  for (const sheet of sheets) {
    const name = `${sheet.panel.stock} | ${piecesOf(sheet).join(" ")}`;
    groups.set(name, [...(groups.get(name) ?? []), sheet]);
  }
  const best = new Map(
    [...groups.values()].flatMap((group) => {
      const one = [...group, ...laidAnew(job, group[0]), ...inStrips(job, group[0])].reduce((least, other) =>
        isBetter(judged(other), judged(least)) ? other : least,
      );
      return group.map((sheet) => [sheet, one] as const);
    }),
  );
  const stocks = [...new Set(sheets.map(({ panel }) => panel.stock))].sort((a, b) => a - b);
  return stocks.flatMap((stock) =>
    inOrder(
      sheets.filter(({ panel }) => panel.stock === stock).map((sheet) => best.get(sheet) ?? sheet),
      judged,
    ),
  );
}

function isBetter(one: Judged, than: Judged): boolean {
  if (one.offcut !== than.offcut) return one.offcut > than.offcut;
  return countOf([one]) < countOf([than]);
}

/** Types of the pieces on a sheet, rising. */
function piecesOf({ root }: Sheet): number[] {
  const types: number[] = [];
  const gather = ({ piece, parts }: Region): void => {
    if (piece >= 0) types.push(piece);
    for (const part of parts) gather(part);
  };
  gather(root);
  return types.sort((a, b) => a - b);
}

/**
 * The pieces of a sheet in strips of pieces of one size across: two ways of strips, with all that may turn lying or standing. None where
 * the turns of the saw or its first cuts are limited, nor of ways in which the sheet does not take them all.
 */
function inStrips(job: SheetJob, sheet: Sheet | undefined): Sheet[] {
  if (
    sheet === undefined ||
    job.stages < Number.POSITIVE_INFINITY ||
    job.firstCuts < Number.POSITIVE_INFINITY
  ) {
    return [];
  }
  const pieces = piecesOf(sheet);
  return (["x", "y"] as const).flatMap((axis) =>
    [false, true].flatMap((turns) => {
      const ways = pieces.flatMap((piece): Way[] => {
        const type = job.types[piece];
        if (type === undefined) return [];
        const turned = turns && type.turnable && sheet.panel.turnable;
        const { width, height } = turned ? { width: type.height, height: type.width } : type;
        return [{ piece, turned, width, height, first: axis }];
      });
      const across = (one: Way | Region): number => (axis === "x" ? one.width : one.height);
      const along = (one: Way | Region): number => (axis === "x" ? one.height : one.width);
      const made = new Sheet(sheet.panel, sheet.owner);
      const isLaid = ways
        .sort((a, b) => across(b) - across(a) || along(b) - along(a))
        .every((way) => {
          const open = made.leftovers;
          const fits = (one: Region): boolean => across(one) >= across(way) && along(one) >= along(way);
          const begun = open.findIndex((one) => fits(one) && across(one) === across(way));
          const at = begun >= 0 ? begun : open.findIndex(fits);
          if (at >= 0) lay(made, at, way);
          return at >= 0;
        });
      return isLaid ? [made] : [];
    }),
  );
}

/** Other ways of cutting the pieces of a sheet from one like it. */
function laidAnew(job: SheetJob, sheet: Sheet | undefined): Sheet[] {
  if (sheet === undefined) return [];
  const pieces = piecesOf(sheet);
  if (pieces.length > MOST_LAID) return [];
  const waiting = job.types.map(() => 0);
  for (const piece of pieces) waiting[piece] = (waiting[piece] ?? 0) + 1;
  const own: SheetJob = { ...job, panels: [sheet.panel], available: [1] };
  return RANKS.flatMap((rank) => {
    const start: Layout = { sheets: [], waiting };
    const trial = new LayoutSearch(own, () => 0, start);
    const laid = trial.recreate(Number.POSITIVE_INFINITY, (_, panels) => panels[0], {
      rank: job.types.map(rank),
    });
    const { sheets, waiting: left } = trial.layout();
    return laid && left.every((count) => count === 0) && sheets.length === 1 ? sheets : [];
  });
}

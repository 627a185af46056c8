/**
 * The widths to rip the pile to, judged by the rod and by the pile together: how even the gaps come out, and how much of the
 * boards the pile gives.
 */
import type { Demands } from "../../codes/demands.ts";
import type { PatchOperation } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";
import type { RodProblem } from "../../setout/rod/index.ts";
import { chooseWidths, type WidthChoice as RodWidths } from "../../setout/rod-choice/index.ts";
import { rodTasks } from "../../setout/set-out.ts";
import { problemWith } from "../../setout/storey/mends.ts";
import { type RodSetting, settingOf } from "../../setout/storey/task.ts";
import { sameLength } from "../../units/length.ts";
import type { PileBoard } from "../model.ts";
import { cutPile, type PilePieces } from "../pile.ts";
import { ripWidths, type WidthChoice } from "../rip-widths.ts";
import { alikeNames } from "./alike.ts";
import { pileBoard, pilePieces, type Want, wantsOf } from "./board-parts.ts";
import { sawnPieces } from "./pieces.ts";
import { type RipNeeds, ripNeeds } from "./rip-needs.ts";
import { withoutSpoiled } from "./spoiled.ts";

/** Of the rods, as many of the most even as are ripped for. */
const RODS_RIPPED_FOR = 100;
/** Both widths of a pair must be worth setting the fence for: each gives a tenth of the strips' area (common practice). */
const LEAST_SHARE = 0.1;
const MM2_PER_M2 = 1e6;

/** One width or two for a rod, and what the pile makes of them. Areas in m², lengths in mm. */
export interface RipChoice {
  readonly widths: readonly number[];
  readonly courses: number;
  /** Lines of openings that no course meets. */
  readonly missedLines: number;
  readonly gaps: { readonly least: number; readonly most: number };
  /** Length of pieces of each width that the pile gives, and that it is short of. */
  readonly pieces: readonly { readonly width: number; readonly had: number; readonly short: number }[];
  /** Face of the pieces that the pile is short of, for all claddings that take from it. */
  readonly toBuyM2: number;
  /** Boards that stay whole in the pile. */
  readonly leftM2: number;
  /** Choices that are better both in evenness and in use of the pile; none for the best. */
  readonly beatenBy: number;
  /** The project has these widths. */
  readonly present: boolean;
  /** Makes them the project's. */
  readonly edit: readonly PatchOperation[];
}

export interface RipChoices {
  readonly rod: string;
  readonly cladding: string;
  /** Lots that the cladding may take from. */
  readonly lots: readonly string[];
  readonly boards: number;
  readonly boardsM2: number;
  /** Yield of every width by itself, and of the best one, two and three together, whatever the rod needs of them. */
  readonly curve: readonly WidthChoice[];
  readonly best: readonly WidthChoice[];
  /** Least beaten first, then as the rod ranks them. */
  readonly choices: readonly RipChoice[];
}

export interface RipRange {
  /** Widths to choose from in steps of 1 mm, both included. */
  readonly from: number;
  readonly to: number;
}

/** Strips of reclaimed boards for cladding (common practice): narrower ones split at the screws, wider ones cup. */
export const USUAL_RIPS: RipRange = { from: 70, to: 160 };

/** For each rod whose boards come from the pile. A course of another width is cut as the present one at its height. */
export function ripChoices(
  project: Project,
  { demands, facade }: { readonly demands: Demands; readonly facade: Facade },
  range: RipRange,
): RipChoices[] {
  const { pile } = withoutSpoiled(project);
  if (!pile) return [];
  const wants = wantsOf(project, sawnPieces(project, facade)).filter(({ lots }) => lots.length > 0);
  const boards = pile.boards.map(pileBoard);
  return rodTasks(project, demands).flatMap((task): RipChoices[] => {
    const setting = settingOf(task);
    const own = wants.filter(({ cladding }) => cladding === setting.cladding.id);
    const [first] = own;
    if (first === undefined) return [];
    const usable = boards.filter(
      ({ lot, thickness }) => first.lots.includes(lot) && thickness >= setting.cladding.thickness,
    );
    const asked: Asked = {
      project,
      setting,
      boards,
      range,
      needs: ripNeeds({ facade, task, cladding: setting.cladding, wants: own }),
      fixed: wants
        .filter(({ cladding }) => cladding !== setting.cladding.id)
        .map((want) => pilePieces(want, alikeNames(project))),
    };
    const { boardEdgeTrim: straighten, kerf } = project.stock.saw;
    return [
      {
        rod: task.spec.id,
        cladding: setting.cladding.id,
        lots: first.lots,
        boards: usable.length,
        boardsM2: areaOf(usable),
        ...ripWidths({
          boards: usable,
          kerf,
          straighten,
          widths: widthsIn(range),
          shortest: shortestOf(own),
          leastShare: LEAST_SHARE,
        }),
        choices: ranked(rodsOf(asked).map((rod) => ripFor(asked, rod))),
      },
    ];
  });
}

interface Asked {
  readonly project: Project;
  readonly setting: RodSetting;
  readonly boards: readonly PileBoard[];
  readonly range: RipRange;
  readonly needs: RipNeeds;
  /** What other claddings take from the pile. */
  readonly fixed: readonly PilePieces[];
}

function widthsIn({ from, to }: RipRange): number[] {
  return Array.from({ length: Math.floor(to - from) + 1 }, (_, at) => from + at);
}

function areaOf(boards: readonly PileBoard[]): number {
  return boards.reduce((sum, { length, width }) => sum + length * width, 0) / MM2_PER_M2;
}

function shortestOf(wants: readonly Want[]): number {
  const lengths = wants.flatMap(({ pieces }) => pieces.map(({ cut }) => cut.length));
  return lengths.reduce((least, length) => Math.min(least, length), Number.POSITIVE_INFINITY);
}

/** The most even rods in the band that keeps its gap all year; where none does, in the band as given. */
function rodsOf(asked: Asked): RodWidths[] {
  const yearly = problemWith(asked.setting, "year");
  const found = yearly ? rodsIn(yearly, asked.range) : [];
  return found.length > 0 ? found : rodsIn(asked.setting.problem, asked.range);
}

/** The most even rods of the range, and that of the present widths. */
function rodsIn({ widths, ripped: _, ...problem }: RodProblem, range: RipRange): RodWidths[] {
  const find = (
    of: RipRange & { readonly step?: number; readonly leastDifference?: number },
  ): RodWidths[] => {
    const outcome = chooseWidths({ ...problem, widths: of, most: RODS_RIPPED_FOR });
    return outcome.kind === "ranked" ? outcome.choices.filter(({ ripped }) => ripped.length === 0) : [];
  };
  const found = find(range);
  if (widths.length > 2 || found.some((one) => sameWidths(one.widths, widths))) return found;
  const least = Math.min(...widths);
  const most = Math.max(...widths);
  const present = find({ from: least, to: most, step: Math.max(most - least, 1) });
  return [...found, ...present.filter((one) => sameWidths(one.widths, widths))];
}

function sameWidths(one: readonly number[], other: readonly number[]): boolean {
  const [a, b] = [one, other].map((widths) => [...widths].sort((x, y) => x - y)) as [number[], number[]];
  return a.length === b.length && a.every((width, at) => sameLength(width, b[at] ?? 0));
}

type Judged = Omit<RipChoice, "beatenBy"> & { readonly gapSpread: number };

/** Cuts the pile for a rod and for all else that takes from it. */
function ripFor({ project, setting, boards, needs, fixed }: Asked, { widths, rod }: RodWidths): Judged {
  const { cladding } = setting;
  const own = needs.piecesFor(widths, rod);
  const { kerf, boardEdgeTrim: straighten, boardEndTrim: endTrim } = project.stock.saw;
  const { rips, lengths } = cutPile({
    boards,
    wanted: [...own, ...fixed],
    kerf,
    straighten,
    endTrim,
    budget: 0,
  });
  const missing = new Set(lengths.plan.unplaced.map(({ demandId }) => demandId));
  const metres = ({ pieces }: PilePieces, out: boolean): number =>
    pieces.reduce((sum, { id, length }) => (missing.has(id) === out ? sum + length : sum), 0);
  const ripped = new Set(rips.boards.map(({ boardId }) => boardId));
  const gaps = rod.segments.flatMap(({ gap }) => (gap === undefined ? [] : [gap]));
  const { missedLines, gapSpread, boards: courses } = rod.merit;
  const present = sameWidths(widths, cladding.widths);
  const path = `/claddings/${project.claddings.indexOf(cladding)}/widths`;
  return {
    widths,
    courses,
    missedLines,
    gaps: gaps.length === 0 ? { least: 0, most: 0 } : { least: Math.min(...gaps), most: Math.max(...gaps) },
    gapSpread,
    pieces: own.map((want) => ({ width: want.width, had: metres(want, false), short: metres(want, true) })),
    toBuyM2: [...own, ...fixed].reduce((sum, want) => sum + metres(want, true) * want.width, 0) / MM2_PER_M2,
    leftM2: areaOf(boards.filter(({ id }) => !ripped.has(id))),
    present,
    edit: present ? [] : [{ op: "replace", path, value: [...widths] }],
  };
}

/** A choice is beaten by one that is no worse in evenness and in use of the pile, and better in one of them. */
function ranked(judged: readonly Judged[]): RipChoice[] {
  // Sums of fractions carry a little dust, which must not put one before its equal.
  const differ = (a: number, b: number): number => Math.round((a - b) * 1e6);
  const even = (a: Judged, b: Judged): number =>
    a.missedLines - b.missedLines || differ(a.gapSpread, b.gapSpread);
  const thrifty = (a: Judged, b: Judged): number =>
    differ(a.toBuyM2, b.toBuyM2) || differ(b.leftM2, a.leftM2);
  const beats = (a: Judged, b: Judged): boolean =>
    even(a, b) <= 0 && thrifty(a, b) <= 0 && (even(a, b) < 0 || thrifty(a, b) < 0);
  return judged
    .map((one) => ({ one, beatenBy: judged.filter((other) => beats(other, one)).length }))
    .sort((a, b) => a.beatenBy - b.beatenBy || even(a.one, b.one) || thrifty(a.one, b.one))
    .map(({ one: { gapSpread: _, ...choice }, beatenBy }) => ({ ...choice, beatenBy }));
}

/** A face laid again for what was measured, at the fewest re-cuts: what becomes of each piece and of each gap. */
import { type Polygon, polygonBounds } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import { fromGridSteps, snap } from "../../units/length.ts";
import type { Come } from "./allowed.ts";
import { evenPlaces } from "./even-places.ts";
import { type CutQuestion, fewestCuts, USUAL_STEPS } from "./fewest-cuts.ts";
import type { Side } from "./measured.ts";
import { type AskedFace, type FaceQuestion, type Gap, questionOf } from "./question.ts";
import { type FromStock, stockFor } from "./sizes.ts";
import type { Handle } from "./unknowns.ts";

/** `moved`: as it is, in another place; `new size`: not cut yet, so its paper changes alone. */
export type Fate = "as it is" | "moved" | "new size" | "trimmed" | "made again";

/** An edge from where it was to where it is (mm). */
export type EdgeMove = readonly [from: number, to: number];

export interface LaidAgain {
  readonly mark: string;
  readonly come: Come;
  readonly fate: Fate;
  readonly before: Rect;
  readonly after: Rect;
  readonly x: readonly EdgeMove[];
  readonly y: readonly EdgeMove[];
  /** Of what it is made again, or cut for the first time. */
  readonly from?: FromStock;
}

export interface GapAfter {
  readonly kind: Gap["kind"];
  readonly marks: readonly string[];
  readonly opening?: string;
  readonly side?: Side;
  /** As set out, as it would be with nothing moved, and as laid again (mm). */
  readonly nominal: number;
  readonly unmoved: number;
  readonly after: number;
  readonly band: readonly [least: number, most: number];
}

export interface Closing {
  readonly kind: Gap["kind"];
  readonly marks: readonly string[];
  readonly opening?: string;
  /** As set out, and how far it may be from that (mm). */
  readonly nominal: number;
  readonly band: number;
}

export interface FaceLaidAgain {
  readonly face: string;
  readonly kind: "found";
  /** Those that move or change; the others stay as they are. */
  readonly pieces: readonly LaidAgain[];
  /** Gaps that are not what they were set out to, or would not be. */
  readonly gaps: readonly GapAfter[];
  /** Gaps between things that do not move, out of their bands. */
  readonly standing: readonly GapAfter[];
  /** By the weights, and what it is at least; the same where the search came to its end. */
  readonly cost: number;
  readonly least: number;
  /** Of joints and of clearances the narrowest that their band lets close to nothing. */
  readonly closing: readonly Closing[];
  /** Of its band, that the worst gap takes. */
  readonly share: number;
  /** Fields that rest on what is usual. */
  readonly usual: readonly string[];
}

export interface CannotLay {
  readonly face: string;
  readonly kind: "impossible";
  /** Pieces and openings that cannot stand together. */
  readonly marks: readonly string[];
  readonly openings: readonly string[];
  /** By how much (mm). */
  readonly shortBy: number;
}

/** @param may which cuts are allowed; all where absent */
export function layAgain(
  asked: AskedFace,
  { steps = USUAL_STEPS, may }: { readonly steps?: number; readonly may?: "none" | "trims" } = {},
): FaceLaidAgain | CannotLay {
  const question = questionOf(asked);
  const answer = fewestCuts(allowedCuts(question, may), steps);
  const face = asked.face.id;
  if (answer.kind === "impossible") {
    const named = answer.ring.flatMap(({ of }) => (of === undefined ? [] : (question.asked[of] ?? [])));
    return {
      face,
      kind: "impossible",
      marks: [...new Set(named.flatMap(({ marks }) => marks))],
      openings: [...new Set(named.flatMap(({ opening }) => opening ?? []))],
      shortBy: fromGridSteps(-answer.ring.reduce((sum, { most }) => sum + most, 0)),
    };
  }
  const { levels } = answer;
  const placed = question.unknowns.map(({ drawn, together }, i) =>
    evenPlaces(question.axes[i] as FaceQuestion["axes"][number], { levels, drawn, together }),
  );
  const at = (axis: 0 | 1, { unknown, plus }: Handle): number => (placed[axis]?.x[unknown] ?? 0) + plus;
  const gaps = question.gaps.map((gap) => gapAfter(gap, question, at));
  return {
    face,
    kind: "found",
    pieces: question.pieces.flatMap((_, i) => pieceAfter(asked, question, { i, level: levels[i] ?? 0, at })),
    gaps: gaps
      .filter(
        ({ isStanding, gap }) => !isStanding && (gap.after !== gap.nominal || gap.unmoved !== gap.nominal),
      )
      .map(({ gap }) => gap),
    standing: gaps
      .filter(({ isStanding, gap: { after, band } }) => isStanding && (after < band[0] || after > band[1]))
      .map(({ gap }) => gap),
    closing: closingGaps(question),
    cost: weighed(answer.cost),
    least: weighed(answer.least),
    share: Math.max(...placed.map((one) => one?.share ?? 0)),
    usual: question.allowed.usual,
  };
}

/** Thousandths tell choices of one weight apart and are not shown. */
function weighed(cost: number): number {
  return Math.floor(cost / 1000);
}

function allowedCuts(question: FaceQuestion, may: "none" | "trims" | undefined): CutQuestion {
  if (may === undefined) return question;
  const costs = question.costs.map(([trim]) => [may === "trims" ? trim : undefined, undefined] as const);
  return { costs, axes: question.axes };
}

function closingGaps({ gaps, allowed }: FaceQuestion): Closing[] {
  return (["clearance", "joint"] as const).flatMap((kind): Closing[] => {
    const open = gaps.filter((gap) => gap.kind === kind && gap.nominal > 0 && gap.least <= 0);
    const [narrowest] = [...open].sort((a, b) => a.nominal - b.nominal);
    if (!narrowest) return [];
    const { marks, opening, nominal } = narrowest;
    return [
      {
        kind,
        marks,
        ...(opening !== undefined && { opening }),
        nominal: fromGridSteps(nominal),
        band: allowed[kind],
      },
    ];
  });
}

function gapAfter(
  { kind, axis, marks, opening, side, before, after, nominal, least, most }: Gap,
  { unknowns }: FaceQuestion,
  at: (axis: 0 | 1, handle: Handle) => number,
): { readonly gap: GapAfter; readonly isStanding: boolean } {
  const drawnAt = ({ unknown, plus }: Handle): number => (unknowns[axis].drawn[unknown] ?? 0) + plus;
  const gap: GapAfter = {
    kind,
    marks,
    ...(opening !== undefined && { opening }),
    ...(side && { side }),
    nominal: fromGridSteps(nominal),
    unmoved: fromGridSteps(drawnAt(after) - drawnAt(before)),
    after: fromGridSteps(at(axis, after) - at(axis, before)),
    band: [fromGridSteps(least), fromGridSteps(most)],
  };
  return { gap, isStanding: before.unknown === 0 && after.unknown === 0 };
}

function pieceAfter(
  { project }: AskedFace,
  { pieces, unknowns }: FaceQuestion,
  {
    i,
    level,
    at,
  }: { readonly i: number; readonly level: number; readonly at: (axis: 0 | 1, handle: Handle) => number },
): LaidAgain[] {
  const one = pieces[i];
  if (!one?.isFree) return [];
  const moves = unknowns.map((axis, which) =>
    [...axis.edgesOf(i)]
      .map(([drawn, handle]): EdgeMove => [drawn, fromGridSteps(at(which as 0 | 1, handle))])
      .sort(([a], [b]) => a - b),
  );
  const [x = [], y = []] = moves;
  if ([...x, ...y].every(([from, to]) => from === to)) return [];
  const { outline, mark } = one.piece;
  const before = polygonBounds(outline);
  const after = polygonBounds(movedOutline(outline, x, y));
  const isCut = level > 0 && moves.some((axis) => !isShift(axis));
  const fate = !isCut ? "moved" : one.come === "uncut" ? "new size" : level === 1 ? "trimmed" : "made again";
  const from = fate === "new size" || fate === "made again" ? stockFor(project, one, after) : undefined;
  return [{ mark, come: one.come, fate, before, after, x, y, ...(from && { from }) }];
}

function isShift(moves: readonly EdgeMove[]): boolean {
  return new Set(moves.map(([from, to]) => snap(to - from))).size <= 1;
}

function movedOutline(outline: Polygon, x: readonly EdgeMove[], y: readonly EdgeMove[]): Polygon {
  const to = (moves: readonly EdgeMove[], at: number): number =>
    moves.find(([from]) => from === at)?.[1] ?? at;
  return outline.map(([px, py]) => [to(x, px), to(y, py)]);
}

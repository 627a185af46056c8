import { toGridSteps } from "../../units/length.ts";
import {
  MOST_SECONDARY_LINES,
  MOST_WIDTHS,
  type RodProblem,
  type RodProblemCode,
  type RodProblemFault,
} from "./problem.ts";

/** Most ways to choose the regular widths but the last, and most boards in a segment, that the exact search takes on. */
const MOST_PREFIXES = 40_000;
const MOST_BOARDS_IN_SEGMENT = 400;

/** Everything that keeps a rod from being worked, all at once; empty where nothing does. */
export function problemFaults(problem: RodProblem): RodProblemFault[] {
  const faults: RodProblemFault[] = [];
  const add = (code: RodProblemCode, field: string, value: number | string): void => {
    faults.push({ code, field, value });
  };
  const isNumber = (field: string, value: number): boolean => {
    if (Number.isFinite(value)) return true;
    add("not-a-number", field, value);
    return false;
  };
  checkWidths(problem, add, isNumber);
  checkSegments(problem, add, isNumber);
  checkRules(problem, add, isNumber);
  if (faults.length === 0) checkSize(problem, add);
  return faults;
}

type Add = (code: RodProblemCode, field: string, value: number | string) => void;
type IsNumber = (field: string, value: number) => boolean;

function checkSegments(problem: RodProblem, add: Add, isNumber: IsNumber): void {
  if (problem.segments.length === 0) add("no-segments", "segments", 0);
  const seen = new Set<string>();
  let end = Number.NEGATIVE_INFINITY;
  problem.segments.forEach(({ id, from, to }, index) => {
    if (seen.has(id)) add("segment-id-repeated", `segments/${index}/id`, id);
    seen.add(id);
    if (![isNumber(`segments/${index}/from`, from), isNumber(`segments/${index}/to`, to)].every(Boolean))
      return;
    if (toGridSteps(to) <= toGridSteps(from)) add("segment-not-ahead", `segments/${index}/to`, to);
    if (toGridSteps(from) < end) add("segments-overlap", `segments/${index}/from`, from);
    end = toGridSteps(to);
  });
}

function checkWidths(problem: RodProblem, add: Add, isNumber: IsNumber): void {
  if (problem.widths.length === 0) add("no-widths", "widths", 0);
  if (problem.widths.length > MOST_WIDTHS) add("too-many-widths", "widths", problem.widths.length);
  const seen = new Set<number>();
  problem.widths.forEach((width, index) => {
    if (!isNumber(`widths/${index}`, width)) return;
    if (toGridSteps(width) <= 0) add("width-not-positive", `widths/${index}`, width);
    if (seen.has(toGridSteps(width))) add("width-repeated", `widths/${index}`, width);
    seen.add(toGridSteps(width));
  });
  const ids = new Set(problem.segments.map((segment) => segment.id));
  const taken = new Set<string>();
  (problem.ripped ?? []).forEach(({ segment, width }, index) => {
    if (!ids.has(segment)) add("ripped-segment-unknown", `ripped/${index}/segment`, segment);
    if (taken.has(segment)) add("ripped-segment-repeated", `ripped/${index}/segment`, segment);
    taken.add(segment);
    if (!isNumber(`ripped/${index}/width`, width)) return;
    const isRegular = seen.has(toGridSteps(width));
    if (isRegular || toGridSteps(width) <= 0)
      add("ripped-width-out-of-range", `ripped/${index}/width`, width);
  });
}

function checkRules(problem: RodProblem, add: Add, isNumber: IsNumber): void {
  const [min, max] = problem.gapBand;
  if ([isNumber("gapBand/0", min), isNumber("gapBand/1", max)].every(Boolean)) {
    if (min < 0) add("band-not-a-band", "gapBand/0", min);
    if (max < min) add("band-not-a-band", "gapBand/1", max);
  }
  const most = problem.maxEqualTouching;
  if (most !== undefined && !(Number.isInteger(most) && most >= 1))
    add("touching-not-a-count", "maxEqualTouching", most);
  if (problem.preferredGap !== undefined) isNumber("preferredGap", problem.preferredGap);
  if (problem.secondaryLines.length > MOST_SECONDARY_LINES) {
    add("too-many-lines", "secondaryLines", problem.secondaryLines.length);
  }
  const all = [...problem.widths, ...(problem.ripped ?? []).map((board) => board.width)];
  const narrowest = Math.min(...all.filter((width) => width > 0));
  problem.secondaryLines.forEach(({ at, tolerance }, index) => {
    isNumber(`secondaryLines/${index}/at`, at);
    if (!isNumber(`secondaryLines/${index}/tolerance`, tolerance)) return;
    if (tolerance < 0 || tolerance >= narrowest)
      add("tolerance-out-of-range", `secondaryLines/${index}/tolerance`, tolerance);
  });
}

function checkSize(problem: RodProblem, add: Add): void {
  const narrowest = Math.min(...problem.widths);
  problem.segments.forEach(({ from, to }, index) => {
    const prefixes = problem.widths.slice(0, -1).reduce((ways, width) => ways * ((to - from) / width + 1), 1);
    const boards = (to - from) / narrowest;
    if (prefixes > MOST_PREFIXES || boards > MOST_BOARDS_IN_SEGMENT)
      add("too-large", `segments/${index}/to`, to);
  });
}

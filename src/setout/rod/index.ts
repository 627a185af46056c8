/** The exact storey rod: boards and gaps between control lines. Plain values in, plain values out, millimetres. */
export { type DuctStrip, sliversBeside } from "./duct-strips.ts";
export { leastMoveTogether } from "./move-together.ts";
export type {
  ClearOfDucts,
  Course,
  GapOutsideBand,
  LineMove,
  MissedLine,
  NearestChange,
  RodMerit,
  RodOutcome,
  RodProof,
  RodSolution,
  RodSummary,
  RuleCost,
  SegmentRefusal,
  SegmentSolution,
  WidthCount,
} from "./outcome.ts";
export type {
  DuctSpan,
  RippedBoard,
  RodProblem,
  RodProblemCode,
  RodProblemFault,
  RodSegment,
  SecondaryLine,
} from "./problem.ts";
export { MOST_SECONDARY_LINES } from "./problem.ts";
export { bestRod, isPossible, solveRod, solveRodToDraw } from "./rod.ts";
export { runsTouching, type TouchingRun } from "./runs.ts";
export { missedLines } from "./solution.ts";

/** Cutting: plans for sheets, lengths and rips, what they can cost at least, and the check that they can be sawn. */
export { boundSheets } from "./bounds.ts";
export { cutLengths, lengthPlans } from "./lengths.ts";
export type * from "./model.ts";
export type { PilePieces, PileRequest, PileResult } from "./pile.ts";
export { cutPile } from "./pile.ts";
export type { WidthChoice } from "./rip-widths.ts";
export { ripWidths } from "./rip-widths.ts";
export { soundRuns, straightWidth } from "./rips.ts";
export type { SawAnswer, SawOptions, SawProblem } from "./saw.ts";
export { saw } from "./saw.ts";
export { cutSheets, sheetPlans } from "./sheets.ts";
export type { LengthProblemCode } from "./verify/lengths.ts";
export { verifyLengthPlan } from "./verify/lengths.ts";
export type { CutProblem } from "./verify/problem.ts";
export type { RipProblemCode } from "./verify/rips.ts";
export { verifyRipPlan } from "./verify/rips.ts";
export type { SheetProblemCode } from "./verify/sheets.ts";
export { verifySheetPlan } from "./verify/sheets.ts";

/** Which board widths suit a rod: all singles and pairs of a range, ranked. Plain values in, plain values out, millimetres. */
export { chooseWidths } from "./choose-widths.ts";
export type { WidthChoice, WidthSupply, WidthsOutcome, WidthsProof, WidthsQuestion } from "./question.ts";

/** How a code’s table for walls is laid out. */

import { type Equation, type EquationSource, equation } from "../equation.ts";
import { coefficientByArea } from "./coefficient-by-area.ts";

/** Coefficients up to the small area and from the large one. */
export type ByArea = readonly [small: number, large: number];

export interface WallTable {
  /** By strip, from the end of a wall inward. */
  readonly pull: Readonly<Record<string, ByArea>>;
  readonly push: ByArea;
  readonly areasM2: readonly [small: number, large: number];
}

/** A table’s coefficient for a part that gathers pressure from so much area (m²). */
export function fromTable([smallM2, largeM2]: ByArea, [small, large]: ByArea, areaM2: number): number {
  return coefficientByArea({ areaM2, smallM2, largeM2, smallCoefficient: small, largeCoefficient: large });
}

/** Inputs that stand for a word are 1 for yes and 0 for no. */
export function isYesOrNo(value: number): boolean {
  return value === 0 || value === 1;
}

/** The equation of a table with an end strip and a field. */
export function twoStripCoefficient({
  name,
  table: { pull, push, areasM2 },
  source,
}: {
  readonly name: string;
  readonly table: WallTable & { readonly pull: Readonly<Record<"end" | "field", ByArea>> };
  readonly source: EquationSource;
}): Equation {
  return equation({
    name,
    formula:
      "the figure’s line by lg areaM2: pull of the end strip where endStrip is 1, of the field where it is 0; push where pushing is 1",
    inputs: [
      { key: "areaM2", unit: "m²", range: [0, 10000] },
      { key: "endStrip", unit: "1", range: [0, 1] },
      { key: "pushing", unit: "1", range: [0, 1] },
    ],
    together: {
      keys: ["endStrip", "pushing"],
      condition: "endStrip, pushing: 0 or 1",
      holds: ({ endStrip, pushing }) => isYesOrNo(endStrip) && isYesOrNo(pushing),
    },
    result: { unit: "1" },
    source,
    work: ({ areaM2, endStrip, pushing }) =>
      fromTable(areasM2, pushing === 1 ? push : endStrip === 1 ? pull.end : pull.field, areaM2),
  });
}

/** Even light on one point of the membrane from a long window between two profile angles. */
import { equation } from "../equation.ts";

export interface View {
  /** From the wall's normal, above level positive. */
  readonly fromDeg: number;
  readonly toDeg: number;
}

/** Share of what a point before an evenly bright half space would get, 0 to 1. */
export function viewShare({ fromDeg, toDeg }: View): number {
  return (Math.sin((toDeg * Math.PI) / 180) - Math.sin((fromDeg * Math.PI) / 180)) / 2;
}

export const VIEW_SHARE = equation({
  name: "view-share",
  formula: "½(sin toDeg − sin fromDeg)",
  inputs: [
    { key: "fromDeg", unit: "°", range: [-90, 90] },
    { key: "toDeg", unit: "°", range: [-90, 90] },
  ],
  result: { unit: "1" },
  source: {
    document: "View factor from a small area to a long strip, Howell's catalogue of radiation view factors",
  },
  work: viewShare,
});

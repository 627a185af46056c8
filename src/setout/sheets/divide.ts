import type { Interval } from "../../geometry/interval.ts";
import { snap } from "../../units/length.ts";

/** Equal parts of a stretch with a joint between each two; the joints are exact, the grid's rounding falls on the parts. */
export function divide(stretch: Interval, parts: number, joint: number): Interval[] {
  const pitch = (stretch[1] - stretch[0] + joint) / parts;
  const found: Interval[] = [];
  let [from] = stretch;
  for (let i = 1; i < parts; i++) {
    const next = snap(stretch[0] + i * pitch);
    found.push([from, snap(next - joint)]);
    from = next;
  }
  found.push([from, stretch[1]]);
  return found;
}

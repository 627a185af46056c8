import type { Interval } from "../../geometry/interval.ts";
import { snap } from "../../units/length.ts";

/** Equal parts of a stretch with a joint between each two; the joints are exact, the grid's rounding falls on the parts. */
export function divide(stretch: Interval, parts: number, joint: number): Interval[] {
  const pitch = (stretch[1] - stretch[0] + joint) / parts;
  const starts = Array.from({ length: parts }, (_, i) =>
    i === 0 ? stretch[0] : snap(stretch[0] + i * pitch),
  );
  return starts.map(
    (from, i): Interval => [from, i === parts - 1 ? stretch[1] : snap((starts[i + 1] as number) - joint)],
  );
}

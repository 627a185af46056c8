import { distance, type Point } from "../../../geometry/point.ts";
import type { FaceInPlan } from "../../../project/intake/ifc/faces-in-plan.ts";
import { heading } from "../../../scene/views/extent.ts";
import { useWords } from "../../words.ts";

/** Pixels of the picture's own; the page fits it to its column. */
const SIZE = { width: 280, height: 150 };
/** Kept free round the walls for their names. */
const ROOM = { x: 60, y: 24 };
/** How far off its wall a name stands, and how long the mark of the side that is seen is. */
const OFF = 13;
const MARK = 5;

/** The faces that are taken in, seen from above: each named and marked on the side from which it is seen. */
export function WallsPlan({ faces }: { faces: readonly FaceInPlan[] }) {
  const { w } = useWords();
  const ends = faces.flatMap(({ plan: { from, to } }) => [from, to]);
  const [xs, ys] = [ends.map(([x]) => x), ends.map(([, y]) => y)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const k = Math.min(
    (SIZE.width - 2 * ROOM.x) / Math.max(right - left, 1),
    (SIZE.height - 2 * ROOM.y) / Math.max(high - low, 1),
  );
  const toPicture = ([x, y]: Point): Point => [
    SIZE.width / 2 + (x - (left + right) / 2) * k,
    SIZE.height / 2 - (y - (low + high) / 2) * k,
  ];
  return (
    <svg
      className="plan-picture intake-plan intake-whole"
      viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
      role="img"
      aria-label={w("page.intake.plan", { count: faces.length })}
    >
      {faces.map(({ id, plan }) => {
        const [a, b] = [toPicture(plan.from), toPicture(plan.to)];
        const length = distance(a, b) || 1;
        // A wall runs from its left end to its right one: who sees it stands to the right of that way.
        const out: Point = [(a[1] - b[1]) / length, (b[0] - a[0]) / length];
        const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
        return (
          <g key={id}>
            <path
              className="plan-walls"
              d={`M${a.join(" ")}L${b.join(" ")}M${middle.join(" ")}l${out[0] * MARK} ${out[1] * MARK}`}
            />
            <text className={sideOf(out)} x={middle[0] + out[0] * OFF} y={middle[1] + out[1] * OFF + 4}>
              {heading(id)}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

/** A name beside a wall that runs up the picture begins, or ends, at it. */
function sideOf([x]: Point): string | undefined {
  return Math.abs(x) < Math.SQRT1_2 ? undefined : x > 0 ? "plan-right" : "plan-left";
}

import type { Point } from "../../geometry/point.ts";
import type { Run } from "../../project/editing/run.ts";
import { wallId } from "../../project/editing/start.ts";
import { heading } from "../../scene/views/extent.ts";
import { degreesToRadians } from "../../units/angle.ts";
import { useWords } from "../words.ts";

/** Pixels of its own frame; it is fitted to the column. */
const SIZE = { width: 280, height: 150 };
const ROOM = 22;
const NORTH = { x: SIZE.width - 18, y: 20, length: 13 };

/** A run of walls seen from above, lettered on the side from which each is seen, with north. */
export function PlanPicture({ run, azimuthDeg }: { run: Run; azimuthDeg: number }) {
  const { w } = useWords();
  const xs = run.points.map(([x]) => x);
  const ys = run.points.map(([, y]) => y);
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const k = Math.min(
    (SIZE.width - 4 * ROOM) / Math.max(right - left, 1),
    (SIZE.height - 2 * ROOM) / Math.max(high - low, 1),
  );
  const at = ([x, y]: Point): Point => [
    SIZE.width / 2 + (x - (left + right) / 2) * k,
    SIZE.height / 2 - (y - (low + high) / 2) * k,
  ];
  const drawn = run.points.map(at);
  // The first wall looks down the picture: north is turned from there by its direction.
  const north = degreesToRadians(azimuthDeg);
  const way: Point = [Math.sin(north), Math.cos(north)];
  return (
    <svg
      className="plan-picture"
      viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
      role="img"
      aria-label={w(run.closed ? "page.plan.closed" : "page.plan.open", { count: run.walls.length })}
    >
      <polyline className="plan-walls" points={drawn.map((point) => point.join(",")).join(" ")} />
      {run.walls.map((_, i) => {
        const [a, b] = [drawn[i] as Point, drawn[i + 1] as Point];
        const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
        const out: Point = [(a[1] - b[1]) / length, (b[0] - a[0]) / length];
        return (
          <text key={wallId(i)} x={(a[0] + b[0]) / 2 + out[0] * 11} y={(a[1] + b[1]) / 2 + out[1] * 11 + 4}>
            {heading(wallId(i))}
          </text>
        );
      })}
      <path
        className="plan-north"
        d={`M${NORTH.x - way[0] * NORTH.length} ${NORTH.y - way[1] * NORTH.length}L${NORTH.x + way[0] * NORTH.length} ${NORTH.y + way[1] * NORTH.length}`}
      />
      <circle
        className="plan-north"
        cx={NORTH.x + way[0] * NORTH.length}
        cy={NORTH.y + way[1] * NORTH.length}
        r="3"
      />
      <text x={NORTH.x - 24} y={NORTH.y + 4}>
        {w("page.plan.north")}
      </text>
    </svg>
  );
}

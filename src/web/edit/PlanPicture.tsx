import { type PointerEvent, useRef, useState } from "react";
import { distance, type Point } from "../../geometry/point.ts";
import type { Run } from "../../project/editing/run.ts";
import { cornerMoved, type PlanSteps, withCorner } from "../../project/editing/run-drawn.ts";
import { wallId } from "../../project/editing/start.ts";
import { heading } from "../../scene/views/extent.ts";
import { sayLength } from "../../text/say.ts";
import { degreesToRadians } from "../../units/angle.ts";
import { INCHES_PER_FOOT, MM_PER_INCH } from "../../units/length.ts";
import { useWords } from "../words.ts";
import { framed, type PlanFrame, SIZE } from "./plan-frame.ts";

const MM_PER_FOOT = INCHES_PER_FOOT * MM_PER_INCH;
const NORTH = { x: SIZE.width - 18, y: 20, length: 13 };
/** How near a press takes a corner, in the picture's own pixels. */
const NEAR = 9;
/** The first corner, from which the first wall runs. */
const START: readonly Point[] = [[0, 0]];

interface InHand {
  readonly frame: PlanFrame;
  /** The corners before the hand came. */
  readonly points: readonly Point[];
  /** Which of them it moves; undefined where it draws another one. */
  readonly corner: number | undefined;
}

/**
 * A run of walls seen from above, lettered on the side from which each is seen, with north. A press sets the next corner, and one
 * on a corner takes it along; the field above holds the same walls in words.
 */
export function PlanPicture({
  run,
  azimuthDeg,
  onDrawn,
}: {
  run: Run | undefined;
  azimuthDeg: number | undefined;
  /** Undefined while what stands in the field cannot be drawn on. */
  onDrawn: ((points: readonly Point[]) => void) | undefined;
}) {
  const { w, reader } = useWords();
  const picture = useRef<SVGSVGElement>(null);
  const [hand, setHand] = useState<InHand>();
  const points = run?.points ?? START;
  const grid = reader.units === "mm" ? 1000 : 3 * MM_PER_FOOT;
  // What is under the hand must not move away from it.
  const frame = hand?.frame ?? framed(points, grid);
  const steps: PlanSteps = { lengthMm: reader.units === "mm" ? 50 : 2 * MM_PER_INCH, turnDeg: 15 };
  const drawn = points.map(frame.toPicture);
  const placeOf = ({ clientX, clientY }: PointerEvent): Point => {
    const at = new DOMPoint(clientX, clientY).matrixTransform(picture.current?.getScreenCTM()?.inverse());
    return [at.x, at.y];
  };
  const follow = ({ frame: held, points: from, corner }: InHand, at: Point): void => {
    const to = held.toPlan(at);
    const next =
      corner === undefined ? withCorner(from, to, steps) : cornerMoved(from, { corner, at: to }, steps);
    if (next) onDrawn?.(next);
  };
  const press = (event: PointerEvent<SVGSVGElement>): void => {
    if (event.button !== 0 || !onDrawn) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const at = placeOf(event);
    const near = drawn.findIndex((corner) => distance(corner, at) <= NEAR);
    // A press on the first corner of a run that is open closes it.
    const closes = near === 0 && points.length > 2 && !run?.closed;
    const corner = near < 0 || closes || points.length < 2 ? undefined : near;
    if (corner === undefined && run?.closed) return;
    const held: InHand = { frame, points, corner };
    setHand(held);
    follow(held, at);
  };
  // The first wall looks down the picture: north is turned from there by its direction.
  const north = degreesToRadians(azimuthDeg ?? 0);
  const way: Point = [Math.sin(north), Math.cos(north)];
  const walls = run?.walls ?? [];
  const last = walls.length - 1;
  return (
    <svg
      ref={picture}
      className={`plan-picture${run?.closed ? "" : " plan-open"}`}
      viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
      role="img"
      aria-label={
        run
          ? w(run.closed ? "page.plan.closed" : "page.plan.open", { count: walls.length })
          : w("page.plan.draw")
      }
      onPointerDown={press}
      onPointerMove={(event) => hand && follow(hand, placeOf(event))}
      onPointerUp={() => setHand(undefined)}
      onPointerCancel={() => setHand(undefined)}
    >
      <path
        className="plan-grid"
        d={[
          ...frame.grid.x.map((x) => `M${x} 0V${SIZE.height}`),
          ...frame.grid.y.map((y) => `M0 ${y}H${SIZE.width}`),
        ].join("")}
      />
      <polyline className="plan-walls" points={drawn.map((point) => point.join(",")).join(" ")} />
      {drawn.map(([x, y], i) => (
        <circle key={`corner ${wallId(i)}`} className="plan-corner" cx={x} cy={y} r="4" />
      ))}
      {walls.map(({ length: mm }, i) => {
        const [a, b] = [drawn[i] as Point, drawn[i + 1] as Point];
        const length = distance(a, b);
        const out: Point = [(a[1] - b[1]) / length, (b[0] - a[0]) / length];
        return (
          <text key={wallId(i)} x={(a[0] + b[0]) / 2 + out[0] * 11} y={(a[1] + b[1]) / 2 + out[1] * 11 + 4}>
            {heading(wallId(i))}
            {hand && hand.corner === undefined && i === last ? ` ${sayLength(mm, reader)}` : ""}
          </text>
        );
      })}
      {!run && onDrawn && (
        <text x={SIZE.width / 2} y={SIZE.height - 26}>
          {w("page.plan.draw")}
        </text>
      )}
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
      <text className="plan-measure" x={8} y={SIZE.height - 8}>
        {w("page.plan.grid", { step: grid })}
      </text>
    </svg>
  );
}

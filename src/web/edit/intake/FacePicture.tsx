import { polygonBounds } from "../../../geometry/polygon.ts";
import { rectOutline } from "../../../geometry/rect.ts";
import type { TakenFace } from "../../../project/intake/face/shape.ts";
import { useWords } from "../../words.ts";

/** Share of the face that is left clear round it. */
const ROOM = 0.02;

/** The outline and openings that are taken in, seen from outside. */
export function FacePicture({ face: { outline, openings } }: { face: TakenFace }) {
  const { w } = useWords();
  const { x, y } = polygonBounds(outline);
  const [width, height] = [x[1] - x[0], y[1] - y[0]];
  const room = Math.max(width, height) * ROOM;
  const ring = (points: readonly (readonly [number, number])[]): string =>
    points.map(([px, py]) => `${px},${y[1] - py}`).join(" ");
  return (
    <svg
      className="face-picture intake-whole"
      viewBox={`${x[0] - room} ${-room} ${width + 2 * room} ${height + 2 * room}`}
      role="img"
      aria-label={w("page.intake.picture", { count: openings.length })}
    >
      <polygon className="face-picture-wall" points={ring(outline)} />
      {openings.map((rect) => (
        <polygon
          key={`${rect.x} ${rect.y}`}
          className="face-picture-opening"
          points={ring(rectOutline(rect))}
        />
      ))}
    </svg>
  );
}

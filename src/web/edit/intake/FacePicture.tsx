import { polygonBounds } from "../../../geometry/polygon.ts";
import { rectOutline } from "../../../geometry/rect.ts";
import type { TakenFace } from "../../../project/intake/face/shape.ts";
import { useWords } from "../../words.ts";

/** Share of the face that is left clear round it. */
const ROOM = 0.02;

/** How wide and how high the box of a face is, mm. */
type FaceSize = readonly [width: number, height: number];

/** A box that every one of the faces fits: pictures of this size, as wide on the page, show them to one scale. */
export function sizeForAll(faces: readonly TakenFace[]): FaceSize {
  const sizes = faces.map(sizeOf);
  return [Math.max(...sizes.map(([width]) => width)), Math.max(...sizes.map(([, height]) => height))];
}

function sizeOf({ outline }: TakenFace): FaceSize {
  const { x, y } = polygonBounds(outline);
  return [x[1] - x[0], y[1] - y[0]];
}

/**
 * The outline and openings that are taken in, seen from outside.
 * @param size what the picture has room for: the face itself where absent. A smaller face stands in its middle, at its foot
 */
export function FacePicture({ face, size }: { face: TakenFace; size?: FaceSize }) {
  const { w } = useWords();
  const { outline, openings } = face;
  const { x, y } = polygonBounds(outline);
  const [width, height] = size ?? sizeOf(face);
  const room = Math.max(width, height) * ROOM;
  const [left, top] = [(x[0] + x[1] - width) / 2, y[1] - y[0] - height];
  const ring = (points: readonly (readonly [number, number])[]): string =>
    points.map(([px, py]) => `${px},${y[1] - py}`).join(" ");
  return (
    <svg
      className="face-picture intake-whole"
      viewBox={`${left - room} ${top - room} ${width + 2 * room} ${height + 2 * room}`}
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

import { polygonBounds } from "../../../geometry/polygon.ts";
import { type Rect, rectOutline } from "../../../geometry/rect.ts";
import type { TakenFace } from "../../../project/intake/face/shape.ts";
import { useWords } from "../../words.ts";

type Pictured = Pick<TakenFace, "outline"> & { readonly openings: readonly Rect[] };

/** Share of the face that is left clear round it. */
const ROOM = 0.02;

/** How wide and how high the box of a face is, mm. */
type FaceSize = readonly [width: number, height: number];

/** A box that every one of the faces fits: pictures of this size, as wide on the page, show them to one scale. */
export function sizeForAll(faces: readonly Pictured[]): FaceSize {
  const sizes = faces.map(sizeOf);
  return [Math.max(...sizes.map(([width]) => width)), Math.max(...sizes.map(([, height]) => height))];
}

function sizeOf({ outline }: Pictured): FaceSize {
  const { x, y } = polygonBounds(outline);
  return [x[1] - x[0], y[1] - y[0]];
}

/** A place on the face that is marked by what becomes of it. */
interface MarkedPlace {
  readonly x: number;
  readonly y: number;
  readonly kind: "new" | "replaced" | "same";
}

/** Share of the face that a mark takes. */
const MARK = 0.012;

/**
 * The outline and openings that are taken in, seen from outside.
 * @param size what the picture has room for: the face itself where absent. A smaller face stands in its middle, at its foot
 */
export function FacePicture({
  face,
  size,
  places = [],
  label,
}: {
  face: Pictured;
  size?: FaceSize;
  places?: readonly MarkedPlace[];
  /** What it shows, where that is not a face that is taken in. */
  label?: string;
}) {
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
      aria-label={label ?? w("page.intake.picture", { count: openings.length })}
    >
      <polygon className="face-picture-wall" points={ring(outline)} />
      {openings.map((rect) => (
        <polygon
          key={`${rect.x} ${rect.y}`}
          className="face-picture-opening"
          points={ring(rectOutline(rect))}
        />
      ))}
      {places.map((place) => (
        <circle
          key={`${place.x} ${place.y}`}
          className={`face-picture-place place-${place.kind}`}
          cx={place.x}
          cy={y[1] - place.y}
          r={Math.max(width, height) * (place.kind === "same" ? MARK / 2 : MARK)}
        />
      ))}
    </svg>
  );
}

import type { MouseEvent } from "react";
import { type Polygon, polygonBounds } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import { heading } from "../../scene/views/extent.ts";
import type { FaceLayout, Piece } from "../../setout/facade.ts";
import { useWords } from "../words.ts";

const points = (outline: Polygon): string => outline.map(([x, y]) => `${x},${-y}`).join(" ");

/** Cladding alone is drawn: what lies behind it would only darken the wall. */
const isDrawn = ({ kind }: Piece): boolean => kind === "sheet" || kind === "board" || kind === "post";

/** A face seen from outside, with what is looked for on it; pressed, it tells the place in the face frame (mm). */
export function FacePicture({
  face,
  here = [],
  spot,
  onPlace,
}: {
  face: FaceLayout;
  /** Marks. */
  here?: readonly string[];
  spot?: { readonly x: number; readonly y: number } | undefined;
  onPlace?: (x: number, y: number) => void;
}) {
  const { w } = useWords();
  const { x, y } = polygonBounds(face.outline);
  const pad = Math.max(x[1] - x[0], y[1] - y[0]) * 0.03;
  const press = (event: MouseEvent<SVGSVGElement>): void => {
    const matrix = event.currentTarget.getScreenCTM();
    if (!matrix || !onPlace) return;
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    onPlace(Math.round(at.x), Math.round(-at.y));
  };
  const label = w(here.length > 0 ? "page.site.face-with" : "page.site.face", {
    face: heading(face.id),
    marks: here.slice(0, 12),
  });
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the same place is typed in the fields beside it
    <svg
      className="face-picture"
      viewBox={`${x[0] - pad} ${-y[1] - pad} ${x[1] - x[0] + 2 * pad} ${y[1] - y[0] + 2 * pad}`}
      role="img"
      aria-label={label}
      onClick={press}
    >
      <polygon className="wall" points={points(face.outline)} />
      {face.pieces.filter(isDrawn).map(({ mark, outline }) => (
        <polygon key={mark} className="piece" points={points(outline)} />
      ))}
      {face.openings.map(({ id, region }) => (
        <polygon key={id} className="opening" points={points(rectOutline(region))} />
      ))}
      {face.pieces
        .filter(({ mark }) => here.includes(mark))
        .map(({ mark, outline }) => (
          <polygon key={mark} className="here" points={points(outline)} />
        ))}
      {spot && <circle className="here" cx={spot.x} cy={-spot.y} r={pad} />}
    </svg>
  );
}

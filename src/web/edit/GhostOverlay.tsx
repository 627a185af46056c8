import type { Design } from "../../design.ts";
import { faceExtent } from "../../scene/views/extent.ts";
import { sayLength } from "../../text/say.ts";
import { useWords } from "../words.ts";
import type { OpeningDrag } from "./use-opening-drag.ts";

/** The opening in the hand: its outline, the lines that it meets, and how far it stands from the face's ends and the datum. */
export function GhostOverlay({
  design,
  ghost,
  toPixels,
}: {
  design: Design;
  ghost: NonNullable<OpeningDrag["ghost"]>;
  toPixels: (x: number, y: number) => readonly [number, number];
}) {
  const { reader } = useWords();
  const face = design.facade.faces.find(({ id }) => id === ghost.face);
  if (!face) return null;
  const { rect, met } = ghost;
  const extent = faceExtent(face);
  const [left, bottom] = toPixels(rect.x[0], rect.y[0]);
  const [right, top] = toPixels(rect.x[1], rect.y[1]);
  const [low, floor] = toPixels(extent.x[0], extent.y[0]);
  const [high, roof] = toPixels(extent.x[1], extent.y[1]);
  const middle = (top + bottom) / 2;
  const said = (mm: number): string => sayLength(mm, reader);
  return (
    <g className="ghost">
      {met.x.map((x) => (
        <path key={`x${x}`} className="ghost-line" d={`M${toPixels(x, 0)[0]} ${roof}V${floor}`} />
      ))}
      {met.y.map((y) => (
        <path key={`y${y}`} className="ghost-line" d={`M${low} ${toPixels(0, y)[1]}H${high}`} />
      ))}
      <rect className="ghost-outline" x={left} y={top} width={right - left} height={bottom - top} />
      <text x={(low + left) / 2} y={middle} textAnchor="middle">
        {said(rect.x[0])}
      </text>
      <text x={(left + right) / 2} y={bottom + 15} textAnchor="middle">
        {`${said(rect.x[1] - rect.x[0])} × ${said(rect.y[1] - rect.y[0])}`}
      </text>
      <text x={right + 8} y={bottom - 4} textAnchor="start">
        {said(rect.y[0])}
      </text>
    </g>
  );
}

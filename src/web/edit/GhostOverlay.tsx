import type { Design } from "../../design.ts";
import type { Rect } from "../../geometry/rect.ts";
import { faceExtent } from "../../scene/views/extent.ts";
import { sayLength } from "../../text/say.ts";
import { useWords } from "../words.ts";
import type { Ghost } from "./handles/handle.ts";

/** What is in the hand: its outline, the lines that it meets, and how far it stands from the face's ends and the datum. */
export function GhostOverlay({
  design,
  ghost,
  toPixels,
}: {
  design: Design;
  ghost: Ghost;
  toPixels: (x: number, y: number) => readonly [number, number];
}) {
  const { reader } = useWords();
  const face = design.facade.faces.find(({ id }) => id === ghost.face);
  if (!face) return null;
  const extent = faceExtent(face);
  const [low, floor] = toPixels(extent.x[0], extent.y[0]);
  const [high, roof] = toPixels(extent.x[1], extent.y[1]);
  const said = (mm: number): string => sayLength(mm, reader);
  const upright = (x: number): string => `M${toPixels(x, 0)[0]} ${roof}V${floor}`;
  const level = (y: number): string => `M${low} ${toPixels(0, y)[1]}H${high}`;
  return (
    <g className="ghost">
      {ghost.met.x.map((x) => (
        <path key={`x${x}`} className="ghost-line" d={upright(x)} />
      ))}
      {ghost.met.y.map((y) => (
        <path key={`y${y}`} className="ghost-line" d={level(y)} />
      ))}
      {ghost.kind === "line" && (
        <>
          <path className="ghost-outline" d={ghost.axis === "x" ? upright(ghost.at) : level(ghost.at)} />
          <text
            x={ghost.axis === "x" ? toPixels(ghost.at, 0)[0] + 6 : (low + high) / 2}
            y={ghost.axis === "x" ? (roof + floor) / 2 : toPixels(0, ghost.at)[1] - 6}
            textAnchor={ghost.axis === "x" ? "start" : "middle"}
          >
            {said(ghost.at)}
          </text>
        </>
      )}
      {ghost.kind === "outline" && (
        <polygon
          className="ghost-outline"
          points={ghost.outline.map(([x, y]) => toPixels(x, y).join(",")).join(" ")}
        />
      )}
      {ghost.kind === "round" && (
        <RoundGhost at={ghost.at} diameter={ghost.diameter} low={low} said={said} toPixels={toPixels} />
      )}
      {ghost.kind === "rect" && <RectGhost rect={ghost.rect} low={low} said={said} toPixels={toPixels} />}
    </g>
  );
}

interface Measured {
  /** The face's left end, pixels. */
  low: number;
  said: (mm: number) => string;
  toPixels: (x: number, y: number) => readonly [number, number];
}

function RectGhost({ rect, low, said, toPixels }: { rect: Rect } & Measured) {
  const [left, bottom] = toPixels(rect.x[0], rect.y[0]);
  const [right, top] = toPixels(rect.x[1], rect.y[1]);
  return (
    <>
      <rect className="ghost-outline" x={left} y={top} width={right - left} height={bottom - top} />
      <text x={(low + left) / 2} y={(top + bottom) / 2} textAnchor="middle">
        {said(rect.x[0])}
      </text>
      <text x={(left + right) / 2} y={bottom + 15} textAnchor="middle">
        {`${said(rect.x[1] - rect.x[0])} × ${said(rect.y[1] - rect.y[0])}`}
      </text>
      <text x={right + 8} y={bottom - 4} textAnchor="start">
        {said(rect.y[0])}
      </text>
    </>
  );
}

/** Measured by its middle. */
function RoundGhost({
  at,
  diameter,
  low,
  said,
  toPixels,
}: { at: readonly [number, number]; diameter: number } & Measured) {
  const [x, y] = toPixels(at[0], at[1]);
  const r = x - toPixels(at[0] - diameter / 2, 0)[0];
  return (
    <>
      <circle className="ghost-outline" cx={x} cy={y} r={r} />
      <text x={(low + x - r) / 2} y={y + 4} textAnchor="middle">
        {said(at[0])}
      </text>
      <text x={x} y={y + r + 15} textAnchor="middle">
        {`⌀ ${said(diameter)}`}
      </text>
      <text x={x + r + 8} y={y + 4} textAnchor="start">
        {said(at[1])}
      </text>
    </>
  );
}

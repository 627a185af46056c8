import type { Design } from "../../design.ts";
import { textWidth } from "../../scene/text-widths.ts";
import { sayLength } from "../../text/say.ts";
import { outlineOf, type Pick, pickName } from "../picks/pick.ts";
import { useWords } from "../words.ts";
import type { Size } from "./camera.ts";

/** Height of capitals in labels, pixels. */
const CAPITALS = 9;
const OFF = 12;

/** What is picked, in pencil red with its size. */
export function PickOverlay({
  design,
  pick,
  size,
  toPixels,
}: {
  design: Design;
  pick: Pick;
  size: Size;
  /** From the face frame. */
  toPixels: (x: number, y: number) => readonly [number, number];
}) {
  const { reader, s } = useWords();
  const outline = outlineOf(design, pick);
  if (!outline) return null;
  const points = outline.map(([x, y]) => toPixels(x, y));
  const across = outline.map(([x]) => x);
  const up = outline.map(([, y]) => y);
  const width = Math.max(...across) - Math.min(...across);
  const height = Math.max(...up) - Math.min(...up);
  const left = Math.min(...points.map(([x]) => x));
  const right = Math.max(...points.map(([x]) => x));
  const top = Math.min(...points.map(([, y]) => y));
  const bottom = Math.max(...points.map(([, y]) => y));
  const named = pick.kind === "piece" ? `${s(pickName(design, pick))} · ` : "";
  const above = top - OFF;
  const beside = right + OFF;
  return (
    <g className="pick">
      <polygon className="pick-halo" points={points.map((point) => point.join(",")).join(" ")} />
      <polygon className="pick-outline" points={points.map((point) => point.join(",")).join(" ")} />
      <path
        className="pick-dimension"
        d={`M${left - 4} ${above}H${right + 4}M${left - 4} ${above + 4}l8 -8M${right - 4} ${above + 4}l8 -8M${left} ${top - 3}V${above - 4}M${right} ${top - 3}V${above - 4}`}
      />
      {height > 0 && (
        <path
          className="pick-dimension"
          d={`M${beside} ${top - 4}V${bottom + 4}M${beside - 4} ${top + 4}l8 -8M${beside - 4} ${bottom + 4}l8 -8M${right + 3} ${top}H${beside + 4}M${right + 3} ${bottom}H${beside + 4}`}
        />
      )}
      <Label
        text={`${named}${sayLength(width, reader)}`}
        x={(left + right) / 2}
        y={above - 9}
        anchor="middle"
        size={size}
      />
      <Label
        text={height > 0 ? sayLength(height, reader) : s(pickName(design, pick))}
        x={beside + 9}
        y={(top + bottom) / 2}
        anchor="start"
        size={size}
      />
    </g>
  );
}

/** A figure on a plate of paper, kept inside the view. */
function Label({
  text,
  x,
  y,
  anchor,
  size,
}: {
  text: string;
  x: number;
  y: number;
  anchor: "start" | "middle";
  size: Size;
}) {
  const wide = textWidth({ text, height: CAPITALS, weight: "bold" }) + 10;
  const high = CAPITALS + 9;
  const wished = anchor === "middle" ? x - wide / 2 : x;
  const left = Math.min(Math.max(wished, 18), size.width - wide - 4);
  const top = Math.min(Math.max(y - high / 2, 18), size.height - high - 4);
  return (
    <g>
      <rect className="plate" x={left} y={top} width={wide} height={high} />
      <text x={left + wide / 2} y={top + high / 2 + CAPITALS / 2} textAnchor="middle">
        {text}
      </text>
    </g>
  );
}

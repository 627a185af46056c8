import type { Size } from "./camera.ts";
import { type Fields, letter } from "./fields.ts";

const STRIP = 14;

/** Field references along the edges; they stay with the drawing when it is moved, so that what cites them stays true. */
export function FieldStrips({
  fields,
  size,
  toPixels,
}: {
  fields: Fields;
  size: Size;
  toPixels: (x: number, y: number) => readonly [number, number];
}) {
  const { rect, columns, rows } = fields;
  const left = toPixels(rect.x[0], rect.y[1]);
  const right = toPixels(rect.x[1], rect.y[0]);
  const [wide, high] = [(right[0] - left[0]) / columns, (right[1] - left[1]) / rows];
  const across = Array.from({ length: columns }, (_, i) => ({
    from: left[0] + i * wide,
    name: String(i + 1),
  }));
  const down = Array.from({ length: rows }, (_, i) => ({ from: left[1] + i * high, name: letter(i) }));
  return (
    <g className="fields">
      <rect className="strip" width={size.width} height={STRIP} />
      <rect className="strip" width={STRIP} height={size.height} />
      {across.map(({ from, name }) => (
        <g key={name}>
          {from > STRIP + 2 && <line x1={from} x2={from} y1={0} y2={STRIP - 3} />}
          <text x={from + wide / 2} y={11} textAnchor="middle">
            {name}
          </text>
        </g>
      ))}
      {down.map(({ from, name }) => (
        <g key={name}>
          {from > STRIP + 2 && <line x1={0} x2={STRIP - 3} y1={from} y2={from} />}
          <text x={7} y={from + high / 2 + 4} textAnchor="middle">
            {name}
          </text>
        </g>
      ))}
    </g>
  );
}

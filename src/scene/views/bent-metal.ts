/** Bent metal in section, its legs numbered, with what the bender needs beside it. */
import type { Point } from "../../geometry/point.ts";
import type { Piece } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import { makeScene } from "../bounds.ts";
import { type BesideLine, linesBeside } from "../lines-beside.ts";
import type { Item, Scene } from "../model.ts";
import { layerName } from "../roles.ts";
import { TEXT } from "./style.ts";

export interface BentKind {
  readonly piece: Piece;
  readonly pieces: readonly Piece[];
}

/** Bent pieces that have one section, material and thickness. */
export function bentKinds(pieces: readonly Piece[]): BentKind[] {
  const kinds = new Map<string, { piece: Piece; pieces: Piece[] }>();
  for (const piece of pieces) {
    if (piece.kind !== "flashing" || !sectionOf(piece)) continue;
    const key = JSON.stringify([legs(piece), piece.material, piece.cut.thickness, (piece.dams ?? []).length]);
    const known = kinds.get(key);
    if (known) known.pieces.push(piece);
    else kinds.set(key, { piece, pieces: [piece] });
  }
  return [...kinds.values()];
}

function sectionOf({ profile, planProfile }: Piece): readonly Point[] | undefined {
  return profile ?? planProfile;
}

export interface Leg {
  /** Over the outer corners, mm. */
  readonly length: number;
  /** Inside angle to the leg before it, degrees; absent of the first. */
  readonly angleDeg?: number;
}

/** To a tenth of a millimetre and of a degree: what a bender sets. */
function legs(piece: Piece): Leg[] {
  const points = sectionOf(piece) ?? [];
  const vectors = points.slice(1).map(([x, y], i): Point => {
    const [fx, fy] = points[i] as Point;
    return [x - fx, y - fy];
  });
  return vectors.map(([dx, dy], i): Leg => {
    const length = Math.round(Math.hypot(dx, dy) * 10) / 10;
    const before = vectors[i - 1];
    if (!before) return { length };
    const turn = Math.atan2(before[0] * dy - before[1] * dx, before[0] * dx + before[1] * dy);
    return { length, angleDeg: Math.round((180 - (Math.abs(turn) * 180) / Math.PI) * 10) / 10 };
  });
}

const SCALE = 1 / 2;

export function bentMetalScene({ piece, pieces }: BentKind): Scene {
  const points = sectionOf(piece) ?? [];
  const paper = 1 / SCALE;
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const own = legs(piece);
  const right = Math.max(...xs);
  const lines: BesideLine[] = [
    ...own.map(({ length, angleDeg }, i): BesideLine => {
      const values = { leg: i + 1, length };
      const text =
        angleDeg === undefined
          ? message("drawing.bent.leg", values)
          : message("drawing.bent.leg-angle", { ...values, angle: angleDeg });
      return { text };
    }),
    {
      text: message("drawing.bent.flat", { width: piece.cut.width, thickness: piece.cut.thickness }),
    },
    ...(piece.dams && piece.dams.length > 0 ? [{ text: message("drawing.bent.dams") }] : []),
    ...pieces.map(
      ({ mark, cut }): BesideLine => ({
        text: message("drawing.bent.piece", { mark, length: cut.length }),
        weight: "bold",
      }),
    ),
  ];
  return makeScene({
    id: `bent-${piece.mark}`,
    title: message("drawing.title.bent", { mark: piece.mark, count: pieces.length }),
    scale: SCALE,
    items: [
      { kind: "polyline", layer: layerName("TRIM"), of: piece.mark, points, line: "cut" },
      ...points.slice(1).map((point, i): Item => legNumber(points[i] as Point, point, i + 1, paper)),
      ...linesBeside(lines, {
        at: [right + 16 * paper, Math.max(...ys)],
        height: Math.max(60, (Math.max(...ys) - Math.min(...ys)) * SCALE),
        scale: SCALE,
      }),
    ],
  });
}

/** Off the middle of its leg, to its left as the section runs. */
function legNumber([ax, ay]: Point, [bx, by]: Point, number: number, paper: number): Item {
  const long = Math.hypot(bx - ax, by - ay) || 1;
  const off = 3.4 * paper;
  return {
    kind: "text",
    layer: layerName("TRIM", "T"),
    at: [(ax + bx) / 2 + ((by - ay) / long) * -off, (ay + by) / 2 + ((bx - ax) / long) * off],
    text: String(number),
    height: TEXT,
    anchor: "middle",
    baseline: "middle",
    ink: "chalk",
  };
}

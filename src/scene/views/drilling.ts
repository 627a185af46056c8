/** One sheet piece as it lies on the bench, outer face up: what is drilled where, measured from its lower left corner. */
import type { Point } from "../../geometry/point.ts";
import { type Polygon, polygonBounds } from "../../geometry/polygon.ts";
import type { Piece } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { makeScene } from "../bounds.ts";
import { type BesideLine, LINE_STEP, linesBeside } from "../lines-beside.ts";
import type { Item, Scene } from "../model.ts";
import { layerName } from "../roles.ts";
import { fixingMark } from "./fixing-marks.ts";
import { fittingScale } from "./scales.ts";
import { DIMENSION_STEP, TEXT } from "./style.ts";

/** What one piece may take on the paper, mm. */
const ROOM = [150, 116] as const;

const MARKS_A_LINE = 5;

/** Pieces that are drilled alike, by everything that is drilled and sawn. */
export interface DrillingKind {
  readonly piece: Piece;
  readonly marks: readonly string[];
}

/** Unlike pieces in the order in which they come, each with all its marks. */
export function drillingKinds(pieces: readonly Piece[]): DrillingKind[] {
  const kinds = new Map<string, { piece: Piece; marks: string[] }>();
  for (const piece of pieces) {
    const local = inOwnFrame(piece);
    const key = JSON.stringify([local, piece.cut, piece.material, piece.grain ?? 0]);
    const known = kinds.get(key);
    if (known) known.marks.push(piece.mark);
    else kinds.set(key, { piece, marks: [piece.mark] });
  }
  return [...kinds.values()];
}

interface Local {
  readonly outline: Polygon;
  readonly holes: readonly Polygon[];
  readonly fixings: readonly Pick<Piece["fixings"][number], "x" | "y" | "kind" | "hole">[];
  readonly reliefs: NonNullable<Piece["reliefs"]>;
}

function inOwnFrame({ outline, holes, fixings, reliefs = [] }: Piece): Local {
  const box = polygonBounds(outline);
  const [left, low] = [box.x[0], box.y[0]];
  const moved = ([x, y]: Point): Point => [snap(x - left), snap(y - low)];
  return {
    outline: outline.map(moved),
    holes: holes.map((hole) => hole.map(moved)),
    fixings: fixings
      .map(({ x, y, kind, hole }) => ({ x: snap(x - left), y: snap(y - low), kind, hole }))
      .sort((a, b) => a.y - b.y || a.x - b.x),
    reliefs: reliefs.map(({ x, y, diameter }) => ({ x: snap(x - left), y: snap(y - low), diameter })),
  };
}

/**
 * @param room what the piece may take on the paper, mm
 * @param notes whether its marks, size and holes are written over it
 */
export function drillingScene(
  { piece, marks }: DrillingKind,
  {
    room = ROOM,
    notes: withNotes = true,
  }: { readonly room?: readonly [width: number, height: number]; readonly notes?: boolean } = {},
): Scene {
  const local = inOwnFrame(piece);
  const { x, y } = polygonBounds(local.outline);
  const scale = fittingScale({ x, y }, { room });
  const paper = 1 / scale;
  const layer = layerName("SHEET");
  const sizes = holeSizes(local);
  const rising = (all: readonly number[]): number[] => [...new Set(all.map(snap))].sort((a, b) => a - b);
  const notes = withNotes ? noteLines({ piece, marks, local, sizes }) : [];
  const running = (along: "x" | "y", points: readonly number[]): Item => ({
    kind: "dimension",
    layer: layerName("FIXING", "D"),
    of: piece.mark,
    style: "running",
    along,
    at: -DIMENSION_STEP * paper,
    from: 0,
    points,
  });
  return makeScene({
    id: `drilling-${piece.mark}`,
    title: message("drawing.title.drilling", { mark: marks[0] ?? piece.mark, count: marks.length }),
    scale,
    items: [
      {
        kind: "polygon",
        layer,
        of: piece.mark,
        outline: local.outline,
        holes: local.holes,
        line: "visible",
        fill: "sheet",
      },
      ...local.reliefs.map(
        (one): Item => ({
          kind: "circle",
          layer,
          of: piece.mark,
          centre: [one.x, one.y],
          radius: Math.max(one.diameter / 2, 0.9 * paper),
          line: "visible",
        }),
      ),
      ...local.fixings.map((one) => fixingMark(one, { of: piece.mark, scale })),
      ...letterItems(local, sizes, { middle: (x[0] + x[1]) / 2, paper }),
      ...upArrow([x[1] + 6 * paper, y[1]], paper),
      ...linesBeside(notes, {
        at: [0, y[1] + (notes.length * LINE_STEP + 2) * paper],
        height: notes.length * LINE_STEP,
        scale,
      }),
      running("x", rising([...x, ...local.fixings.map((one) => one.x)])),
      running("y", rising([...y, ...local.fixings.map((one) => one.y)])),
    ],
  });
}

function holeSizes({ fixings }: Local): number[] {
  return [...new Set(fixings.map(({ hole }) => hole))].sort((a, b) => a - b);
}

const LETTERS = "abcdefghijkmnpqrstuvwxyz";

function letterOf(sizes: readonly number[], hole: number): string {
  return LETTERS[sizes.indexOf(hole)] ?? "?";
}

/** Where a letter may stand from its hole, mm on paper: beside it, then over, under and across. */
const SPOTS: readonly Point[] = [
  [3.2, 0],
  [-3.2, 0],
  [0, 3.2],
  [0, -3.2],
  [3, 3],
  [3, -3],
  [-3, 3],
  [-3, -3],
];
const LETTER_ROOM = 3.2;

/** Each beside its hole, clear of the other letters and holes; towards the middle first. */
function letterItems(
  { fixings }: Local,
  sizes: readonly number[],
  { middle, paper }: { middle: number; paper: number },
): Item[] {
  const taken: Point[] = [];
  const near = (a: Point, [x, y]: Point, least: number): boolean =>
    Math.max(Math.abs(a[0] - x), Math.abs(a[1] - y)) < least * paper;
  return fixings.map(({ x, y, hole }): Item => {
    const inward = x > middle ? -1 : 1;
    const spots = SPOTS.map(([dx, dy]): Point => [x + inward * dx * paper, y + dy * paper]);
    const clear = (spot: Point): boolean =>
      !taken.some((one) => near(one, spot, LETTER_ROOM)) &&
      !fixings.some((one) => near([one.x, one.y], spot, LETTER_ROOM * 0.7));
    const at = spots.find(clear) ?? spots[0] ?? [x, y];
    taken.push(at);
    return {
      kind: "text",
      layer: layerName("FIXING", "T"),
      at,
      text: letterOf(sizes, hole),
      height: TEXT,
      anchor: "middle",
      baseline: "middle",
    };
  });
}

function upArrow([x, top]: Point, paper: number): Item[] {
  const outline: Polygon = [
    [x - 2 * paper, top - 6 * paper],
    [x, top],
    [x + 2 * paper, top - 6 * paper],
  ];
  return [
    { kind: "polygon", layer: layerName("FRAME"), outline, line: "detail", fill: "ink" },
    {
      kind: "line",
      layer: layerName("FRAME"),
      from: [x, top - 6 * paper],
      to: [x, top - 16 * paper],
      line: "cut",
    },
  ];
}

function noteLines({
  piece,
  marks,
  local,
  sizes,
}: {
  piece: Piece;
  marks: readonly string[];
  local: Local;
  sizes: readonly number[];
}): BesideLine[] {
  const { cut, massKg, material } = piece;
  const lines: (Message | string)[] = [
    message("drawing.drill.face"),
    message("drawing.drill.size", { width: cut.width, length: cut.length, thickness: cut.thickness }),
    material,
    message("drawing.drill.mass", { mass: massKg }),
    ...sizes.flatMap((hole) =>
      (["fixed", "sliding", "plain"] as const).flatMap((kind): Message[] => {
        const count = local.fixings.filter((one) => one.hole === hole && one.kind === kind).length;
        return count === 0
          ? []
          : [message("drawing.drill.hole", { letter: letterOf(sizes, hole), count, hole, kind })];
      }),
    ),
    ...(local.reliefs.length === 0
      ? []
      : [
          message("drawing.reliefs", {
            count: local.reliefs.length,
            diameter: local.reliefs[0]?.diameter ?? 0,
          }),
        ]),
  ];
  const rows = Array.from({ length: Math.ceil(marks.length / MARKS_A_LINE) }, (_, i) =>
    marks.slice(i * MARKS_A_LINE, (i + 1) * MARKS_A_LINE).join(", "),
  );
  return [
    ...rows.map((text): BesideLine => ({ text, weight: "bold" })),
    ...lines.map((text): BesideLine => ({ text })),
  ];
}

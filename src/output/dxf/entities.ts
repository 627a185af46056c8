/** Marks of a draw list as entities: lines by role, fills as solid hatches, texts as high as they are on paper at their scale. */
import type { Point } from "../../geometry/point.ts";
import type { Polygon } from "../../geometry/polygon.ts";
import { LINE_STYLES, LINE_WIDTHS, type LineRole } from "../../scene/roles.ts";
import type { Mark, Shape, TextShape } from "../../scene/shapes.ts";
import { type ColourName, PALETTES } from "../palettes.ts";
import { LINE_TYPES } from "./line-types.ts";
import { at, colour, type Handles, plain, type Tag } from "./tags.ts";

const INKS = PALETTES.print;

/** Shown light on dark and dark on light, as each reader's screen has it: ink has the layer's colour (7), what is fainter a grey (8). */
const FAINT = 8;
const BY_LAYER: ReadonlySet<string> = new Set(["ink", "on-board"]);
const GREYS: ReadonlySet<string> = new Set(["second", "membrane"]);

function inkTags(ink: ColourName): Tag[] {
  if (BY_LAYER.has(ink)) return [];
  return GREYS.has(ink) ? [[62, FAINT]] : [[420, colour(INKS[ink])]];
}

/** What is filled with an ink is a mark; all other fills stand for a material, or for the paper. */
const INK_FILLS: ReadonlySet<string> = new Set(["ink", "second", "chalk", "red"]);

/** Layers of material fills begin switched off: they read on white paper alone. */
export const FILL_LAYER = "HF";

/** Registered name of what we hang on entities: the mark or id of what is drawn, and the number of its mark in the drawing. */
export const APPLICATION = "OUTERLEAF";

export interface Into {
  readonly handles: Handles;
  /** Handle of the block record that holds the entity. */
  readonly owner: string;
  /** Millimetres of paper for one of the model. */
  readonly scale: number;
  readonly place: (point: Point) => Point;
}

export function markTags(mark: Mark, index: number, into: Into): Tag[] {
  const extra: Tag[] = [
    [1001, APPLICATION],
    [1000, plain(mark.of ?? "")],
    [1000, String(index)],
  ];
  return shapeEntities(mark, mark.layer, into).flatMap((entity) => [...entity, ...extra]);
}

function shapeEntities(shape: Shape, layer: string, into: Into): Tag[][] {
  switch (shape.shape) {
    case "text":
      return [textEntity(shape, layer, into)];
    case "arc": {
      const { centre, radius, fromDeg, toDeg, line } = shape;
      return [
        [
          ...head("ARC", layer, into, line),
          [100, "AcDbCircle"],
          ...at(into.place(centre)),
          [40, radius],
          [100, "AcDbArc"],
          [50, ((fromDeg % 360) + 360) % 360],
          [51, ((toDeg % 360) + 360) % 360],
        ],
      ];
    }
    case "circle": {
      const { centre, radius, line, fill } = shape;
      const [x, y] = into.place(centre);
      return [
        ...(fill
          ? [
              hatch(
                [
                  [
                    [x - radius, y],
                    [x + radius, y],
                  ],
                ],
                { layer, into, ink: fill, round: true },
              ),
            ]
          : []),
        ...(line
          ? [
              [
                ...head("CIRCLE", layer, into, line),
                [100, "AcDbCircle"],
                ...at([x, y]),
                [40, radius],
              ] as Tag[],
            ]
          : []),
      ];
    }
    case "path": {
      const { parts, closed, line, fill } = shape;
      const placed = parts.filter((part) => part.length > 1).map((part) => part.map(into.place));
      return [
        ...(fill ? [hatch(placed, { layer, into, ink: fill, round: false })] : []),
        ...(line ? placed.map((part) => polyline(part, { closed, layer, into, line })) : []),
      ];
    }
  }
}

/** The tags that every entity begins with; of a line, its look. */
export function head(type: string, layer: string, { handles, owner, scale }: Into, line?: LineRole): Tag[] {
  const style = line && LINE_STYLES[line];
  return [
    [0, type],
    [5, handles.next()],
    [330, owner],
    [100, "AcDbEntity"],
    [8, layer],
    ...(style
      ? ([
          [6, LINE_TYPES[style.pattern].name],
          ...(style.pattern === "continuous" ? [] : [[48, 1 / scale]]),
          [370, Math.round(LINE_WIDTHS[style.width] * 100)],
          ...inkTags(style.ink),
        ] as Tag[])
      : []),
  ];
}

function polyline(
  points: Polygon,
  { closed, layer, into, line }: { closed: boolean; layer: string; into: Into; line: LineRole },
): Tag[] {
  return [
    ...head("LWPOLYLINE", layer, into, line),
    [100, "AcDbPolyline"],
    [90, points.length],
    [70, closed ? 1 : 0],
    [43, 0],
    ...points.flatMap(([x, y]): Tag[] => [
      [10, x],
      [20, y],
    ]),
  ];
}

/** Fills of materials stand on a layer of their element's own, so that one press leaves the lines alone. */
function hatch(
  rings: readonly Polygon[],
  { layer, into, ink, round }: { layer: string; into: Into; ink: ColourName; round: boolean },
): Tag[] {
  return [
    ...head("HATCH", INK_FILLS.has(ink) ? layer : `${layer.slice(0, 8)}${FILL_LAYER}`, into),
    ...(INK_FILLS.has(ink) ? inkTags(ink) : ([[420, colour(INKS[ink])]] as Tag[])),
    [100, "AcDbHatch"],
    ...at([0, 0]),
    [210, 0],
    [220, 0],
    [230, 1],
    [2, "SOLID"],
    [70, 1],
    [71, 0],
    [91, rings.length],
    ...rings.flatMap((ring, i): Tag[] => [
      [92, i === 0 ? 3 : 2],
      [72, round ? 1 : 0],
      [73, 1],
      [93, ring.length],
      ...ring.flatMap(([x, y]): Tag[] => [[10, x], [20, y], ...(round ? ([[42, 1]] as Tag[]) : [])]),
      [97, 0],
    ]),
    [75, 0],
    [76, 1],
    [98, 0],
  ];
}

const ANCHORS: Readonly<Record<TextShape["anchor"], number>> = { start: 0, middle: 1, end: 2 };

function textEntity(shape: TextShape, layer: string, into: Into): Tag[] {
  const point = into.place(shape.at);
  return [
    ...head("TEXT", layer, into),
    ...inkTags(shape.ink),
    [100, "AcDbText"],
    ...at(point),
    [40, shape.height / into.scale],
    [1, plain(shape.text)],
    [50, shape.angleDeg],
    [7, "Standard"],
    [72, ANCHORS[shape.anchor]],
    ...at(point, 11),
    [100, "AcDbText"],
    [73, 0],
  ];
}

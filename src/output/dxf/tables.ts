/** What stands before the entities of a DXF file: header, tables, and the blocks that dimensions are pictured by. */
import type { Rect } from "../../geometry/rect.ts";
import { layerName } from "../../scene/roles.ts";
import type { Picture } from "./dimensions.ts";
import { APPLICATION, FILL_LAYER, type Into } from "./entities.ts";
import { LINE_TYPES } from "./line-types.ts";
import { at, type Handles, type Tag } from "./tags.ts";

export function section(name: string, tags: readonly Tag[]): Tag[] {
  return [[0, "SECTION"], [2, name], ...tags, [0, "ENDSEC"]];
}

/** Millimetres, metric; `$DIMSCALE` is how many times smaller the first view is on paper. */
export function header({
  bounds,
  seed,
  timesSmaller,
}: {
  bounds: Rect;
  seed: string;
  timesSmaller: number;
}): Tag[] {
  const { x, y } = bounds;
  return section("HEADER", [
    [9, "$ACADVER"],
    [1, "AC1021"],
    [9, "$DWGCODEPAGE"],
    [3, "ANSI_1252"],
    [9, "$INSBASE"],
    ...at([0, 0]),
    [9, "$EXTMIN"],
    ...at([x[0], y[0]]),
    [9, "$EXTMAX"],
    ...at([x[1], y[1]]),
    [9, "$LTSCALE"],
    [40, 1],
    [9, "$DIMSCALE"],
    [40, timesSmaller],
    [9, "$MEASUREMENT"],
    [70, 1],
    [9, "$INSUNITS"],
    [70, 4],
    [9, "$LWDISPLAY"],
    [290, 1],
    [9, "$HANDSEED"],
    [5, seed],
  ]);
}

export interface Styled {
  readonly name: string;
  readonly timesSmaller: number;
}

export interface TableParts {
  readonly handles: Handles;
  readonly layers: readonly string[];
  readonly styles: readonly Styled[];
  /** The model's and the paper's own records, then those of pictures. */
  readonly records: readonly { readonly name: string; readonly handle: string }[];
  readonly bounds: Rect;
}

export function tables({ handles, layers, styles, records, bounds }: TableParts): Tag[] {
  const table = (
    name: string,
    rows: readonly ((owner: string) => Tag[])[],
    more: readonly Tag[] = [],
  ): Tag[] => {
    const owner = handles.next();
    return [
      [0, "TABLE"],
      [2, name],
      [5, owner],
      [330, "0"],
      [100, "AcDbSymbolTable"],
      [70, rows.length],
      ...more,
      ...rows.flatMap((row) => row(owner)),
      [0, "ENDTAB"],
    ];
  };
  const row = (
    type: string,
    marker: string,
    name: string,
    tags: readonly Tag[],
    { handleCode = 5, handle = "" } = {},
  ) => {
    return (owner: string): Tag[] => [
      [0, type],
      [handleCode, handle || handles.next()],
      [330, owner],
      [100, "AcDbSymbolTableRecord"],
      [100, marker],
      [2, name],
      ...tags,
    ];
  };
  const middle = ([from, to]: readonly [number, number]): number => (from + to) / 2;
  const high = bounds.y[1] - bounds.y[0] || 1;
  const wide = bounds.x[1] - bounds.x[0] || 1;
  return section("TABLES", [
    ...table("VPORT", [
      row("VPORT", "AcDbViewportTableRecord", "*Active", [
        [70, 0],
        [10, 0],
        [20, 0],
        [11, 1],
        [21, 1],
        [12, middle(bounds.x)],
        [22, middle(bounds.y)],
        [13, 0],
        [23, 0],
        [14, 10],
        [24, 10],
        [15, 10],
        [25, 10],
        [16, 0],
        [26, 0],
        [36, 1],
        [17, 0],
        [27, 0],
        [37, 0],
        [40, Math.max(high, wide / 1.5)],
        [41, 1.5],
        [42, 50],
      ]),
    ]),
    ...table("LTYPE", [
      row("LTYPE", "AcDbLinetypeTableRecord", "ByBlock", lineType("", [])),
      row("LTYPE", "AcDbLinetypeTableRecord", "ByLayer", lineType("", [])),
      ...Object.values(LINE_TYPES).map(({ name, about, dashes }) =>
        row("LTYPE", "AcDbLinetypeTableRecord", name, lineType(about, dashes)),
      ),
    ]),
    ...table(
      "LAYER",
      ["0", ...layers].map((name) =>
        row("LAYER", "AcDbLayerTableRecord", name, [
          [70, 0],
          [62, name.endsWith(FILL_LAYER) ? -7 : 7],
          [6, "Continuous"],
          [370, -3],
        ]),
      ),
    ),
    ...table("STYLE", [
      row("STYLE", "AcDbTextStyleTableRecord", "Standard", [
        [70, 0],
        [40, 0],
        [41, 1],
        [50, 0],
        [71, 0],
        [42, 2.5],
        [3, "txt"],
        [4, ""],
      ]),
    ]),
    ...table("VIEW", []),
    ...table("UCS", []),
    ...table(
      "APPID",
      ["ACAD", APPLICATION].map((name) => row("APPID", "AcDbRegAppTableRecord", name, [[70, 0]])),
    ),
    ...table(
      "DIMSTYLE",
      [{ name: "Standard", timesSmaller: 1 }, ...styles].map(({ name, timesSmaller }) =>
        row("DIMSTYLE", "AcDbDimStyleTableRecord", name, dimensionStyle(timesSmaller), { handleCode: 105 }),
      ),
      [[100, "AcDbDimStyleTable"]],
    ),
    ...table(
      "BLOCK_RECORD",
      records.map(({ name, handle }) => row("BLOCK_RECORD", "AcDbBlockTableRecord", name, [], { handle })),
    ),
  ]);
}

function lineType(about: string, dashes: readonly number[]): Tag[] {
  return [
    [70, 0],
    [3, about],
    [72, 65],
    [73, dashes.length],
    [40, dashes.reduce((sum, one) => sum + one, 0)],
    ...dashes.flatMap((one, i): Tag[] => [
      [49, i % 2 === 0 ? one : -one],
      [74, 0],
    ]),
  ];
}

/** ISO 129-1: oblique strokes, figures over the line and along it, 2.5 mm high on paper at the view's scale. */
function dimensionStyle(timesSmaller: number): Tag[] {
  return [
    [70, 0],
    [40, timesSmaller],
    [41, 2.5],
    [42, 1],
    [44, 1.5],
    [46, 1.5],
    [73, 0],
    [74, 0],
    [77, 1],
    [140, 2.5],
    [142, 1.2],
    [147, 0.9],
    [271, 1],
    [278, 46],
  ];
}

/** Every block: the model and the paper, whose entities stand elsewhere, and the pictures of dimensions. */
export function blocks(
  handles: Handles,
  held: readonly { readonly record: string; readonly picture: Picture; readonly into: Into }[],
  [model, paper]: readonly [string, string],
): Tag[] {
  const layer = layerName("FRAME");
  const block = (name: string, record: string, flags: number, entities: readonly Tag[]): Tag[] => [
    [0, "BLOCK"],
    [5, handles.next()],
    [330, record],
    [100, "AcDbEntity"],
    [8, layer],
    [100, "AcDbBlockBegin"],
    [2, name],
    [70, flags],
    ...at([0, 0]),
    [3, name],
    [1, ""],
    ...entities,
    [0, "ENDBLK"],
    [5, handles.next()],
    [330, record],
    [100, "AcDbEntity"],
    [8, layer],
    [100, "AcDbBlockEnd"],
  ];
  return section("BLOCKS", [
    ...block("*Model_Space", model, 0, []),
    ...block("*Paper_Space", paper, 0, []),
    ...held.flatMap(({ record, picture, into }) => block(picture.name, record, 1, picture.entities(into))),
  ]);
}

export function objects(handles: Handles): Tag[] {
  const [root, groups] = [handles.next(), handles.next()];
  return section("OBJECTS", [
    [0, "DICTIONARY"],
    [5, root],
    [330, "0"],
    [100, "AcDbDictionary"],
    [281, 1],
    [3, "ACAD_GROUP"],
    [350, groups],
    [0, "DICTIONARY"],
    [5, groups],
    [330, root],
    [100, "AcDbDictionary"],
    [281, 1],
  ]);
}

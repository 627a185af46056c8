/** DXF files as texts, written group by group after the published reference of the format. */
type Pair = readonly [code: number, value: string | number];

export interface DxfParts {
  readonly units?: number;
  readonly blocks?: readonly Pair[];
  readonly entities: readonly (readonly Pair[])[];
}

function text(pairs: readonly Pair[]): string {
  return pairs.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join("");
}

export function dxf({ units, blocks = [], entities }: DxfParts): string {
  const section = (name: string, pairs: readonly Pair[]): Pair[] => [
    [0, "SECTION"],
    [2, name],
    ...pairs,
    [0, "ENDSEC"],
  ];
  return text([
    ...section("HEADER", [
      [9, "$ACADVER"],
      [1, "AC1021"],
      ...(units === undefined
        ? []
        : ([
            [9, "$INSUNITS"],
            [70, units],
          ] as Pair[])),
    ]),
    ...section("BLOCKS", blocks),
    ...section("ENTITIES", entities.flat()),
    [0, "EOF"],
  ]);
}

export function lightLine(
  points: readonly (readonly [number, number])[],
  { layer = "FACE", handle = "2A", closed = true, extra = [] as readonly Pair[] } = {},
): Pair[] {
  return [
    [0, "LWPOLYLINE"],
    [5, handle],
    [100, "AcDbEntity"],
    [8, layer],
    [100, "AcDbPolyline"],
    [90, points.length],
    [70, closed ? 1 : 0],
    ...points.flatMap(([x, y], i): Pair[] => [
      [10, x],
      [20, y],
      [91, i],
    ]),
    ...extra,
  ];
}

/** Corners of a rectangle from its lower left, counter-clockwise. */
export function box(x: number, y: number, width: number, height: number): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

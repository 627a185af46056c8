/** Reads our drawings back with a general reader of DXF, apart from the code that writes them. */
import DxfParser, { type IEntity, type IPoint } from "dxf-parser";
import type { ReadBack } from "../contract/scene-renderer-suite.ts";

interface Read extends IEntity {
  readonly vertices?: readonly IPoint[];
  readonly center?: IPoint;
  readonly radius?: number;
  readonly startAngle?: number;
  readonly endAngle?: number;
  readonly startPoint?: IPoint;
  readonly endPoint?: IPoint;
  readonly text?: string;
  readonly textHeight?: number;
  readonly halign?: number;
  readonly rotation?: number;
  readonly block?: string;
  readonly extendedData: { customStrings: string[]; applicationName: string };
}

/** The reader has no hatches: theirs are points of their boundaries. */
class Hatch {
  ForEntityName = "HATCH" as never;
  parseEntity(scanner: { next(): { code: number; value: unknown } }): IEntity {
    const vertices: { x: number; y: number }[] = [];
    const strings: string[] = [];
    let layer = "";
    for (let group = scanner.next(); group.code !== 0; group = scanner.next()) {
      if (group.code === 8) layer = String(group.value);
      if (group.code === 10) vertices.push({ x: Number(group.value), y: 0 });
      const last = vertices.at(-1);
      if (group.code === 20 && last) last.y = Number(group.value);
      if (group.code === 1000) strings.push(String(group.value));
    }
    // The first point is the hatch's own elevation.
    return {
      type: "HATCH",
      layer,
      vertices: vertices.slice(1),
      extendedData: { customStrings: strings },
    } as unknown as IEntity;
  }
}

export interface ReadDxf {
  readonly header: Record<string, IPoint | number>;
  readonly layers: readonly string[];
  /** Those that are switched off. */
  readonly off: readonly string[];
  /** Of the model, with the marks of dimensions' pictures in their places. */
  readonly entities: readonly Read[];
  readonly dimensions: readonly Read[];
}

export function parseDxf(bytes: Uint8Array): ReadDxf {
  const parser = new DxfParser();
  parser.registerEntityHandler(Hatch as never);
  const parsed = parser.parse(Buffer.from(bytes).toString("utf8"));
  if (!parsed) throw new Error("no DXF");
  const entities = parsed.entities as Read[];
  const dimensions = entities.filter(({ type }) => type === "DIMENSION");
  return {
    header: parsed.header,
    layers: Object.keys(parsed.tables.layer.layers),
    off: Object.values(parsed.tables.layer.layers).flatMap(({ name, visible }) => (visible ? [] : [name])),
    dimensions,
    entities: entities.flatMap((one) =>
      one.type === "DIMENSION" ? ((parsed.blocks[one.block ?? ""]?.entities ?? []) as Read[]) : [one],
    ),
  };
}

const ANCHORS = ["start", "middle", "end"];

export function readDxfDrawing(bytes: Uint8Array): ReadBack {
  const { header, entities } = parseDxf(bytes);
  const [low, high] = [header.$EXTMIN as IPoint, header.$EXTMAX as IPoint];
  const scale = 1 / (header.$DIMSCALE as number);
  const onPage = ({ x, y }: { x: number; y: number }): readonly [number, number] => [
    (x - low.x) * scale + 0,
    (high.y - y) * scale + 0,
  ];
  const index = (one: Read): number => Number(one.extendedData.customStrings[1]);
  const marks = new Set(entities.map(index));
  const points = entities.flatMap((one) => {
    const { vertices = [], center, radius = 0, type } = one;
    if (type === "CIRCLE" && center) {
      return [
        onPage({ x: center.x - radius, y: center.y - radius }),
        onPage({ x: center.x + radius, y: center.y + radius }),
      ];
    }
    if (type === "ARC" && center) {
      return [one.startAngle ?? 0, one.endAngle ?? 0].map((angle) =>
        onPage({ x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) }),
      );
    }
    return vertices.map(onPage);
  });
  const texts = entities
    .filter(({ type }) => type === "TEXT")
    .sort((a, b) => index(a) - index(b))
    .map((one) => {
      const at = one.endPoint ?? one.startPoint;
      const [x, y] = onPage(at as IPoint);
      return {
        text: (one.text ?? "").replaceAll("^ ", "^"),
        x,
        y,
        anchor: ANCHORS[one.halign ?? 0] ?? "",
        turned: one.rotation === 90,
      };
    });
  return {
    width: (high.x - low.x) * scale,
    height: (high.y - low.y) * scale,
    marks: marks.size,
    points,
    texts,
  };
}

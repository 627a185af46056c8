/** Reads a DXF drawing: its unit and every line of its model, those in blocks where each block is put in. */
import { type Finding, finding } from "../../../findings/finding.ts";
import type { Point } from "../../../geometry/point.ts";
import { message } from "../../../text/message.ts";
import { degreesToRadians } from "../../../units/angle.ts";
import type { Drawing, DrawingUnit, Drawn } from "./drawing.ts";
import { drawnOf, plainText } from "./entities.ts";
import { type DxfFile, type Entity, numberOf, readDxf, textOf } from "./groups.ts";
import "../texts.ts";

export type ReadDrawing =
  | { readonly ok: true; readonly drawing: Drawing }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** Values of the header's $INSUNITS that a building is drawn in. */
const UNITS: Readonly<Record<string, DrawingUnit>> = { 1: "in", 2: "ft", 4: "mm", 5: "cm", 6: "m", 14: "dm" };

/** Blocks in blocks, no deeper; a drawing whose blocks hold themselves ends here. */
const DEEPEST = 12;

/** More lines than this are no face (repeats of blocks in rows and columns count each). */
const MOST_LINES = 200_000;

/** @param name of the file, as the messages say it */
export function readDrawing(text: string, name: string): ReadDrawing {
  const read = readDxf(text);
  if (!read.ok) {
    const says = message(`intake.dxf.${read.fault}`, { file: name, line: String(read.line) });
    return { ok: false, findings: [unreadable(says)] };
  }
  const { file } = read;
  const drawn: Drawn[] = [];
  if (!gather(file, { entities: file.entities, into: drawn, place: (point) => point, depth: 0 })) {
    return { ok: false, findings: [unreadable(message("intake.dxf.blocks", { file: name }))] };
  }
  const unit = UNITS[Number(file.header.get("$INSUNITS") ?? 0)];
  return { ok: true, drawing: { name, unit, drawn } };
}

function unreadable(says: ReturnType<typeof message>): Finding {
  const hint = message("intake.hint.dxf");
  return finding({ code: "F034", outcome: "fail", where: {}, says, hint });
}

interface Gathering {
  readonly entities: readonly Entity[];
  readonly into: Drawn[];
  readonly place: (point: Point) => Point;
  readonly depth: number;
  /** What holds these entities: the layer and the names that those of a block take over. */
  readonly within?: { readonly layer: string; readonly path: string };
}

/** False where there is no end to it. */
function gather(file: DxfFile, { entities, into, place, depth, within }: Gathering): boolean {
  if (depth > DEEPEST || into.length > MOST_LINES) return false;
  const layerOf = (own: string): string => (within && own === "0" ? within.layer : own);
  const handleOf = (own: string): string => (within ? `${within.path} › ${own}` : own);
  for (const one of drawnOf(entities)) {
    into.push({
      ...one,
      layer: layerOf(one.layer),
      handle: handleOf(one.handle),
      points: one.points.map(place),
    });
  }
  return entities.every((entity) => {
    if (entity.type !== "INSERT" || numberOf(entity.groups, 67) === 1) return true;
    const { groups } = entity;
    const name = textOf(groups, 2) ?? "";
    const block = file.blocks.get(name);
    const own = {
      layer: layerOf(plainText(textOf(groups, 8) ?? "0")),
      path: `${handleOf(textOf(groups, 5) ?? "?")} ${plainText(name)}`,
    };
    if (!block || (numberOf(groups, 230) ?? 1) < 0) {
      into.push({
        layer: own.layer,
        handle: own.path,
        type: "INSERT",
        kind: block ? "tilted" : "other",
        points: [],
      });
      return true;
    }
    return repeats(entity).every((shift) =>
      gather(file, {
        entities: block.entities,
        into,
        place: (point) => place(inserted(entity, block.base, shift)(point)),
        depth: depth + 1,
        within: own,
      }),
    );
  });
}

/** A block may be put in as rows and columns: how far each lies off, before it is turned. */
function repeats({ groups }: Entity): Point[] {
  const [columns, rows] = [numberOf(groups, 70) ?? 1, numberOf(groups, 71) ?? 1];
  const [across, up] = [numberOf(groups, 44) ?? 0, numberOf(groups, 45) ?? 0];
  const count = Math.min(Math.max(columns, 1) * Math.max(rows, 1), MOST_LINES);
  return Array.from({ length: count }, (_, i): Point => {
    const column = i % Math.max(columns, 1);
    return [column * across, ((i - column) / Math.max(columns, 1)) * up];
  });
}

function inserted({ groups }: Entity, base: Point, shift: Point): (point: Point) => Point {
  const turn = degreesToRadians(numberOf(groups, 50) ?? 0);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [sx, sy] = [numberOf(groups, 41) ?? 1, numberOf(groups, 42) ?? 1];
  const [ox, oy] = [numberOf(groups, 10) ?? 0, numberOf(groups, 20) ?? 0];
  return ([px, py]) => {
    const x = (px - base[0]) * sx + shift[0];
    const y = (py - base[1]) * sy + shift[1];
    return [ox + x * c - y * s, oy + x * s + y * c];
  };
}

/** Reads the walls of an IFC file (ISO 16739-1), with their openings and what fills these. */
import { type Finding, finding } from "../../../findings/finding.ts";
import { type Message, message } from "../../../text/message.ts";
import "../texts.ts";
import type { ModelWall, WallModel } from "./model.ts";
import { outerSides } from "./outside.ts";
import { lengthUnitMm, northOf, productPlacement } from "./places.ts";
import { type Fault, isRef, Reading, textOf, wordOf } from "./reading.ts";
import { bodyOf, type CutOpening } from "./solids.ts";
import { add, type Vector } from "./space.ts";
import { readStep, type StepEntity, type StepFile } from "./step.ts";
import { type WallSide, wallSides } from "./wall-side.ts";

export type ReadWalls =
  | { readonly ok: true; readonly model: WallModel }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** Schemas whose walls have their attributes in the places that are read here. */
const SCHEMAS = /^IFC(?:4|2X3)/;

const WALLS = ["IFCWALL", "IFCWALLSTANDARDCASE"];

/** @param name of the file, as the messages say it */
export function readWalls(text: string, name: string): ReadWalls {
  const read = readStep(text);
  if (!read.ok) {
    const says = message(`intake.step.${read.fault}`, { file: name, line: String(read.line) });
    return refused(says, message("intake.hint.ifc.file"));
  }
  const { file } = read;
  if (!SCHEMAS.test(file.schema))
    return refused(
      message("intake.ifc.schema", { file: name, schema: file.schema }),
      message("intake.hint.ifc.schema"),
    );
  const unitMm = lengthUnitMm(file);
  if (unitMm === undefined)
    return refused(message("intake.ifc.unit", { file: name }), message("intake.hint.ifc.unit"));
  const walls = wallsOf(file, unitMm);
  if (walls.length === 0)
    return refused(message("intake.ifc.none", { file: name }), message("intake.hint.ifc.none"));
  const { north, told } = northOf(file);
  return { ok: true, model: { name, north, northTold: told, walls } };
}

function refused(says: Message, hint: Message): ReadWalls {
  return { ok: false, findings: [finding({ code: "F034", outcome: "fail", where: {}, says, hint })] };
}

interface Read {
  readonly entity: StepEntity;
  readonly faults: readonly Fault[];
  readonly sides?: readonly [WallSide, WallSide];
}

function wallsOf(file: StepFile, unitMm: number): ModelWall[] {
  const related = relations(file);
  const origin = firstPlace(file, unitMm);
  const read = file.ofTypes(...WALLS).map((entity) => wallOf(entity, { file, unitMm, related, origin }));
  const standing = read.flatMap((one, i) => (one.sides ? [{ i, sides: one.sides }] : []));
  const outer = outerSides(
    standing.map(({ i, sides }) => ({
      sides,
      inner: related.external.get(read[i]?.entity.id ?? 0) === false,
    })),
  );
  const looks = new Map(standing.map(({ i }, k) => [i, outer[k]]));
  const named = namesOf(read.map(({ entity }) => entity));
  return read.map(({ entity, faults, sides }, i): ModelWall => {
    const external = related.external.get(entity.id);
    const look = looks.get(i);
    return {
      entity: `#${entity.id}`,
      type: entity.type,
      name: named[i] as string,
      called: [entity.values[2], entity.values[7], entity.values[0]].flatMap((one) => textOf(one) ?? []),
      external,
      faults,
      ...(sides && { sides: look?.side === 1 ? ([sides[1], sides[0]] as const) : sides }),
      sideTold: look?.told ?? true,
      // A wall that is not read may be an outer one: it is not passed over in silence.
      outer: external ?? look?.open ?? true,
    };
  });
}

/** Files may lie far from their zero, at a map's coordinates: what is read lies about the first wall. */
function firstPlace(file: StepFile, unitMm: number): Vector {
  const [first] = file.ofTypes(...WALLS);
  const at = first && productPlacement(new Reading(file, unitMm), first)?.origin;
  return at ? [at[0], at[1], 0] : [0, 0, 0];
}

function namesOf(walls: readonly StepEntity[]): string[] {
  const own = walls.map(({ id, values }) => textOf(values[2]) ?? textOf(values[7]) ?? `#${id}`);
  return own.map((name, i) =>
    own.filter((other) => other === name).length > 1 ? `${name} #${walls[i]?.id}` : name,
  );
}

interface Relations {
  /** Openings by the wall that they void. */
  readonly voids: ReadonlyMap<number, readonly StepEntity[]>;
  /** What fills an opening. */
  readonly fills: ReadonlyMap<number, StepEntity>;
  /** Whether a wall stands outside, where that is told. */
  readonly external: ReadonlyMap<number, boolean>;
}

function relations(file: StepFile): Relations {
  const voids = new Map<number, StepEntity[]>();
  for (const { values } of file.ofTypes("IFCRELVOIDSELEMENT")) {
    const [wall, opening] = [values[4], values[5]].map((one) => (isRef(one) ? one.ref : 0)) as [
      number,
      number,
    ];
    const found = file.entity(opening);
    if (found) voids.set(wall, [...(voids.get(wall) ?? []), found]);
  }
  const fills = new Map<number, StepEntity>();
  for (const { values } of file.ofTypes("IFCRELFILLSELEMENT")) {
    const [opening, by] = [values[4], values[5]].map((one) => (isRef(one) ? one.ref : 0)) as [number, number];
    const found = file.entity(by);
    if (found) fills.set(opening, found);
  }
  return { voids, fills, external: externals(file) };
}

function externals(file: StepFile): Map<number, boolean> {
  const external = new Map<number, boolean>();
  for (const { values } of file.ofTypes("IFCRELDEFINESBYPROPERTIES")) {
    const set = isRef(values[5]) ? file.entity(values[5].ref) : undefined;
    if (set?.values[2] !== "Pset_WallCommon" || !Array.isArray(set.values[4])) continue;
    const word = (set.values[4] as StepEntity["values"])
      .flatMap((one) => (isRef(one) ? (file.entity(one.ref) ?? []) : []))
      .filter((property) => property.values[0] === "IsExternal")
      .map((property) => wordOf(property.values[2]))[0];
    if (word !== "T" && word !== "F") continue;
    for (const one of Array.isArray(values[4]) ? (values[4] as StepEntity["values"]) : [])
      if (isRef(one)) external.set(one.ref, word === "T");
  }
  return external;
}

interface Reader {
  readonly file: StepFile;
  readonly unitMm: number;
  readonly related: Relations;
  readonly origin: Vector;
}

function wallOf(entity: StepEntity, { file, unitMm, related, origin }: Reader): Read {
  const reading = new Reading(file, unitMm);
  const body = (product: StepEntity) => {
    const place = productPlacement(reading, product);
    return place && bodyOf(reading, product, { ...place, origin: add(place.origin, origin, -1) });
  };
  const parts = body(entity);
  const openings = (related.voids.get(entity.id) ?? []).map((opening): CutOpening | undefined => {
    const own = body(opening);
    return own && { parts: own, entity: `#${opening.id} ${opening.type}`, ...filling(opening, related) };
  });
  if (!parts || openings.includes(undefined)) return { entity, faults: reading.faults };
  const sides = wallSides(parts, openings as CutOpening[], unitMm);
  if (sides.ok) return { entity, faults: [], sides: sides.sides };
  const says = message(`intake.ifc.${sides.fault}`, { entity: `#${entity.id}`, type: entity.type });
  return { entity, faults: [{ says, hint: message(`intake.hint.ifc.${sides.fault}`) }] };
}

function filling(opening: StepEntity, { fills }: Relations): Pick<CutOpening, "kind" | "name"> {
  const by = fills.get(opening.id);
  const name = (by && (textOf(by.values[2]) ?? textOf(by.values[7]))) ?? textOf(opening.values[2]);
  const kind = by?.type.startsWith("IFCWINDOW")
    ? "window"
    : by?.type.startsWith("IFCDOOR")
      ? "door"
      : undefined;
  return { ...(kind && { kind }), ...(name !== undefined && { name }) };
}

/**
 * Asks entities for what they hold. What cannot be used is noted with entity, field and value, and comes back undefined: whoever
 * asked gives up, and the wall is refused with the note. Attribute places after ISO 16739-1.
 */
import { type Message, message } from "../../../text/message.ts";
import type { Vector } from "./space.ts";
import type { StepEntity, StepFile, StepRef, StepValue } from "./step.ts";

export interface Fault {
  readonly says: Message;
  readonly hint: Message;
}

/** Placements in placements, and solids in solids, no deeper: a file whose entities hold themselves ends here. */
export const DEEPEST = 200;

export class Reading {
  readonly file: StepFile;
  /** Millimetres in one of the file's units of length. */
  readonly unitMm: number;
  readonly faults: Fault[] = [];

  constructor(file: StepFile, unitMm: number) {
    this.file = file;
    this.unitMm = unitMm;
  }

  /** Notes that a field cannot be used. */
  refuse(entity: StepEntity, field: string, value: StepValue): undefined {
    const says = message("intake.ifc.field", { ...named(entity), field, value: printed(value) });
    this.faults.push({ says, hint: message("intake.hint.ifc.field", named(entity)) });
    return undefined;
  }

  /** Notes that an entity is of a kind that is not read here. */
  refuseKind(entity: StepEntity, part: "shape" | "profile" | "curve" | "placement"): undefined {
    const says = message("intake.ifc.kind", named(entity));
    this.faults.push({ says, hint: message(`intake.hint.ifc.${part}`, named(entity)) });
    return undefined;
  }

  /** The entity that a field points to. */
  one(entity: StepEntity, place: number, field: string): StepEntity | undefined {
    const value = entity.values[place];
    const found = isRef(value) ? this.file.entity(value.ref) : undefined;
    return found ?? this.refuse(entity, field, value);
  }

  /** The entities that a list points to. */
  many(entity: StepEntity, place: number, field: string): StepEntity[] | undefined {
    const value = entity.values[place];
    const found = Array.isArray(value)
      ? (value as readonly StepValue[]).map((one) => (isRef(one) ? this.file.entity(one.ref) : undefined))
      : [undefined];
    return found.includes(undefined) ? this.refuse(entity, field, value) : (found as StepEntity[]);
  }

  number(entity: StepEntity, place: number, field: string): number | undefined {
    const value = entity.values[place];
    const bare = isTyped(value) ? value.value : value;
    return typeof bare === "number" && Number.isFinite(bare) ? bare : this.refuse(entity, field, value);
  }

  /** A length that must be more than nothing (mm). */
  size(entity: StepEntity, place: number, field: string): number | undefined {
    const value = this.number(entity, place, field);
    if (value === undefined) return undefined;
    return value > 0 ? value * this.unitMm : this.refuse(entity, field, entity.values[place]);
  }

  /** Two or three numbers; the third is nothing where it is not told. */
  triple(entity: StepEntity, value: StepValue, field: string): Vector | undefined {
    const numbers = Array.isArray(value) ? (value as readonly StepValue[]) : [];
    const sound =
      numbers.length >= 2 && numbers.every((one) => typeof one === "number" && Number.isFinite(one));
    if (!sound) return this.refuse(entity, field, value);
    const [x, y, z = 0] = numbers as number[];
    return [x as number, y as number, z];
  }

  /** An IfcCartesianPoint that a field points to (mm). */
  point(entity: StepEntity, place: number, field: string): Vector | undefined {
    const at = this.one(entity, place, field);
    return at && this.coordinates(at);
  }

  /** Of an IfcCartesianPoint (mm). */
  coordinates(point: StepEntity): Vector | undefined {
    return this.lengths(point, point.values[0], "Coordinates");
  }

  /** Two or three lengths (mm). */
  lengths(entity: StepEntity, value: StepValue, field: string): Vector | undefined {
    const at = this.triple(entity, value, field);
    return at && [at[0] * this.unitMm, at[1] * this.unitMm, at[2] * this.unitMm];
  }

  /** An IfcDirection that a field points to; `otherwise` where it points to none. */
  direction(entity: StepEntity, place: number, field: string, otherwise: Vector): Vector | undefined {
    if (entity.values[place] === undefined) return otherwise;
    const at = this.one(entity, place, field);
    return at && this.triple(at, at.values[0], "DirectionRatios");
  }
}

export function isRef(value: StepValue): value is StepRef {
  return typeof value === "object" && "ref" in value;
}

function isTyped(value: StepValue): value is { readonly type: string; readonly value: StepValue } {
  return typeof value === "object" && "type" in value;
}

/** The word of an enumeration or a truth value. */
export function wordOf(value: StepValue): string | undefined {
  const bare = isTyped(value) ? value.value : value;
  return typeof bare === "object" && "word" in bare ? bare.word : undefined;
}

export function textOf(value: StepValue): string | undefined {
  return typeof value === "string" && value.trim() !== "" ? value : undefined;
}

function named({ id, type }: StepEntity) {
  return { entity: `#${id}`, type };
}

/** More of a value than this says no more. */
const LONGEST = 60;

/** As the file writes it. */
function printed(value: StepValue): string {
  const text = written(value);
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
}

function written(value: StepValue): string {
  if (value === undefined) return "$";
  if (typeof value === "number") return String(value);
  if (typeof value === "string") return `'${value}'`;
  if (Array.isArray(value)) return `(${(value as readonly StepValue[]).map(written).join(",")})`;
  const one = value as Exclude<StepValue, undefined | number | string | readonly StepValue[]>;
  if ("ref" in one) return `#${one.ref}`;
  return "word" in one ? `.${one.word}.` : `${one.type}(${written(one.value)})`;
}

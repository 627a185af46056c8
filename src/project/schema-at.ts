/** Finds the part of the schema that a place in the file answers to: its known keys and the range of its numbers. */
import type * as z from "zod";
import { isGroup, type Path } from "./pointer.ts";
import { project } from "./schema/project.ts";

type Schema = z.core.$ZodTypes;

/** The keys known at a place, or undefined where the schema asks for no group of fields or its kind is unknown. */
export function knownKeys(places: readonly Schema[]): string[] | undefined {
  const groups = places.filter((place) => place._zod.def.type === "object") as z.core.$ZodObject[];
  return groups.length === 0
    ? undefined
    : [...new Set(groups.flatMap((group) => Object.keys(group._zod.def.shape)))];
}

/** The schema of the whole file. */
export function wholeFile(): readonly Schema[] {
  return [project as unknown as Schema];
}

/** The schemas that the entry `step` of a value answers to. */
export function inside(places: readonly Schema[], step: string | number, entry: unknown): readonly Schema[] {
  return places.flatMap((place): Schema[] => {
    const def = place._zod.def;
    const child =
      def.type === "object"
        ? def.shape[step]
        : def.type === "array"
          ? def.element
          : def.type === "tuple"
            ? def.items[Number(step)]
            : def.type === "record"
              ? def.valueType
              : undefined;
    return child === undefined ? [] : alternatives(child as Schema, entry);
  });
}

/** What a schema stands for: optional ones by their content, unions by those of their members that suit the value. */
function alternatives(schema: Schema, value: unknown): Schema[] {
  const def = schema._zod.def;
  if (def.type === "optional") return alternatives(def.innerType as Schema, value);
  if (def.type !== "union") return [schema];
  const members = def.options.flatMap((option) => alternatives(option as Schema, value));
  return isGroup(value) ? members.filter((member) => kindSuits(member, value.kind)) : members;
}

function kindSuits(member: Schema, kind: unknown): boolean {
  const def = member._zod.def;
  if (def.type !== "object") return false;
  return def.shape.kind?._zod.values?.has(kind as string) ?? true;
}

export interface Range {
  readonly least?: number;
  readonly most?: number;
  /** The least value itself is not allowed. */
  readonly above?: number;
}

/** The range of the number at a path. */
export function rangeAt(document: unknown, path: Path): Range {
  let places = wholeFile();
  let value = document;
  for (const step of path) {
    value = (value as Record<string | number, unknown> | undefined)?.[step];
    places = inside(places, step, value);
  }
  const bounds = places.flatMap(links).map(boundsOf);
  return Object.assign({}, ...bounds) as Range;
}

/** A pipe's members, first to last: later bounds are the tighter ones. */
function links(schema: Schema): Schema[] {
  const def = schema._zod.def;
  return def.type === "pipe" ? [...links(def.in as Schema), ...links(def.out as Schema)] : [schema];
}

function boundsOf(schema: Schema): Range {
  const checks = (schema._zod.def.checks ?? []).map((check) => check._zod.def as Partial<Check>);
  return Object.assign({}, ...checks.map(boundOf)) as Range;
}

type Check = z.core.$ZodCheckGreaterThanDef | z.core.$ZodCheckLessThanDef;

function boundOf({ check, value, inclusive }: Partial<Check>): Range {
  if (typeof value !== "number") return {};
  if (check === "less_than") return { most: value };
  return inclusive === true ? { least: value } : { above: value };
}

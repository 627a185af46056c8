/** The schema's reading of a document, whole or by its parts. */
import type * as z from "zod";
import { ANY_FACE, type PartPlace, type ReadMemo } from "./read-memo.ts";
import { type Project, project } from "./schema/project.ts";

export type Parsed = ReturnType<typeof project.safeParse>;

/** With a memo, parts that were read before are taken from it; what comes out is the same either way. */
export function parseProject(document: unknown, memo?: ReadMemo): Parsed {
  const data = memo && byParts(document as Readonly<Record<string, unknown>>, memo);
  return data ? { success: true, data } : project.safeParse(document);
}

type Fields = Record<string, unknown>;

/** Undefined where anything is wrong: the whole is then read for what to say of it. */
function byParts(document: Readonly<Fields>, memo: ReadMemo): Project | undefined {
  const read: Fields = {};
  for (const [key, schema] of Object.entries<z.ZodType>(project.shape)) {
    const there = Object.hasOwn(document, key);
    const part =
      key === "faces" ? facesOf(document[key], memo) : partOf(document[key], { schema, memo, place: key });
    if (part === NONE) return undefined;
    if (there) read[key] = part;
  }
  for (const [key, value] of Object.entries(document)) if (!Object.hasOwn(read, key)) read[key] = value;
  return read as Project;
}

/** No value of a document. */
const NONE = Symbol("none");

function partOf(
  value: unknown,
  { schema, memo, place }: { schema: z.ZodType; memo: ReadMemo; place: PartPlace },
): unknown {
  const kept = memo.parsed.get(place) ?? new WeakMap<object, unknown>();
  memo.parsed.set(place, kept);
  const whole = typeof value === "object" && value !== null ? value : undefined;
  if (whole && kept.has(whole)) return kept.get(whole);
  const parsed = schema.safeParse(value);
  if (!parsed.success) return NONE;
  if (whole) kept.set(whole, parsed.data);
  return parsed.data;
}

function facesOf(value: unknown, memo: ReadMemo): unknown {
  if (!Array.isArray(value) || value.length === 0) return NONE;
  const { element: schema } = project.shape.faces;
  const faces = value.map((face) => partOf(face, { schema, memo, place: ANY_FACE }));
  return faces.includes(NONE) ? NONE : faces;
}

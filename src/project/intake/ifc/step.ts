/** The text of a STEP physical file (ISO 10303-21) as its entities; what each holds is parsed when it is asked for. */

export interface StepRef {
  readonly ref: number;
}

/** An enumeration's word, without its points. */
export interface StepWord {
  readonly word: string;
}

/** A value with its type before it: IFCLABEL('x'). */
export interface StepTyped {
  readonly type: string;
  readonly value: StepValue;
}

/** Undefined: left out (`$`) or derived (`*`). */
export type StepValue = undefined | number | string | StepRef | StepWord | StepTyped | readonly StepValue[];

export interface StepEntity {
  readonly id: number;
  /** In capitals. */
  readonly type: string;
  readonly values: readonly StepValue[];
}

export interface StepFile {
  /** As the header names it, in capitals; empty where it names none. */
  readonly schema: string;
  readonly entity: (id: number) => StepEntity | undefined;
  /** In the order of the file. */
  readonly ofTypes: (...types: readonly string[]) => StepEntity[];
}

export type ReadStep =
  | { readonly ok: true; readonly file: StepFile }
  /** The line of the text, from 1, where it stops being a STEP file; `end` where it breaks off. */
  | { readonly ok: false; readonly fault: "text" | "entity" | "end"; readonly line: number };

interface Held {
  readonly type: string;
  /** What stands between its outer brackets. */
  readonly text: string;
  parsed?: StepEntity;
}

/** Ends of statements, past texts and comments; a quotation mark by itself is never closed. */
const ENDS = /'[^']*'|\/\*[\s\S]*?\*\/|;|'/g;

const ENTITY = /^#(\d+)\s*=\s*([A-Za-z][A-Za-z0-9_]*)\s*\(([\s\S]*)\)$/;

/** An entity told as its types in turn: none that a wall needs is. */
const MIXED = /^#\d+\s*=\s*\([\s\S]*\)$/;

export function readStep(text: string): ReadStep {
  if (!/^\uFEFF?\s*ISO-10303-21\s*;/.test(text)) return { ok: false, fault: "text", line: 1 };
  const lineAt = (at: number): number => text.slice(0, at).split(/\r\n|\n|\r/).length;
  const held = new Map<number, Held>();
  let schema = "";
  let inData = false;
  let from = 0;
  for (const { 0: mark, index } of text.matchAll(ENDS)) {
    if (mark === "'") return { ok: false, fault: "end", line: lineAt(index) };
    if (mark !== ";") continue;
    const statement = uncommented(text.slice(from, index)).trim();
    const begins = from;
    from = index + 1;
    if (/^END-ISO-10303-21$/i.test(statement)) return { ok: true, file: fileOf(schema, held) };
    if (/^DATA(?:\s*\([\s\S]*\))?$/i.test(statement)) inData = true;
    else if (/^ENDSEC$/i.test(statement)) inData = false;
    else if (!inData) schema = /^FILE_SCHEMA\s*\(\s*\(\s*'([^']*)'/i.exec(statement)?.[1] ?? schema;
    else {
      const entity = ENTITY.exec(statement);
      if (!entity && !MIXED.test(statement))
        return { ok: false, fault: "entity", line: lineAt(begins + leading(text.slice(begins, index))) };
      if (entity)
        held.set(Number(entity[1]), { type: (entity[2] ?? "").toUpperCase(), text: entity[3] ?? "" });
    }
  }
  return { ok: false, fault: "end", line: lineAt(text.length) };
}

function leading(text: string): number {
  return text.length - text.trimStart().length;
}

function uncommented(text: string): string {
  if (!text.includes("/*")) return text;
  return text.replace(/'[^']*'|\/\*[\s\S]*?\*\//g, (part) => (part.startsWith("'") ? part : " "));
}

function fileOf(schema: string, held: ReadonlyMap<number, Held>): StepFile {
  const entity = (id: number): StepEntity | undefined => {
    const one = held.get(id);
    if (!one) return undefined;
    one.parsed ??= { id, type: one.type, values: valuesOf(one.text) };
    return one.parsed;
  };
  return {
    schema: schema.toUpperCase(),
    entity,
    ofTypes: (...types) =>
      [...held].flatMap(([id, { type }]) => (types.includes(type) ? (entity(id) ?? []) : [])),
  };
}

const TOKEN =
  /\s*(?:'((?:[^']|'')*)'|#(\d+)|\.([A-Za-z0-9_]+)\.|([+-]?\d+\.?\d*(?:[Ee][+-]?\d+)?)|([A-Za-z][A-Za-z0-9_]*)|"[0-9A-Fa-f]*"|([$*(),]))/y;

/** Values between commas. Where the text is no value, what follows is left out: whoever asks for it is told that it is missing. */
function valuesOf(text: string): StepValue[] {
  const token = new RegExp(TOKEN);
  let broken = false;
  const list = (): StepValue[] => {
    const values: StepValue[] = [];
    for (let next = value(); next !== END; next = value()) values.push(next.value);
    return values;
  };
  const value = (): { readonly value: StepValue } | typeof END => {
    const found = broken ? null : token.exec(text);
    // A sticky expression that finds nothing begins again at the front: nothing more is read then.
    broken ||= !found;
    if (!found) return END;
    const [, quoted, ref, word, number, type, sign] = found;
    if (quoted !== undefined) return { value: decoded(quoted) };
    if (ref !== undefined) return { value: { ref: Number(ref) } };
    if (word !== undefined) return { value: { word: word.toUpperCase() } };
    if (number !== undefined) return { value: Number(number) };
    if (type !== undefined) {
      token.exec(text);
      return { value: { type: type.toUpperCase(), value: list()[0] } };
    }
    if (sign === "(") return { value: list() };
    if (sign === ")") return END;
    return sign === "," ? value() : { value: undefined };
  };
  return list();
}

const END = Symbol("end");

/** Letters beyond ASCII as clause 6.4.3 writes them. */
function decoded(text: string): string {
  const plain = text.replaceAll("''", "'");
  if (!plain.includes("\\")) return plain;
  const hex = (digits: string, width: number): string =>
    (digits.match(new RegExp(`.{${width}}`, "g")) ?? [])
      .map((one) =>
        width === 8 ? String.fromCodePoint(inUnicode(one)) : String.fromCharCode(inUnicode(one)),
      )
      .join("");
  return plain.replace(
    /\\X2\\([0-9A-Fa-f]*)\\X0\\|\\X4\\([0-9A-Fa-f]*)\\X0\\|\\X\\([0-9A-Fa-f]{2})|\\S\\([\s\S])|\\P[A-I]\\|\\\\/g,
    (whole, two?: string, four?: string, one?: string, shifted?: string) => {
      if (two !== undefined) return hex(two, 4);
      if (four !== undefined) return hex(four, 8);
      if (one !== undefined) return hex(one, 2);
      if (shifted !== undefined) return String.fromCharCode(shifted.charCodeAt(0) + 128);
      return whole === "\\\\" ? "\\" : "";
    },
  );
}

const LAST_IN_UNICODE = 0x10ffff;
const UNKNOWN_LETTER = 0xfffd;

function inUnicode(hex: string): number {
  const code = Number.parseInt(hex, 16);
  return code <= LAST_IN_UNICODE ? code : UNKNOWN_LETTER;
}

/** Lines of a STEP physical file (ISO 10303-21), each value written as its grammar has it. */

/** Another line of the file. */
export interface Ref {
  readonly line: number;
}

/** A word between points, such as `.SHEET.`, or one of the two absent values. */
export interface Word {
  readonly word: string;
}

/** A value with its type before it: IFCLABEL('x'). */
export interface Typed {
  readonly type: string;
  readonly value: Value;
}

/** Whole numbers are told from reals. */
export interface Whole {
  readonly whole: number;
}

export type Value = number | string | Ref | Word | Typed | Whole | readonly Value[];

export const NONE: Word = { word: "$" };
/** Derived by the schema. */
export const DERIVED: Word = { word: "*" };

export function word(name: string): Word {
  return { word: `.${name}.` };
}

export class StepFile {
  private lines: string[] = [];
  private count = 0;
  private readonly held = new Map<string, Ref>();

  /** Adds an entity. */
  add(type: string, ...values: readonly Value[]): Ref {
    return this.put(`${type}(${values.map(written).join(",")})`);
  }

  /** Adds one of those that many share, once. It is held for as long as the file is written. */
  share(type: string, ...values: readonly Value[]): Ref {
    const text = `${type}(${values.map(written).join(",")})`;
    const held = this.held.get(text) ?? this.put(text);
    this.held.set(text, held);
    return held;
  }

  /** Hands out the lines that were added since it was last asked. */
  taken(): readonly string[] {
    const { lines } = this;
    this.lines = [];
    return lines;
  }

  private put(text: string): Ref {
    this.count += 1;
    this.lines.push(`#${this.count}=${text};\n`);
    return { line: this.count };
  }
}

/** What stands before the lines. @param time ISO 8601 */
export function stepHead({ name, time }: { readonly name: string; readonly time: string }): string {
  return [
    "ISO-10303-21;",
    "HEADER;",
    "FILE_DESCRIPTION(('ViewDefinition [ReferenceView_V1.2]'),'2;1');",
    `FILE_NAME(${[name, time, [""], [""], "Outerleaf", "Outerleaf", ""].map(written).join(",")});`,
    "FILE_SCHEMA(('IFC4'));",
    "ENDSEC;",
    "DATA;",
    "",
  ].join("\n");
}

/** What stands after them. */
export const STEP_FOOT = "ENDSEC;\nEND-ISO-10303-21;\n";

function written(value: Value): string {
  if (typeof value === "number") return real(value);
  if (typeof value === "string") return `'${encoded(value)}'`;
  if (Array.isArray(value)) return `(${(value as readonly Value[]).map(written).join(",")})`;
  const one = value as Ref | Word | Typed | Whole;
  if ("line" in one) return `#${one.line}`;
  if ("word" in one) return one.word;
  if ("whole" in one) return String(one.whole);
  return `${one.type}(${written(one.value)})`;
}

/** Always a point, never an exponent: nine decimals at most, which is far under what a wall is built to. */
function real(value: number): string {
  const text = value.toFixed(9).replace(/0+$/, "");
  return text === "-0." ? "0." : text;
}

/** Printable ASCII as it is; all else as UTF-16 in hexadecimal (clause 6.4.3). */
function encoded(text: string): string {
  return text
    .replaceAll("\\", "\\\\")
    .replaceAll("'", "''")
    .replace(/[^ -~]+/g, (others) => {
      const hex = Array.from({ length: others.length }, (_, i) =>
        others.charCodeAt(i).toString(16).toUpperCase().padStart(4, "0"),
      );
      return `\\X2\\${hex.join("")}\\X0\\`;
    });
}

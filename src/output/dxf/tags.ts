/** The groups that a DXF file is made of, after the format's published reference (AC1021: UTF-8 text). */

export type Tag = readonly [code: number, value: string | number];

/** Gives each thing of a file its handle: hexadecimal, counted up. */
export class Handles {
  private last = 0;

  next(): string {
    this.last += 1;
    return this.last.toString(16).toUpperCase();
  }
}

export function dxfText(tags: readonly Tag[]): string {
  return tags
    .map(([code, value]) => `${code}\r\n${typeof value === "number" ? figure(value) : value}\r\n`)
    .join("");
}

/** Six decimals at most (mm), no exponent, no −0. */
function figure(value: number): string {
  if (Number.isSafeInteger(value)) return String(value + 0);
  const text = value.toFixed(6).replace(/\.?0+$/, "");
  return text === "-0" || text === "" ? "0" : text;
}

/** One line, its carets told from the format's own. */
export function plain(text: string): string {
  return text.replace(/[\r\n]+/g, " ").replaceAll("^", "^ ");
}

/** `#rrggbb` as one number. */
export function colour(hex: string): number {
  return Number.parseInt(hex.slice(1), 16);
}

export function at([x, y]: readonly [number, number], first = 10): Tag[] {
  return [
    [first, x],
    [first + 10, y],
    [first + 20, 0],
  ];
}

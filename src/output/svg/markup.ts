/** Numbers and text as they stand in SVG. */

/** Millimetres of paper to three decimals, no trailing zeros, never -0. */
export function number(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return String(rounded === 0 ? 0 : rounded);
}

const ESCAPES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Text for an element or a quoted attribute; characters that XML 1.0 forbids are left out. */
export function escapeXml(text: string): string {
  let result = "";
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    const forbidden =
      (code < 0x20 && code !== 0x09 && code !== 0x0a && code !== 0x0d) ||
      (code >= 0xd800 && code <= 0xdfff) ||
      code === 0xfffe ||
      code === 0xffff;
    if (!forbidden) result += ESCAPES[character] ?? character;
  }
  return result;
}

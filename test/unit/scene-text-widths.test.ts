/** The width table against the font files that the screen loads. */
import { readFileSync } from "node:fs";
import { inflateSync } from "node:zlib";
import { expect, it } from "vitest";
import { CAPITAL_HEIGHT, textWidth } from "../../src/scene/text-widths.ts";

const FONT =
  "../../node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin";

/** Tables of a WOFF 1.0 file (W3C recommendation, sections 4 and 5). */
function tables(file: Buffer): Map<string, Buffer> {
  const found = new Map<string, Buffer>();
  for (let i = 0; i < file.readUInt16BE(12); i++) {
    const entry = 44 + i * 20;
    const [offset, packed, full] = [4, 8, 12].map((at) => file.readUInt32BE(entry + at)) as [
      number,
      number,
      number,
    ];
    const data = file.subarray(offset, offset + packed);
    found.set(file.toString("latin1", entry, entry + 4), packed < full ? inflateSync(data) : data);
  }
  return found;
}

/** Advance width of a character in thousandths of the font size (OpenType `cmap` format 4, `hmtx`). */
function advances(file: Buffer): (character: string) => number | undefined {
  const all = tables(file);
  const [head, hhea, hmtx, cmap] = ["head", "hhea", "hmtx", "cmap"].map((name) => all.get(name)) as [
    Buffer,
    Buffer,
    Buffer,
    Buffer,
  ];
  const perEm = head.readUInt16BE(18);
  const long = hhea.readUInt16BE(34);
  const subtables = Array.from({ length: cmap.readUInt16BE(2) }, (_, i) => cmap.readUInt32BE(8 + i * 8));
  const start = subtables.find((at) => cmap.readUInt16BE(at) === 4) ?? 0;
  const segments = cmap.readUInt16BE(start + 6) / 2;
  const at = (block: number, i: number): number =>
    start + 14 + block * segments * 2 + (block > 0 ? 2 : 0) + i * 2;
  return (character) => {
    const code = character.codePointAt(0) ?? 0;
    for (let i = 0; i < segments; i++) {
      if (code > cmap.readUInt16BE(at(0, i))) continue;
      const first = cmap.readUInt16BE(at(1, i));
      if (code < first) return undefined;
      const shift = cmap.readUInt16BE(at(3, i));
      const delta = cmap.readInt16BE(at(2, i));
      const glyph = shift === 0 ? code : cmap.readUInt16BE(at(3, i) + shift + (code - first) * 2);
      const index = glyph === 0 ? 0 : (glyph + delta) & 0xffff;
      return index === 0 ? undefined : (hmtx.readUInt16BE(Math.min(index, long - 1) * 4) / perEm) * 1000;
    }
    return undefined;
  };
}

it.each([
  ["regular", 400],
  ["bold", 600],
] as const)("no %s character is wider than the table says", (weight, number) => {
  const advance = advances(readFileSync(new URL(`${FONT}-${number}-normal.woff`, import.meta.url)));
  let compared = 0;
  for (let code = 0x20; code < 0x100; code++) {
    const character = String.fromCodePoint(code);
    const real = advance(character);
    if (real === undefined || code === 0xad) continue;
    compared++;
    const told = textWidth({ text: character, height: CAPITAL_HEIGHT, weight }) * 1000;
    expect(told + 1e-6, character).toBeGreaterThanOrEqual(real);
  }
  expect(compared).toBeGreaterThan(150);
});

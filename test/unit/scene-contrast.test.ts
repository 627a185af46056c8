/** Contrast of drawings after WCAG 2.2, success criteria 1.4.3 (text 4.5 : 1) and 1.4.11 (graphics 3 : 1). */
import { describe, expect, it } from "vitest";
import type { Theme } from "../../src/output/palettes.ts";
import { styleSheet } from "../../src/output/svg/themes.ts";

/** Relative luminance (WCAG 2.2, terms). */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [high = 0, low = 0] = [luminance(a), luminance(b)].sort((p, q) => q - p);
  return (high + 0.05) / (low + 0.05);
}

function colours(theme: Theme): Map<string, string> {
  const found = styleSheet(theme).matchAll(/var\(--drawing-([a-z-]+),(#[0-9a-f]{6})\)/g);
  return new Map([...found].map((match) => [match[1] as string, match[2] as string]));
}

const TEXT_ON: readonly (readonly [ink: string, ground: string])[] = [
  ...["ink", "second", "chalk", "red"].map((ink) => [ink, "paper"] as const),
  ...["board", "board-alt"].map((ground) => ["on-board", ground] as const),
  ...["sheet", "glass", "batten", "timber"].map((ground) => ["ink", ground] as const),
];

/** Outlines and control lines against what they bound or cross. */
const LINES_ON: readonly (readonly [line: string, ground: string])[] = [
  ...["insulation", "sheathing", "metal"].map((ground) => ["ink", ground] as const),
  ["second", "insulation"],
  ["chalk", "sheet"],
];

describe.each(["light", "dark", "print"] as const)("%s", (theme) => {
  const palette = colours(theme);
  const ratio = ([a, b]: readonly [string, string]): number =>
    contrast(palette.get(a) ?? "#000000", palette.get(b) ?? "#000000");

  it.each(TEXT_ON)("%s text reads on %s", (...pair) => {
    expect(ratio(pair)).toBeGreaterThanOrEqual(4.5);
  });

  it.each(LINES_ON)("%s lines show on %s", (...pair) => {
    expect(ratio(pair)).toBeGreaterThanOrEqual(3);
  });
});

it("gives black on white 21 : 1", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 5);
});

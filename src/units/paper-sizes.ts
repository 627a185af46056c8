/** Sheets of paper, millimetres. */

export interface PaperSize {
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

/**
 * ISO 216 trimmed sizes, landscape but for A4 (ISO 5457), and the North American series A to D (ASME Y14.1: inches) with the
 * architects' 24 × 36 (common practice).
 */
export const PAPER_SIZES = {
  A4: { name: "A4", width: 210, height: 297 },
  A3: { name: "A3", width: 420, height: 297 },
  A2: { name: "A2", width: 594, height: 420 },
  A1: { name: "A1", width: 841, height: 594 },
  A0: { name: "A0", width: 1189, height: 841 },
  letter: { name: "8 1/2 × 11", width: 215.9, height: 279.4 },
  tabloid: { name: "11 × 17", width: 431.8, height: 279.4 },
  "17 × 22": { name: "17 × 22", width: 558.8, height: 431.8 },
  "22 × 34": { name: "22 × 34", width: 863.6, height: 558.8 },
  "24 × 36": { name: "24 × 36", width: 914.4, height: 609.6 },
} as const satisfies Readonly<Record<string, PaperSize>>;

export type PaperName = keyof typeof PAPER_SIZES;

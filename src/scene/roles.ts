/**
 * What lines, fills and inks mean. A renderer turns roles into widths, dashes and colours; nothing above this file names
 * a colour.
 *
 * Widths follow ISO 128-2: narrow, wide and extra-wide as 1 : 2 : 4, here the line group 0.18 / 0.35 / 0.7 mm. Dash
 * lengths in multiples of the width d (dash 12 d, gap 3 d, long dash 24 d, dot 0.5 d) are from memory of the same standard.
 */

export type LineRole =
  | "cut"
  | "visible"
  | "detail"
  | "gap"
  | "dimension"
  | "leader"
  | "hatch"
  | "centre"
  | "control"
  | "hidden"
  | "ground"
  | "break"
  | "border"
  | "rule";

export type FillRole =
  | "paper"
  | "board"
  | "board-alt"
  | "sheet"
  | "membrane"
  | "timber"
  | "batten"
  | "insulation"
  | "sheathing"
  | "glass"
  | "metal"
  | "ground"
  | "ink"
  | "use-low"
  | "use-fair"
  | "use-near"
  | "use-full"
  | "use-over";

/** `on-board` is the ink that reads on the board tones. */
export type InkRole = "ink" | "second" | "chalk" | "red" | "on-board";

/** Millimetres on paper. */
export const LINE_WIDTHS = { narrow: 0.18, wide: 0.35, extraWide: 0.7 } as const;

export type LineWidth = keyof typeof LINE_WIDTHS;
export type LinePattern = "continuous" | "dashed" | "long-dash-dot";

export interface LineStyle {
  readonly width: LineWidth;
  readonly pattern: LinePattern;
  /** Stroke colour: an ink, or the membrane's dark for the gaps between boards. */
  readonly ink: InkRole | "membrane";
}

export const LINE_STYLES: Readonly<Record<LineRole, LineStyle>> = {
  cut: { width: "extraWide", pattern: "continuous", ink: "ink" },
  visible: { width: "wide", pattern: "continuous", ink: "ink" },
  detail: { width: "narrow", pattern: "continuous", ink: "ink" },
  gap: { width: "narrow", pattern: "continuous", ink: "membrane" },
  dimension: { width: "narrow", pattern: "continuous", ink: "ink" },
  leader: { width: "narrow", pattern: "continuous", ink: "second" },
  hatch: { width: "narrow", pattern: "continuous", ink: "second" },
  centre: { width: "narrow", pattern: "long-dash-dot", ink: "second" },
  control: { width: "narrow", pattern: "long-dash-dot", ink: "chalk" },
  hidden: { width: "narrow", pattern: "dashed", ink: "second" },
  ground: { width: "extraWide", pattern: "continuous", ink: "ink" },
  break: { width: "narrow", pattern: "continuous", ink: "second" },
  border: { width: "extraWide", pattern: "continuous", ink: "ink" },
  rule: { width: "wide", pattern: "continuous", ink: "ink" },
};

/** Dash and gap lengths in turn, millimetres on paper; empty for a continuous line. */
export function dashes({ width, pattern }: LineStyle): readonly number[] {
  const d = LINE_WIDTHS[width];
  if (pattern === "dashed") return [12 * d, 3 * d];
  if (pattern === "long-dash-dot") return [24 * d, 3 * d, 0.5 * d, 3 * d];
  return [];
}

/** What is drawn, as the element field of a layer's name. */
export type LayerElement =
  | "BOARD"
  | "SHEET"
  | "MEMBR"
  | "BATTEN"
  | "TRIM"
  | "FIXING"
  | "INSUL"
  | "STRUCT"
  | "OPENNG"
  | "CTRLIN"
  | "GROUND"
  | "ROD"
  | "WIND"
  | "LIGHT"
  | "WORK"
  | "SURVEY"
  | "FINDNG"
  | "FRAME";

/** E the thing itself, D dimensions, T text, H hatching. */
export type LayerPresentation = "E" | "D" | "T" | "H";
export type LayerName = string & { readonly layer: unique symbol };

/**
 * A layer's name in the three mandatory fields of ISO 13567-2, padded with hyphens: agent responsible (two characters,
 * `A-`), element (six) and presentation (two). The element words are our own.
 */
export function layerName(element: LayerElement, presentation: LayerPresentation = "E"): LayerName {
  return `A-${element.padEnd(6, "-")}${presentation}-` as LayerName;
}

/** Paragraphs on paper, one under the other, as high as the longest reading of each. */
import type { Message } from "../text/message.ts";
import { READERS } from "./bounds.ts";
import type { Item, Scene, SceneText, TextStyle } from "./model.ts";
import { layerName } from "./roles.ts";
import { sayText } from "./shapes.ts";
import { wrapText } from "./text-widths.ts";

export interface Paragraph extends Pick<TextStyle, "weight" | "ink"> {
  readonly text: SceneText;
  /** Of capitals; 2.5 mm unless told. */
  readonly height?: number;
  readonly link?: string;
}

const TEXT = 2.5;
/** From base line to base line, and between paragraphs, in heights of capitals. */
const LEADING = 1.75;
const BETWEEN = 0.5;

export function textBlock({
  id,
  title,
  paragraphs,
  width,
}: {
  id: string;
  title: Message;
  paragraphs: readonly Paragraph[];
  width: number;
}): Scene {
  let top = 0;
  const items = paragraphs.map(({ text, height = TEXT, weight = "regular", ink, link }): Item => {
    const lines = READERS.map(
      (reader) => wrapText({ text: sayText(text, reader), width, height, weight }).length,
    );
    const at = [0, top] as const;
    top -= (Math.max(...lines) * LEADING + BETWEEN) * height;
    return {
      kind: "text",
      layer: layerName("FRAME", "T"),
      at,
      text,
      height,
      weight,
      baseline: "top",
      wrapWidth: width,
      ...(ink && { ink }),
      ...(link !== undefined && { link }),
    };
  });
  return { id, title, scale: 1, toScale: false, bounds: { x: [0, width], y: [top, 0] }, items };
}

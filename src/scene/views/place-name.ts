/** Under a section or detail, what it is called and which sheet shows where it is cut or framed: the way back from its mark. */
import { type Message, message } from "../../text/message.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { MARK_WORDS, WIDEST_NUMBER } from "./mark-bubble.ts";
import { LABEL_STEP, TEXT } from "./style.ts";

export interface Place {
  /** As it stands where the place is shown. */
  readonly mark: string;
  /** Id of the scene, or name of the sheet, that shows it. */
  readonly on: string;
}

/** A line for each place: the elevation that is cut, and whatever else points here. */
export function withPlaceNames(
  scene: Scene,
  { section = [], detail = [] }: { readonly section?: readonly Place[]; readonly detail?: readonly Place[] },
): Scene {
  const lines: readonly (readonly [text: Message, on: string])[] = [
    ...section.map(
      ({ mark, on }) => [message("drawing.section-of", { mark, sheet: WIDEST_NUMBER }), on] as const,
    ),
    ...detail.map(
      ({ mark, on }) => [message("drawing.detail-of", { mark, sheet: WIDEST_NUMBER }), on] as const,
    ),
  ];
  const { x, y } = scene.bounds;
  const paper = 1 / scene.scale;
  const items = lines.map(
    ([text, link], i): Item => ({
      kind: "text",
      layer: MARK_WORDS,
      at: [x[0] + 2 * paper, y[0] - (1 + i * LABEL_STEP) * paper],
      text,
      height: TEXT,
      baseline: "top",
      weight: "bold",
      link,
    }),
  );
  const own = makeScene({ ...scene, items, margin: 0.5 }).bounds;
  return {
    ...scene,
    items: [...scene.items, ...items],
    bounds: { x: [x[0], Math.max(x[1], own.x[1])], y: [Math.min(y[0], own.y[0]), y[1]] },
  };
}

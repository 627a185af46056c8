/** A sheet: a paper frame with its title block and cautions, and the scenes that stand on it, each at its scale. */
import type { Point } from "../geometry/point.ts";
import type { Rect } from "../geometry/rect.ts";
import { type Message, message } from "../text/message.ts";
import { type Reader, say } from "../text/say.ts";
import { PAPER_SIZES, type PaperName, type PaperSize } from "../units/paper-sizes.ts";
import { READERS } from "./bounds.ts";
import type { Item, Scene, SceneText } from "./model.ts";
import { layerName } from "./roles.ts";
import { SCALE_BAR_WIDTH, scaleBarItems } from "./scale-bar.ts";
import { frameItems, frameRect } from "./sheet-frame.ts";
import { textWidth } from "./text-widths.ts";
import { TITLE_BLOCK_HEIGHT, TITLE_BLOCK_WIDTH, type TitleBlock, titleBlockItems } from "./title-block.ts";

export interface Viewport {
  readonly scene: Scene;
  /** Where the lower left corner of the scene's bounds stands on the sheet, mm. */
  readonly at: Point;
}

export interface Sheet {
  readonly id: string;
  readonly title: Message;
  readonly size: PaperSize;
  /** Frame, fields, title block, captions and cautions, drawn at full size. */
  readonly frame: Scene;
  readonly viewports: readonly Viewport[];
}

/** Said on every sheet. */
const CAUTIONS: readonly Message[] = [message("drawing.caution.codes"), message("drawing.caution.measure")];

const CAPTION_HEIGHT = 3.5;
const SMALL = 2.5;
/** What a caption takes over its drawing. */
export const CAPTION_ROOM = 12;
export const GAP = 8;
const BAND_GAP = 5;

/** The place for drawings: the frame less its margin and the title block's band. */
export function drawingArea(size: PaperSize): Rect {
  const { x, y } = frameRect(size);
  const cautions = cautionsBeside(size) ? 0 : 24;
  return {
    x: [x[0] + BAND_GAP, x[1] - BAND_GAP],
    y: [y[0] + TITLE_BLOCK_HEIGHT + cautions + BAND_GAP, y[1] - BAND_GAP],
  };
}

/** Cautions stand left of the title block where the sheet is wide enough, else over it. */
function cautionsBeside(size: PaperSize): boolean {
  const { x } = frameRect(size);
  return x[1] - x[0] - TITLE_BLOCK_WIDTH >= 80;
}

/**
 * Stands scenes in rows from the upper left, each under its caption. Undefined where they do not fit the area.
 */
export function arrange(scenes: readonly Scene[], area: Rect): Viewport[] | undefined {
  const viewports: Viewport[] = [];
  let left = area.x[0];
  let top = area.y[1];
  let rowHeight = 0;
  for (const scene of scenes) {
    const width = Math.max((scene.bounds.x[1] - scene.bounds.x[0]) * scene.scale, captionWidth(scene));
    const height = (scene.bounds.y[1] - scene.bounds.y[0]) * scene.scale + CAPTION_ROOM;
    if (left + width > area.x[1] && left > area.x[0]) {
      left = area.x[0];
      top -= rowHeight + GAP;
      rowHeight = 0;
    }
    if (left + width > area.x[1] || top - height < area.y[0]) return undefined;
    viewports.push({ scene, at: [left, top - height] });
    left += width + GAP;
    rowHeight = Math.max(rowHeight, height);
  }
  return viewports;
}

/** Captions of neighbours must not run into each other, whoever reads them. */
function captionWidth({ title, toScale }: Scene): number {
  const long = READERS.map((reader) =>
    textWidth({ text: say(title, reader), height: CAPTION_HEIGHT, weight: "bold" }),
  );
  return Math.max(...long, toScale === false ? 0 : SCALE_BAR_WIDTH);
}

/** The first of the sizes on which the scenes fit at their scales; undefined where none does. */
export function fittingPaper(scenes: readonly Scene[], sizes: readonly PaperName[]): PaperSize | undefined {
  return sizes.map((name) => PAPER_SIZES[name]).find((size) => arrange(scenes, drawingArea(size)));
}

/** Makes a sheet of viewports that already have their places (see `arrange`). */
export function makeSheet({
  id,
  size,
  titleBlock,
  viewports,
  units = "mm",
  cautions = CAUTIONS,
}: {
  id: string;
  size: PaperSize;
  titleBlock: Omit<TitleBlock, "scale">;
  viewports: readonly Viewport[];
  /** Of the scale bars. */
  units?: Reader["units"];
  cautions?: readonly SceneText[];
}): Sheet {
  const scales = new Set(viewports.flatMap(({ scene }) => (scene.toScale === false ? [] : [scene.scale])));
  const [only] = scales;
  const { x, y } = frameRect(size);
  const block: TitleBlock =
    scales.size === 1 && only !== undefined
      ? { ...titleBlock, scale: times(only) }
      : { ...titleBlock, ...(scales.size === 0 && { scale: "none" as const }) };
  const items: Item[] = [
    ...frameItems(size),
    ...titleBlockItems(block, [x[1], y[0]]),
    ...viewports.flatMap((viewport) => captionItems(viewport, units)),
    ...cautionItems(cautions, size),
  ];
  const title = message("drawing.sheet.title-of", {
    project: titleBlock.project,
    title: titleBlock.title,
    number: titleBlock.sheet.number,
  });
  const frame: Scene = {
    id: `${id}-frame`,
    title,
    scale: 1,
    bounds: { x: [0, size.width], y: [0, size.height] },
    items,
  };
  return { id, title, size, frame, viewports };
}

function times(scale: number): number {
  return Math.round(1000 / scale) / 1000;
}

function captionItems({ scene, at }: Viewport, units: Reader["units"]): Item[] {
  const top = at[1] + (scene.bounds.y[1] - scene.bounds.y[0]) * scene.scale + CAPTION_ROOM;
  const layer = layerName("FRAME", "T");
  const title: Item = {
    kind: "text",
    layer,
    of: scene.id,
    at: [at[0], top],
    text: scene.title,
    height: CAPTION_HEIGHT,
    weight: "bold",
    baseline: "top",
  };
  if (scene.toScale === false) return [title];
  return [
    title,
    {
      kind: "text",
      layer,
      of: scene.id,
      at: [at[0], top - CAPTION_HEIGHT - 2],
      text: message("drawing.sheet.scale-is", { scale: times(scene.scale) }),
      height: SMALL,
      baseline: "top",
      ink: "second",
    },
    ...scaleBarItems({
      at: [at[0], top - CAPTION_HEIGHT - 2 - SMALL],
      scale: scene.scale,
      units,
      of: scene.id,
    }),
  ];
}

/** Each caution a paragraph, from the top of its place down. */
function cautionItems(cautions: readonly SceneText[], size: PaperSize): Item[] {
  const { x, y } = frameRect(size);
  const beside = cautionsBeside(size);
  const width = (beside ? x[1] - x[0] - TITLE_BLOCK_WIDTH : TITLE_BLOCK_WIDTH) - 2 * BAND_GAP;
  const columns = beside ? 1 : 2;
  const column = width / columns;
  const top = y[0] + TITLE_BLOCK_HEIGHT - 2 + (beside ? 0 : 22);
  const step = beside ? (TITLE_BLOCK_HEIGHT - 4) / Math.max(1, cautions.length) : 0;
  return cautions.map(
    (text, i): Item => ({
      kind: "text",
      layer: layerName("FRAME", "T"),
      at: [x[0] + BAND_GAP + (beside ? 0 : i * column), top - i * step],
      text,
      height: SMALL,
      baseline: "top",
      wrapWidth: column - BAND_GAP,
    }),
  );
}

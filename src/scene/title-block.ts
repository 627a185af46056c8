/** The title block: fields of ISO 7200 (mandatory ones marked), 180 mm wide, at the sheet's lower right. */
import type { Point } from "../geometry/point.ts";
import { rectOutline } from "../geometry/rect.ts";
import { message } from "../text/message.ts";
import { READERS } from "./bounds.ts";
import type { Item, SceneText } from "./model.ts";
import { layerName } from "./roles.ts";
import { sayText } from "./shapes.ts";
import { wrapText } from "./text-widths.ts";

export interface TitleBlock {
  /** Legal owner (mandatory): whose building or practice it is. */
  readonly owner: SceneText;
  /** Identification number (mandatory). */
  readonly identification: string;
  /** Title (mandatory): the project; and what this sheet shows. */
  readonly project: SceneText;
  readonly title: SceneText;
  /** Document type (mandatory). */
  readonly documentType: SceneText;
  /** Creator and approval (mandatory): left blank for signing where not known. */
  readonly creator: string;
  readonly approvedBy: string;
  /** Date of issue (mandatory), as it is to be printed; blank until issued. */
  readonly dateOfIssue: string;
  readonly revision: SceneText;
  /** Sheet number (mandatory) and number of sheets. */
  readonly sheet: { readonly number: number; readonly of: number };
  /** Times smaller than the model; undefined where views differ, `none` where nothing is to scale. */
  readonly scale?: number | "none";
}

export const TITLE_BLOCK_WIDTH = 180;
export const TITLE_BLOCK_HEIGHT = 38;

const LAYER = layerName("FRAME");
const TEXT_LAYER = layerName("FRAME", "T");
const SMALL = 2.5;
const LARGE = 3.5;
const PADDING = 2;
const LABEL_DROP = 1.4;

interface Cell {
  readonly x: number;
  readonly width: number;
  readonly top: number;
  readonly height: number;
  readonly label?: string;
  readonly value: SceneText;
  readonly large?: boolean;
}

/** @param corner the block's lower right corner on the sheet */
export function titleBlockItems(block: TitleBlock, corner: Point): Item[] {
  const left = corner[0] - TITLE_BLOCK_WIDTH;
  const bottom = corner[1];
  return cells(block).flatMap((cell): Item[] => {
    const x = left + cell.x;
    const top = bottom + cell.top;
    const outline = rectOutline({ x: [x, x + cell.width], y: [top - cell.height, top] });
    const room = cell.width - 2 * PADDING;
    const items: Item[] = [{ kind: "polygon", layer: LAYER, outline, line: "rule" }];
    const size = cell.large ? LARGE : SMALL;
    const labelled = cell.label !== undefined && !isLong(cell.value, { width: room, height: size });
    if (labelled) {
      items.push({
        kind: "text",
        layer: TEXT_LAYER,
        at: [x + PADDING, top - LABEL_DROP],
        text: message(`drawing.sheet.${cell.label}`),
        height: SMALL,
        baseline: "top",
        ink: "second",
      });
    }
    items.push({
      kind: "text",
      layer: TEXT_LAYER,
      at: [
        x + PADDING,
        labelled
          ? top - LABEL_DROP - SMALL - 1.5
          : top - (cell.label === undefined ? (cell.height - LARGE) / 2 : LABEL_DROP),
      ],
      text: cell.value,
      height: size,
      weight: cell.large ? "bold" : "regular",
      baseline: "top",
      wrapWidth: room,
    });
    return items;
  });
}

/** Whether any reader sees more than one line of it: its label then makes room. */
function isLong(value: SceneText, { width, height }: { width: number; height: number }): boolean {
  return READERS.some(
    (reader) => wrapText({ text: sayText(value, reader), width, height, weight: "regular" }).length > 1,
  );
}

function cells(block: TitleBlock): Cell[] {
  const scale =
    block.scale === undefined
      ? message("drawing.sheet.scales-differ")
      : block.scale === "none"
        ? "–"
        : message("drawing.sheet.scale-is", { scale: block.scale });
  const { number, of } = block.sheet;
  const count = message("drawing.sheet.sheet-of", { number, of });
  return [
    { x: 0, width: 124, top: 38, height: 8, value: block.project, large: true },
    { x: 124, width: 56, top: 38, height: 8, value: block.documentType },
    { x: 0, width: 124, top: 30, height: 10, label: "title", value: block.title },
    { x: 124, width: 56, top: 30, height: 10, label: "identification", value: block.identification },
    { x: 0, width: 62, top: 20, height: 10, label: "owner", value: block.owner },
    { x: 62, width: 62, top: 20, height: 10, label: "creator", value: block.creator },
    { x: 124, width: 56, top: 20, height: 10, label: "approved", value: block.approvedBy },
    { x: 0, width: 62, top: 10, height: 10, label: "revision", value: block.revision },
    { x: 62, width: 31, top: 10, height: 10, label: "date", value: block.dateOfIssue },
    { x: 93, width: 31, top: 10, height: 10, label: "sheet", value: count },
    { x: 124, width: 56, top: 10, height: 10, label: "scale", value: scale },
  ];
}

/** One sheet as it is sawn: its pieces by their marks, what is kept, and the cuts in the order that frees each piece. */
import { type NumberedCut, numberedCuts } from "../../../cutting/cut-order.ts";
import type { CutSheet, Rectangle, SheetStock } from "../../../cutting/model.ts";
import { rectOutline } from "../../../geometry/rect.ts";
import { message } from "../../../text/message.ts";
import { makeScene } from "../../bounds.ts";
import type { Item, Scene } from "../../model.ts";
import { type LayerName, layerName } from "../../roles.ts";
import { TEXT } from "../style.ts";

const SHEET = layerName("SHEET");
const CUT = layerName("CTRLIN");

/** What mark and size take over one another, mm on paper; in a narrower piece they stand in one line. */
const LINES = TEXT * 4.4;

/** Between the lines of a hatch, mm on paper. */
const HATCH = 2.2;

/** @param options.scale millimetres of paper for one of the sheet */
export function cutSheetScene(
  sheet: CutSheet,
  { stock, scale }: { readonly stock: SheetStock; readonly scale: number },
): Scene {
  const { width, height } = stock;
  return makeScene({
    id: `sheet-${sheet.stockId}-${sheet.index + 1}`,
    title: message("drawing.title.cut-sheet", { stock: sheet.stockId, number: sheet.index + 1 }),
    scale,
    items: [
      {
        kind: "polygon",
        layer: SHEET,
        outline: rectOutline({ x: [0, width], y: [0, height] }),
        line: "visible",
        fill: "paper",
      },
      ...sheet.placements.flatMap((one) => pieceItems(one, scale)),
      ...sheet.offcuts.flatMap((one) => offcutItems(one, scale)),
      ...numberedCuts(sheet.tree).flatMap((cut) => cutItems(cut, scale)),
    ],
  });
}

function pieceItems(
  piece: Rectangle & { readonly demandId: string; readonly turned: boolean },
  scale: number,
): Item[] {
  const { x, y, width, height, demandId } = piece;
  const upright = height > width;
  const room = upright ? height : width;
  const middle = [x + width / 2, y + height / 2] as const;
  const layer = layerName("SHEET", "T");
  const below = (TEXT * 1.6) / scale;
  const [a, b] = piece.turned ? [height, width] : [width, height];
  const shape: Item = {
    kind: "polygon",
    layer: SHEET,
    of: demandId,
    outline: rectOutline({ x: [x, x + width], y: [y, y + height] }),
    line: "detail",
    fill: "sheet",
  };
  const own = { layer, of: demandId, upright, fitWidth: room };
  if (Math.min(width, height) < LINES / scale) {
    const said = message("drawing.cut-named", { mark: demandId, a, b });
    return [shape, text({ ...own, at: middle, text: said })];
  }
  return [
    shape,
    text({ ...own, at: middle, text: demandId, weight: "bold" }),
    text({
      ...own,
      at: upright ? [middle[0] + below, middle[1]] : [middle[0], middle[1] - below],
      text: message("drawing.cut-size", { a, b }),
    }),
  ];
}

function offcutItems({ x, y, width, height }: Rectangle, scale: number): Item[] {
  const outline = rectOutline({ x: [x, x + width], y: [y, y + height] });
  const upright = height > width;
  return [
    { kind: "hatch", layer: layerName("SHEET", "H"), outline, pattern: "diagonal", spacing: HATCH },
    {
      ...text({
        layer: layerName("SHEET", "T"),
        at: [x + width / 2, y + height / 2],
        text: message("drawing.cut-kept", { a: width, b: height }),
        upright,
        fitWidth: (upright ? height : width) - 2 / scale,
      }),
      plate: "paper",
    },
  ];
}

/** The number stands on its cut, at the end where the saw starts. */
function cutItems({ number, from, to }: NumberedCut, scale: number): Item[] {
  const upright = from[0] === to[0];
  const inward = TEXT / scale;
  return [
    { kind: "line", layer: CUT, from, to, line: "control" },
    {
      ...text({
        layer: layerName("CTRLIN", "T"),
        at: upright ? [from[0], from[1] + inward] : [from[0] + inward, from[1]],
        text: String(number),
        upright: false,
      }),
      ink: "chalk",
      plate: "paper",
    },
  ];
}

function text({
  layer,
  of,
  at,
  text: said,
  upright,
  fitWidth,
  weight,
}: {
  layer: LayerName;
  of?: string;
  at: readonly [number, number];
  text: Extract<Item, { kind: "text" }>["text"];
  upright: boolean;
  fitWidth?: number;
  weight?: "bold";
}): Extract<Item, { kind: "text" }> {
  return {
    kind: "text",
    layer,
    at,
    text: said,
    height: TEXT,
    anchor: "middle",
    baseline: "middle",
    angleDeg: upright ? 90 : 0,
    ...(of !== undefined && { of }),
    ...(fitWidth !== undefined && { fitWidth }),
    ...(weight && { weight }),
  };
}

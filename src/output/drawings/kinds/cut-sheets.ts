/** Each sheet as it is sawn, its cuts numbered, and beside it where each cut runs. */
import { numberedCuts } from "../../../cutting/cut-order.ts";
import type { CutSheet, SheetStock } from "../../../cutting/model.ts";
import { makeScene } from "../../../scene/bounds.ts";
import { linesBeside } from "../../../scene/lines-beside.ts";
import type { Scene } from "../../../scene/model.ts";
import { cutSheetScene } from "../../../scene/views/cutting/cut-sheet.ts";
import { fittingScale } from "../../../scene/views/scales.ts";
import { message } from "../../../text/message.ts";
import { positionMm } from "../../../units/rounding.ts";
import type { Drawing, KindFacts } from "../facts.ts";

/** What one sheet of the stock may take on the paper, mm. */
const ROOM = [150, 160] as const;

export function cutSheetSheets({ plan, memo }: KindFacts): Drawing[] {
  const scenes = (plan?.sheets ?? []).flatMap(({ request, result }) => {
    const stock = new Map(request.stock.map((one) => [one.id, one]));
    return result.plan.sheets.flatMap((sheet) => {
      const own = stock.get(sheet.stockId);
      return own ? [memo.recall(withCuts, { sheet, stock: own })] : [];
    });
  });
  return scenes.length === 0
    ? []
    : [{ name: "cut-sheets", type: message("drawing.document-type.cuts"), scenes }];
}

function withCuts({ sheet, stock }: { readonly sheet: CutSheet; readonly stock: SheetStock }): Scene {
  const { width, height } = stock;
  const scale = fittingScale({ x: [0, width], y: [0, height] }, { room: ROOM });
  const scene = cutSheetScene(sheet, { stock, scale });
  const lines = numberedCuts(sheet.tree).map(({ number, from, to }) => {
    const upright = from[0] === to[0];
    const [at, start, end] = upright ? [from[0], from[1], to[1]] : [from[1], from[0], to[0]];
    const place = (mm: number): number => positionMm(mm, { step: 0.5 });
    return {
      text: message(`drawing.cut-line-${upright ? "upright" : "level"}`, {
        number,
        at: place(at),
        from: place(start),
        to: place(end),
      }),
    };
  });
  return makeScene({
    ...scene,
    items: [
      ...scene.items,
      ...linesBeside([{ text: message("drawing.cut-from"), weight: "bold" }, ...lines], {
        at: [width + 6 / scale, height],
        height: height * scale,
        scale,
      }),
    ],
  });
}

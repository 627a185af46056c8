/** The label of one piece: its mark large, up and face, size, lot and finish, the screws that let it go, and a code to read. */
import { encode } from "uqr";
import type { Polygon } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import type { Message } from "../../text/message.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import { textWidth } from "../text-widths.ts";

export interface LabelFacts {
  readonly mark: string;
  /** From the most to the least important: what has no room is left out from the end. */
  readonly lines: readonly (Message | string)[];
  /** What the code says. */
  readonly code: string;
}

const PAD = 2.5;
const TEXT = 2.5;
const STEP = 4.2;
const MARKS = [7, 5, 3.5, 2.5] as const;
const WORDS = layerName("FRAME", "T");

/** @param at the label's upper left corner, mm of the sheet */
export function labelItems(
  { mark, lines, code }: LabelFacts,
  {
    at: [x, y],
    width,
    height,
  }: { readonly at: readonly [number, number]; readonly width: number; readonly height: number },
): Item[] {
  const side = Math.min(height - 2 * PAD, width * 0.32);
  const room = width - 2 * PAD - (side > 0 ? side + 6 : 0);
  const tall =
    MARKS.find((size) => textWidth({ text: mark, height: size, weight: "bold" }) <= room - 8) ?? TEXT;
  const first = y - PAD - tall - 2.6;
  const fit = Math.max(0, Math.floor((first - (y - height + PAD)) / STEP));
  const left = x + PAD;
  return [
    {
      kind: "text",
      layer: WORDS,
      of: mark,
      at: [left + 6, y - PAD],
      text: mark,
      height: tall,
      weight: "bold",
      baseline: "top",
    },
    ...upArrow(left + 1.8, y - PAD, tall),
    ...lines.slice(0, fit).map(
      (text, i): Item => ({
        kind: "text",
        layer: WORDS,
        of: mark,
        at: [left, first - i * STEP],
        text,
        height: TEXT,
        baseline: "top",
        fitWidth: room + 3,
      }),
    ),
    qrItem(code, { left: x + width - PAD - side, top: y - PAD, side, of: mark }),
  ];
}

/** The top of the wall lies this way, the outer face towards the reader. */
function upArrow(x: number, top: number, tall: number): Item[] {
  const low = top - tall;
  const head = top - tall * 0.5;
  return [
    {
      kind: "polygon",
      layer: layerName("FRAME"),
      outline: [
        [x - 1.6, head],
        [x, top],
        [x + 1.6, head],
      ],
      fill: "ink",
    },
    { kind: "line", layer: layerName("FRAME"), from: [x, head], to: [x, low], line: "cut" },
  ];
}

/** Dark modules as runs in one even-odd area (ISO/IEC 18004; the symbol is made by a library). */
function qrItem(
  code: string,
  { left, top, side, of }: { left: number; top: number; side: number; of: string },
): Item {
  const { data, size } = encode(code, { ecc: "M", border: 2 });
  const module = side / size;
  const runs: Polygon[] = data.flatMap((row, j) => {
    const found: Polygon[] = [];
    for (let i = 0; i < size; i++) {
      if (!row[i]) continue;
      let end = i + 1;
      while (end < size && row[end]) end++;
      found.push(
        rectOutline({
          x: [left + i * module, left + end * module],
          y: [top - (j + 1) * module, top - j * module],
        }),
      );
      i = end;
    }
    return found;
  });
  const [outline = [], ...holes] = runs;
  return { kind: "polygon", layer: layerName("FRAME"), of, outline, holes, fill: "ink" };
}

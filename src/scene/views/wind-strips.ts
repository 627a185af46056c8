/** The strips of a face in which the wind presses unlike: a row over the face, and where one ends and the next begins. */
import { rectOutline } from "../../geometry/rect.ts";
import type { BandPressure } from "../../proof/wind/uses.ts";
import { type Message, message } from "../../text/message.ts";
import { READERS } from "../bounds.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import { sayText } from "../shapes.ts";
import { textWidth } from "../text-widths.ts";
import { TEXT } from "./style.ts";

const WIND = layerName("WIND");
const WORDS = layerName("WIND", "T");

/** Over the face, mm on paper; a row whose words lie, and what words keep from its ends. */
const FROM = 0.8;
const HIGH = 4.4;
const PAD = 1;

/** Words stand upright where one of the strips is too narrow for its own, whoever reads them. */
export function windStripItems(
  bands: readonly BandPressure[],
  { y, scale }: { readonly y: readonly [number, number]; readonly scale: number },
): Item[] {
  const paper = 1 / scale;
  const named = bands.map((band) => {
    const text = wordsOf(band);
    return { ...band, text, long: longest(text) + 2 * PAD };
  });
  const lie = named.every(({ x, long }) => (x[1] - x[0]) * scale >= long);
  const from = y[1] + FROM * paper;
  const to = from + (lie ? HIGH : Math.max(...named.map(({ long }) => long))) * paper;
  return named.flatMap(({ x, text }, i): Item[] => {
    const middle = (x[0] + x[1]) / 2;
    return [
      {
        kind: "polygon",
        layer: WIND,
        outline: rectOutline({ x, y: [from, to] }),
        line: "detail",
        fill: "paper",
      },
      {
        kind: "text",
        layer: WORDS,
        text,
        height: TEXT,
        ...(lie
          ? { at: [middle, (from + to) / 2], anchor: "middle", baseline: "middle" }
          : { at: [middle + (TEXT / 2) * paper, from + PAD * paper], angleDeg: 90 }),
      },
      ...(i === 0
        ? []
        : [
            {
              kind: "line" as const,
              layer: WIND,
              from: [x[0], y[0]] as const,
              to: [x[0], from] as const,
              line: "control" as const,
            },
          ]),
    ];
  });
}

function wordsOf({ strip, pullPa, pushPa }: BandPressure): Message {
  return message(`drawing.use.strip-${strip.id}`, { pull: pullPa, push: pushPa });
}

function longest(text: Message): number {
  const said = READERS.map((reader) => sayText(text, reader));
  return Math.max(...said.map((one) => textWidth({ text: one, height: TEXT, weight: "regular" })));
}

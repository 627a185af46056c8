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

/** Words lie in their strip where it is wide enough for them, whoever reads; else they are led out over the row. */
export function windStripItems(
  bands: readonly BandPressure[],
  { y, scale }: { readonly y: readonly [number, number]; readonly scale: number },
): Item[] {
  const paper = 1 / scale;
  const named = bands.map((band): Named => {
    const text = wordsOf(band);
    const long = (longest(text) + 2 * PAD) * paper;
    return { x: band.x, middle: (band.x[0] + band.x[1]) / 2, text, long };
  });
  const from = y[1] + FROM * paper;
  const to = from + HIGH * paper;
  const lies = ({ x, long }: Named): boolean => x[1] - x[0] >= long;
  return [
    ...named.flatMap((strip, i): Item[] => {
      const { x, middle, text } = strip;
      const items: Item[] = [
        {
          kind: "polygon",
          layer: WIND,
          outline: rectOutline({ x, y: [from, to] }),
          line: "detail",
          fill: "paper",
        },
      ];
      if (lies(strip)) {
        const at = [middle, (from + to) / 2] as const;
        items.push({
          kind: "text",
          layer: WORDS,
          text,
          height: TEXT,
          at,
          anchor: "middle",
          baseline: "middle",
        });
      }
      if (i > 0) {
        items.push({ kind: "line", layer: WIND, from: [x[0], y[0]], to: [x[0], from], line: "control" });
      }
      return items;
    }),
    ...ledOut(
      named.filter((strip) => !lies(strip)),
      { to, paper },
    ),
  ];
}

interface Named {
  readonly x: readonly [number, number];
  readonly middle: number;
  readonly text: Message;
  /** Its words with what they keep at both ends, mm. */
  readonly long: number;
}

/**
 * Words beside leaders that rise from their strips. Each stands in the lowest row over all that it would meet to its right, so
 * none lies on another and no leader runs through one. The last turns back over the face where nothing else rises there.
 */
function ledOut(strips: readonly Named[], { to, paper }: { to: number; paper: number }): Item[] {
  const placed: { readonly span: readonly [number, number]; readonly row: number }[] = [];
  return strips.toReversed().flatMap(({ middle, text, long }, i): Item[] => {
    const back = i === 0 && strips.slice(0, -1).every((other) => other.middle < middle - long);
    const span = back ? ([middle - long, middle] as const) : ([middle, middle + long] as const);
    const met = placed.filter((other) => other.span[0] < span[1] && span[0] < other.span[1]);
    const row = Math.max(-1, ...met.map((other) => other.row)) + 1;
    placed.push({ span, row });
    const top = to + (row + 1) * HIGH * paper;
    const at = [middle + (back ? -PAD : PAD) * paper, top - (HIGH / 2) * paper] as const;
    return [
      { kind: "line", layer: WIND, from: [middle, to], to: [middle, top], line: "dimension" },
      {
        kind: "text",
        layer: WORDS,
        text,
        height: TEXT,
        at,
        anchor: back ? "end" : "start",
        baseline: "middle",
      },
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

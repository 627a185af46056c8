/** Control lines in elevation, named with their heights in a column at the right. */
import type { Interval } from "../../geometry/interval.ts";
import type { ControlLine } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import { sameLength } from "../../units/length.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import { spread } from "../spread.ts";
import { LABEL_STEP, TEXT } from "./style.ts";

const LAYER = layerName("CTRLIN");
const TEXT_LAYER = layerName("CTRLIN", "T");

/** More owners than this are counted in place of named. */
const MOST_NAMED = 2;

export interface HeightLine {
  readonly at: number;
  readonly lines: readonly ControlLine[];
}

/** The horizontal lines by height, lowest first; lines of one height are one. */
export function heightLines(lines: readonly ControlLine[]): HeightLine[] {
  const found: { at: number; lines: ControlLine[] }[] = [];
  const level = lines.filter(({ direction }) => direction === "horizontal").sort((a, b) => a.at - b.at);
  for (const line of level) {
    const last = found.at(-1);
    if (last && sameLength(last.at, line.at)) last.lines.push(line);
    else found.push({ at: line.at, lines: [line] });
  }
  return found;
}

/** The lines across a drawing, and their names beside it. */
export function controlLineItems({
  lines,
  x,
  labelX,
  scale,
}: {
  lines: readonly HeightLine[];
  x: Interval;
  labelX: number;
  scale: number;
}): Item[] {
  const paper = 1 / scale;
  const places = spread(
    lines.map(({ at }) => at),
    { spacing: LABEL_STEP * paper },
  );
  return lines.flatMap((line, i): Item[] => {
    const place = places[i] as number;
    const of = line.lines[0]?.id;
    const tagged = of === undefined ? {} : { of };
    return [
      {
        kind: "polyline",
        layer: LAYER,
        ...tagged,
        line: "control",
        points: [
          [x[0], line.at],
          [x[1], line.at],
        ],
      },
      // The tail that leads to the name bends where names had to be spread.
      {
        kind: "polyline",
        layer: LAYER,
        ...tagged,
        line: "control",
        points: [
          [x[1], line.at],
          [labelX - 1 * paper, place],
        ],
      },
      {
        kind: "text",
        layer: TEXT_LAYER,
        ...tagged,
        at: [labelX, place],
        text: lineLabel(line),
        height: TEXT,
        baseline: "middle",
        ink: "chalk",
      },
    ];
  });
}

/** `sill W3, head 1480`: the kinds at a height with the openings they are of, and the height. */
export function lineLabel({ at, lines }: HeightLine): Message {
  const kinds = [...new Set(lines.map(({ kind }) => kind))];
  const names = kinds.map((kind): Message => {
    const name = message(`drawing.line.${kind}`);
    const owners = [...new Set(lines.filter((line) => line.kind === kind).flatMap(({ of }) => of ?? []))];
    if (kind !== "sill" && kind !== "head" && kind !== "own") return name;
    if (owners.length === 0) return name;
    return owners.length <= MOST_NAMED
      ? message("drawing.line-of", { name, owners })
      : message("drawing.line-of-many", { name, count: owners.length });
  });
  return message("drawing.line-at", { names, at });
}

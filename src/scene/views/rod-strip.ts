/**
 * The storey rod at full size, to be held against the wall: every course with its number and width, every edge with its height,
 * the control lines carried across. Heights of the face; of upright boards, places along it.
 */
import { common, type Interval } from "../../geometry/interval.ts";
import { rectOutline } from "../../geometry/rect.ts";
import type { Facade, RodResult } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { layerName } from "../roles.ts";
import { heightLines, lineLabel } from "./control-lines.ts";
import { TEXT } from "./style.ts";

/** Millimetres on paper, across the strip. */
const BAND: Interval = [0, 26];
const FIGURES = -6;
const NAMES = 30;
const EDGE = 5;
/** What a strip takes beside its band for figures and names. */
export const STRIP_LEFT = 30;
export const STRIP_WIDTH = 96;
/** A course lower than this has no room for its words. */
const WORDS_FROM = 6;

const LAYER = layerName("ROD");

export function rodEnds({ segments }: RodResult): Interval {
  return [segments[0]?.from ?? 0, segments.at(-1)?.to ?? 0];
}

/** What of a rod lies in a stretch of its height, x from the band's left edge. */
export function rodStripItems(rod: RodResult, facade: Pick<Facade, "faces">, window: Interval): Item[] {
  const courses = rod.segments.flatMap((segment) => segment.courses);
  const whole = common(rodEnds(rod), window);
  const edges = [...new Set(courses.flatMap(({ from, to }) => [snap(from), snap(to)]))]
    .filter((at) => at >= window[0] && at <= window[1])
    .sort((a, b) => a - b);
  return [
    ...(whole
      ? [
          {
            kind: "polygon" as const,
            layer: LAYER,
            of: rod.id,
            outline: rectOutline({ x: BAND, y: whole }),
            fill: "membrane" as const,
          },
        ]
      : []),
    ...courses.flatMap((course): Item[] => {
      const y = common([course.from, course.to], window);
      if (!y) return [];
      const { number, width } = course;
      return [
        {
          kind: "polygon",
          layer: LAYER,
          of: rod.id,
          outline: rectOutline({ x: BAND, y }),
          line: "detail",
          fill: "paper",
        },
        ...(y[1] - y[0] < WORDS_FROM
          ? []
          : [
              {
                kind: "text" as const,
                layer: layerName("ROD", "T"),
                of: rod.id,
                at: [(BAND[0] + BAND[1]) / 2, (y[0] + y[1]) / 2] as const,
                text: message("drawing.rod-course", { number, width }),
                height: TEXT,
                anchor: "middle" as const,
                baseline: "middle" as const,
              },
            ]),
      ];
    }),
    ...edges.map(
      (y): Item => ({
        kind: "line",
        layer: LAYER,
        of: rod.id,
        from: [BAND[0] - EDGE, y],
        to: [BAND[0], y],
        line: "detail",
      }),
    ),
    ...(edges.length < 2
      ? []
      : [
          {
            kind: "dimension" as const,
            layer: layerName("ROD", "D"),
            of: rod.id,
            style: "running" as const,
            along: "y" as const,
            at: FIGURES,
            points: edges,
            origin: 0,
          },
        ]),
    ...lineItems(rod, facade, window),
  ];
}

function lineItems(rod: RodResult, { faces }: Pick<Facade, "faces">, window: Interval): Item[] {
  const own = faces.filter(({ id }) => rod.zones.some(({ face }) => face === id));
  const lines = heightLines(own.flatMap(({ controlLines }) => controlLines));
  const inside = lines.filter(({ at }) => at >= window[0] && at <= window[1]);
  return inside.flatMap((line): Item[] => [
    {
      kind: "line",
      layer: layerName("CTRLIN"),
      of: rod.id,
      from: [BAND[0] - EDGE, line.at],
      to: [NAMES - 1, line.at],
      line: "control",
    },
    {
      kind: "text",
      layer: layerName("CTRLIN", "T"),
      of: rod.id,
      at: [NAMES, line.at],
      text: lineLabel(line),
      height: TEXT,
      baseline: "middle",
      ink: "chalk",
    },
  ]);
}

/** Over the strip: which rod it is, and a line to hold a tape against. */
const HEAD = 14;
const CHECK = 100;

/** A stretch of a rod as one scene at full size, with a line of 100 mm to verify the print by. */
export function rodStrip(
  rod: RodResult,
  facade: Pick<Facade, "faces">,
  { window, id }: { window: Interval; id: string },
): Scene {
  const title = message("drawing.title.rod-strip", { rod: rod.id, from: window[0], to: window[1] });
  return makeScene({
    id,
    title,
    scale: 1,
    margin: 10,
    items: [
      ...rodStripItems(rod, facade, window),
      {
        kind: "text",
        layer: layerName("ROD", "T"),
        at: [-STRIP_LEFT, window[1] + HEAD],
        text: title,
        height: 3.5,
        weight: "bold",
      },
      ...checkLine([-STRIP_LEFT, window[0] - HEAD]),
    ],
  });
}

/** A line of 100 mm across the paper, and what it is for. */
export function checkLine([x, y]: readonly [number, number]): Item[] {
  const layer = layerName("FRAME");
  const stroke = (at: number): Item => ({
    kind: "line",
    layer,
    from: [at, y - 2],
    to: [at, y + 2],
    line: "visible",
  });
  return [
    { kind: "line", layer, from: [x, y], to: [x + CHECK, y], line: "visible" },
    stroke(x),
    stroke(x + CHECK),
    {
      kind: "text",
      layer: layerName("FRAME", "T"),
      at: [x, y - 3],
      text: message("drawing.rod-check", { length: CHECK }),
      height: TEXT,
      baseline: "top",
      wrapWidth: CHECK + 60,
    },
  ];
}

/** A scene with one of every kind of item, for trying renderers and layout. */
import { makeScene } from "../../src/scene/bounds.ts";
import type { Item, Scene } from "../../src/scene/model.ts";
import { layerName } from "../../src/scene/roles.ts";
import { message } from "../../src/text/message.ts";

const layer = layerName("FRAME");

export const SAMPLE_ITEMS: readonly Item[] = [
  { kind: "line", layer, from: [0, 0], to: [1000, 0], line: "visible" },
  {
    kind: "polyline",
    layer,
    points: [
      [0, 100],
      [500, 180],
      [1000, 100],
    ],
    line: "control",
  },
  {
    kind: "polygon",
    layer,
    of: 'F<1> & "co"',
    outline: [
      [0, 200],
      [400, 200],
      [400, 500],
      [0, 500],
    ],
    holes: [
      [
        [100, 250],
        [100, 350],
        [200, 350],
        [200, 250],
      ],
    ],
    line: "cut",
    fill: "sheet",
  },
  { kind: "circle", layer, centre: [600, 300], radius: 80, line: "detail", fill: "paper" },
  { kind: "arc", layer, centre: [850, 300], radius: 90, fromDeg: 20, toDeg: 250, line: "hidden" },
  {
    kind: "text",
    layer,
    at: [500, 600],
    text: 'joint < 8 & "so" it\'s',
    height: 2.5,
    anchor: "middle",
    plate: "paper",
  },
  {
    kind: "hatch",
    layer,
    outline: [
      [0, 700],
      [400, 700],
      [300, 900],
    ],
    pattern: "diagonal",
    spacing: 2,
  },
  { kind: "dimension", layer, style: "chain", along: "x", at: -150, from: 0, points: [0, 300, 340, 1000] },
  {
    kind: "leader",
    layer,
    points: [
      [300, 800],
      [500, 950],
      [700, 950],
    ],
    text: message("drawing.rod"),
    height: 2.5,
  },
  { kind: "symbol", layer, at: [900, 800], symbol: "cannot evaluate", size: 4 },
];

export function sampleScene(items: readonly Item[] = SAMPLE_ITEMS): Scene {
  return makeScene({ id: "sample", title: message("drawing.rod"), scale: 1 / 10, items });
}

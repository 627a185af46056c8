/** Views as one DXF drawing at full size, in millimetres: one beside the other in the model. Same views, same bytes. */
import type { Point } from "../../geometry/point.ts";
import type { Rect } from "../../geometry/rect.ts";
import { drawList, itemShapes } from "../../scene/draw-list.ts";
import type { Item, Scene } from "../../scene/model.ts";
import { layerName } from "../../scene/roles.ts";
import type { Mark } from "../../scene/shapes.ts";
import type { Sheet } from "../../scene/sheet.ts";
import { type Reader, say } from "../../text/say.ts";
import { utf8 } from "../utf8.ts";
import { chainDimensions, type Picture } from "./dimensions.ts";
import { type Into, markTags } from "./entities.ts";
import { blocks, header, objects, section, tables } from "./tables.ts";
import { dxfText, Handles, type Tag } from "./tags.ts";

/** Between views, and over one for its caption: millimetres on paper. */
const APART = 30;
const CAPTION = { height: 3.5, over: 6 } as const;

/** The views of a drawing: its frame is the paper's and stays there. */
export function dxfOfDrawing(drawing: Sheet | Scene, reader: Reader): Uint8Array {
  return writeDxf("viewports" in drawing ? drawing.viewports.map(({ scene }) => scene) : [drawing], reader);
}

export function writeDxf(scenes: readonly Scene[], reader: Reader): Uint8Array {
  const handles = new Handles();
  const [model, paper] = [handles.next(), handles.next()] as const;
  const placed = sideBySide(scenes);
  const held: { record: string; picture: Picture; into: Into }[] = [];
  const layers = new Set<string>();
  const entities: Tag[] = [];
  const put = (mark: Mark, index: number, into: Into): void => {
    entities.push(...markTags(mark, index, into));
  };
  for (const { scene, shift } of placed) {
    const place = ([x, y]: Point): Point => [x + shift[0], y + shift[1]];
    const into: Into = { handles, owner: model, scale: scene.scale, place };
    let index = 0;
    for (const item of scene.items) {
      const marks = drawList({ items: [item], scale: scene.scale }, reader);
      if (item.kind === "dimension" && item.style === "chain" && marks.length > 0) {
        const style = styleName(scene.scale);
        const made = chainDimensions(item, { reader, style, first: index, named: held.length, into });
        entities.push(...made.tags);
        for (const picture of made.pictures) {
          const record = handles.next();
          held.push({ record, picture, into: { ...into, owner: record } });
        }
      } else for (const [at, mark] of marks.entries()) put(mark, index + at, into);
      index += marks.length;
    }
    if (scenes.length > 1) {
      const mark = captionOf(scene, reader);
      if (mark) put(mark, index, into);
    }
  }
  const blockTags = blocks(handles, held, [model, paper]);
  for (const tags of [entities, blockTags]) {
    for (const [code, value] of tags) if (code === 8) layers.add(String(value));
  }
  const bounds = around(placed);
  const body = [
    ...tables({
      handles,
      layers: [...layers].sort(),
      styles: [...new Set(scenes.map(({ scale }) => scale))].map((scale) => ({
        name: styleName(scale),
        timesSmaller: 1 / scale,
      })),
      records: [
        { name: "*Model_Space", handle: model },
        { name: "*Paper_Space", handle: paper },
        ...held.map(({ record, picture }) => ({ name: picture.name, handle: record })),
      ],
      bounds,
    }),
    ...blockTags,
    ...section("ENTITIES", entities),
    ...objects(handles),
  ];
  const timesSmaller = 1 / (scenes[0]?.scale ?? 1);
  const text = dxfText([...header({ bounds, seed: handles.next(), timesSmaller }), ...body, [0, "EOF"]]);
  return utf8(text);
}

function styleName(scale: number): string {
  return `SCALE-1-${Number((1 / scale).toFixed(3))}`.replace(".", "_");
}

interface Placed {
  readonly scene: Scene;
  readonly shift: Point;
}

/** Feet of the views on one line; a single view stays where its own frame has it. */
function sideBySide(scenes: readonly Scene[]): Placed[] {
  if (scenes.length === 1) return scenes.map((scene) => ({ scene, shift: [0, 0] }));
  let left = 0;
  return scenes.map((scene) => {
    const { x, y } = scene.bounds;
    const shift: Point = [left - x[0], -y[0]];
    left += x[1] - x[0] + APART / Math.max(...scenes.map(({ scale }) => scale));
    return { scene, shift };
  });
}

function around(placed: readonly Placed[]): Rect {
  const boxes = placed.map(({ scene: { bounds }, shift }) => ({
    x: bounds.x.map((at) => at + shift[0]),
    y: bounds.y.map((at) => at + shift[1]),
  }));
  const span = (axis: "x" | "y"): readonly [number, number] => [
    Math.min(...boxes.map((box) => box[axis][0] as number)),
    Math.max(...boxes.map((box) => box[axis][1] as number)),
  ];
  return { x: span("x"), y: span("y") };
}

function captionOf(scene: Scene, reader: Reader): Mark | undefined {
  const layer = layerName("FRAME", "T");
  const item: Item = {
    kind: "text",
    layer,
    at: [scene.bounds.x[0], scene.bounds.y[1] + CAPTION.over / scene.scale],
    text: say(scene.title, reader),
    height: CAPTION.height,
  };
  const [shape] = itemShapes(item, { scale: scene.scale, reader });
  return shape && { ...shape, layer, from: "text" };
}

/** Chains of dimensions: an entity for each stretch, its picture a block of the same marks as on paper. */

import { dimensionMarks } from "../../scene/dimension.ts";
import type { DimensionItem, SceneText } from "../../scene/model.ts";
import { type Mark, type Shape, sayText } from "../../scene/shapes.ts";
import type { Reader } from "../../text/say.ts";
import { head, type Into, markTags } from "./entities.ts";
import { at, plain, type Tag } from "./tags.ts";

/** A picture that a dimension stands for, to be written as a block. */
export interface Picture {
  readonly name: string;
  readonly entities: (into: Into) => Tag[];
}

export interface Dimensions {
  readonly tags: readonly Tag[];
  readonly pictures: readonly Picture[];
}

/** @param first number of the item's first mark in the drawing @param named how many pictures there are already */
export function chainDimensions(
  item: DimensionItem,
  {
    reader,
    style,
    first,
    named,
    into,
  }: { reader: Reader; style: string; first: number; named: number; into: Into },
): Dimensions {
  const context = { scale: into.scale, reader };
  const said = dimensionMarks(item, context).filter((shape) => shape.shape === "text");
  const pictures: Picture[] = [];
  const tags: Tag[] = [];
  let text = 0;
  for (let i = 0; i + 1 < item.points.length; i++) {
    if (item.skip?.includes(i)) continue;
    const label = item.labels?.[i];
    const own: readonly Shape[] = dimensionMarks(stretch(item, i, label), context).filter(
      ({ shape }) => shape !== "text",
    );
    // An empty figure is not drawn: it has no mark to stand for it.
    const figure = label !== undefined && sayText(label, reader) === "" ? undefined : said[text];
    const name = `*D${named + pictures.length + 1}`;
    const [from, to] = [item.points[i] as number, item.points[i + 1] as number];
    const point = (along: number, across: number) =>
      into.place(item.along === "x" ? [along, across] : [across, along]);
    const middle = figure?.shape === "text" ? into.place(figure.at) : point((from + to) / 2, item.at);
    tags.push(
      ...head("DIMENSION", item.layer, into),
      [100, "AcDbDimension"],
      [2, name],
      ...at(point(to, item.at)),
      ...at(middle, 11),
      // Rotated, its picture its own, the figure where it was put.
      [70, 32 + 128],
      [1, override(item, figure, { label, reader })],
      [3, style],
      [100, "AcDbAlignedDimension"],
      ...at(point(from, item.from ?? item.at), 13),
      ...at(point(to, item.from ?? item.at), 14),
      [50, item.along === "x" ? 0 : 90],
      [100, "AcDbRotatedDimension"],
    );
    const marks = [
      ...own.map((shape, at) => ({ shape, index: first + at })),
      ...(figure ? [{ shape: figure as Shape, index: first + 2 + text }] : []),
    ];
    if (figure) text += 1;
    pictures.push({
      name,
      entities: (inBlock) =>
        marks.flatMap(({ shape, index }) =>
          markTags(
            {
              ...shape,
              layer: item.layer,
              from: "dimension",
              ...(item.of !== undefined && { of: item.of }),
            } as Mark,
            index,
            inBlock,
          ),
        ),
    });
  }
  return { tags, pictures };
}

function stretch(item: DimensionItem, i: number, label: SceneText | undefined): DimensionItem {
  const { skip, labels, ...rest } = item;
  const points = item.points.slice(i, i + 2);
  return { ...rest, points, ...(label !== undefined && { labels: [label] }) };
}

/** Empty where the figure is the measure itself in millimetres, so that it follows the points. */
function override(
  item: DimensionItem,
  figure: Shape | undefined,
  { label, reader }: { label: SceneText | undefined; reader: Reader },
): string {
  if (label === undefined && reader.units === "mm") return "";
  return figure?.shape === "text" ? plain(figure.text) : item.style === "chain" ? " " : "";
}

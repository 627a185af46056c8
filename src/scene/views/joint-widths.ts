/** The widths of a face's joints, written at their ends where the face's edge leaves room for them. */
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import type { FaceLayout, Joint } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import { sameLength } from "../../units/length.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import { spread } from "../spread.ts";
import { LABEL_STEP, TEXT, tenth } from "./style.ts";

const SHOWN: readonly Joint["kind"][] = ["sheet joint", "junction", "corner"];
const LAYER = layerName("SHEET", "D");

interface Place {
  readonly at: number;
  readonly width: number;
  /** Where the joint ends, across. */
  readonly end: number;
}

/** Joints in line are one; the farthest end counts. */
function places(joints: readonly Joint[], along: "x" | "y"): Place[] {
  const found: Place[] = [];
  const across = along === "y" ? "x" : "y";
  for (const joint of joints) {
    if (joint.along !== along || !SHOWN.includes(joint.kind)) continue;
    const box = polygonBounds(joint.region);
    const at = (box[across][0] + box[across][1]) / 2;
    const end = box[along][1];
    const same = found.findIndex((one) => sameLength(one.at, at) && sameLength(one.width, joint.width));
    const other = found[same];
    if (other) found[same] = { ...other, end: Math.max(other.end, end) };
    else found.push({ at, width: joint.width, end });
  }
  return found.sort((a, b) => a.at - b.at);
}

/** Upright joints above the face, level ones at its right. */
export function jointWidthItems(
  face: FaceLayout,
  { extent, scale }: { extent: Rect; scale: number },
): Item[] {
  const paper = 1 / scale;
  const upright = places(face.joints, "y");
  const level = places(face.joints, "x");
  const xs = spread(
    upright.map(({ at }) => at),
    { spacing: LABEL_STEP * paper },
  );
  const ys = spread(
    level.map(({ at }) => at),
    { spacing: LABEL_STEP * paper },
  );
  const label = (width: number) => message("drawing.joint", { width: tenth(width) });
  return [
    ...upright.flatMap(({ at, width, end }, i): Item[] => {
      const x = xs[i] as number;
      const foot = extent.y[1] + 4 * paper;
      return [
        {
          kind: "polyline",
          layer: LAYER,
          line: "leader",
          points: [
            [at, end],
            [at, extent.y[1] + 1 * paper],
            [x, foot],
          ],
        },
        {
          kind: "text",
          layer: LAYER,
          at: [x + (TEXT / 2) * paper, foot + 1 * paper],
          text: label(width),
          height: TEXT,
          angleDeg: 90,
        },
      ];
    }),
    ...level.flatMap(({ at, width, end }, i): Item[] => {
      const y = ys[i] as number;
      const foot = extent.x[1] + 4 * paper;
      return [
        {
          kind: "polyline",
          layer: LAYER,
          line: "leader",
          points: [
            [end, at],
            [extent.x[1] + 1 * paper, at],
            [foot, y],
          ],
        },
        {
          kind: "text",
          layer: LAYER,
          at: [foot + 1 * paper, y],
          text: label(width),
          height: TEXT,
          baseline: "middle",
          plate: "paper",
        },
      ];
    }),
  ];
}

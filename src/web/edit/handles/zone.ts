/** The sides of a zone in the hand: what they meet goes with them. */
import type { Design } from "../../../design.ts";
import type { Point } from "../../../geometry/point.ts";
import type { Ref } from "../../../project/editing/change.ts";
import {
  axisOf,
  freeSides,
  moveZoneSide,
  type Side,
  zoneAt,
  zoneBox,
} from "../../../project/editing/zones.ts";
import { message } from "../../../text/message.ts";
import { dragged, zoneLines } from "../snap.ts";
import { type Handle, sourceOf, type Taken } from "./handle.ts";

export function zoneHandle(design: Design, document: unknown, ref: Ref): Handle | undefined {
  const source = sourceOf(design, document);
  const at = zoneAt(source, ref);
  if (!at) return undefined;
  const box = zoneBox(at.face, at.zone);
  const placeOf = (side: Side): number => box[axisOf(side)][side === "left" || side === "bottom" ? 0 : 1];
  const held = (side: Side): Taken => {
    const axis = axisOf(side);
    const from = placeOf(side);
    return {
      lines: zoneLines(design, ref.face),
      back: moveZoneSide(source, ref, side, from)?.operations ?? [],
      to(by, snapping) {
        const line = { x: [from, from], y: [from, from] } as const;
        const grip = axis === "x" ? ({ x: "both", y: "none" } as const) : ({ x: "none", y: "both" } as const);
        const { rect, met } = dragged(line, { grip, by, snapping });
        const to = rect[axis][0];
        return {
          ghost: { kind: "line", face: ref.face, axis, at: to, met },
          change: moveZoneSide(source, ref, side, to),
        };
      },
    };
  };
  const sides = freeSides(at.zone);
  return {
    face: ref.face,
    name: `zone ${ref.id}`,
    take(point: Point, near) {
      const side = sides.find((one) => {
        const axis = axisOf(one);
        const [along, across] = axis === "x" ? point : [point[1], point[0]];
        const [low, high] = box[axis === "x" ? "y" : "x"];
        return Math.abs(along - placeOf(one)) <= near && across >= low - near && across <= high + near;
      });
      return side && held(side);
    },
    parts: sides.map((side) => {
      const place = placeOf(side);
      const [across, up] = [(box.x[0] + box.x[1]) / 2, (box.y[0] + box.y[1]) / 2];
      return {
        name: message(`page.edit.side-${side}`),
        taken: held(side),
        ...(axisOf(side) === "x"
          ? { at: { x: place }, mark: [place, up] as const }
          : { at: { y: place }, mark: [across, place] as const }),
      };
    }),
  };
}

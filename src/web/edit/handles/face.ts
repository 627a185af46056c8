/** The corners of a face's outline in the hand: those at its ends go up and down, those between go anywhere. */
import type { Design } from "../../../design.ts";
import { distance } from "../../../geometry/point.ts";
import { polygonBounds } from "../../../geometry/polygon.ts";
import { moveOutlinePoint } from "../../../project/editing/faces.ts";
import { faceById } from "../../../project/lookup.ts";
import { message } from "../../../text/message.ts";
import { dragged, zoneLines } from "../snap.ts";
import { asItWas, type Handle, sourceOf, type Taken } from "./handle.ts";

export function faceHandle(design: Design, document: unknown, id: string): Handle | undefined {
  const face = faceById(design.project, id);
  if (!face) return undefined;
  const source = sourceOf(design, document);
  const path = `/faces/${design.project.faces.indexOf(face)}`;
  const ends = polygonBounds(face.outline).x;
  const layout = design.facade.faces.find((one) => one.id === id);
  const drawn = layout ? polygonBounds(layout.outline).x : ends;
  const held = (index: number): Taken | undefined => {
    const corner = face.outline[index];
    if (!corner) return undefined;
    const [x, y] = corner;
    const grip = { x: ends.includes(x) ? "none" : "both", y: "both" } as const;
    return {
      lines: zoneLines(design, id),
      back: asItWas(document, [`${path}/outline`, `${path}/zones`]),
      to(by, snapping) {
        const { rect, met } = dragged({ x: [x, x], y: [y, y] }, { grip, by, snapping });
        const to = [rect.x[0], rect.y[0]] as const;
        return {
          ghost: {
            kind: "outline",
            face: id,
            met,
            outline: face.outline.map((point, i) => (i === index ? to : point)),
          },
          change: moveOutlinePoint(source, id, index, to),
        };
      },
    };
  };
  return {
    face: id,
    name: "face",
    take(at, near) {
      // Cladding reaches round the corners of the building: an end of the face is as broad as that.
      const index = face.outline.findIndex(([x, y]) => {
        const reach = x === ends[0] ? drawn[0] : x === ends[1] ? drawn[1] : x;
        const nearest = Math.min(Math.max(at[0], Math.min(x, reach)), Math.max(x, reach));
        return distance([nearest, y], at) <= near;
      });
      return index < 0 ? undefined : held(index);
    },
    parts: face.outline.flatMap(([x, y], i) => {
      const taken = held(i);
      const name = message("page.edit.corner", { number: i + 1, of: face.outline.length });
      return taken ? [{ name, taken, at: ends.includes(x) ? { y } : { x, y }, mark: [x, y] as const }] : [];
    }),
  };
}

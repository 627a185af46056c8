/** A duct, a tap or a lamp box in the hand. */
import type { Design } from "../../../design.ts";
import { distance } from "../../../geometry/point.ts";
import type { Ref } from "../../../project/editing/change.ts";
import { placePenetration } from "../../../project/editing/penetrations.ts";
import { snap } from "../../../units/length.ts";
import { dragged, roundLines } from "../snap.ts";
import { type Handle, sourceOf, type Taken } from "./handle.ts";

export function penetrationHandle(design: Design, document: unknown, ref: Ref): Handle | undefined {
  const given = design.project.faces
    .find(({ id }) => id === ref.face)
    ?.penetrations?.find(({ id }) => id === ref.id);
  if (!given) return undefined;
  const source = sourceOf(design, document);
  const { x, y, diameter } = given;
  const r = diameter / 2;
  const whole: Taken = {
    lines: roundLines(design, ref),
    back: placePenetration(source, ref, { at: [x, y], diameter })?.operations ?? [],
    to(by, snapping) {
      // Its middle is what is measured and drawn to lines.
      const { rect, met } = dragged(
        { x: [x, x], y: [y, y] },
        { grip: { x: "both", y: "both" }, by, snapping },
      );
      const at = [rect.x[0], rect.y[0]] as const;
      return {
        ghost: { kind: "round", face: ref.face, met, at, diameter },
        change: placePenetration(source, ref, { at: [snap(at[0]), snap(at[1])], diameter }),
      };
    },
  };
  return {
    face: ref.face,
    name: `penetration ${ref.id}`,
    take: (at, near) => (distance(at, [x, y]) <= r + near ? whole : undefined),
    parts: [{ name: ref.id, taken: whole, at: { x, y } }],
  };
}

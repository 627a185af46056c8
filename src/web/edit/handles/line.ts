/** A control line of the project's own in the hand: it goes up and down. */
import type { Design } from "../../../design.ts";
import type { Ref } from "../../../project/editing/change.ts";
import { moveLine } from "../../../project/editing/lines.ts";
import { ownLineOf } from "../../picks/pick.ts";
import { dragged, zoneLines } from "../snap.ts";
import { type Handle, sourceOf, type Taken } from "./handle.ts";

export function lineHandle(design: Design, document: unknown, ref: Ref): Handle | undefined {
  const line = ownLineOf(design, ref);
  if (!line) return undefined;
  const source = sourceOf(design, document);
  const { y } = line;
  const lines = zoneLines(design, ref.face);
  const whole: Taken = {
    // It must not be held where it stands.
    lines: { x: [], y: lines.y.filter((at) => at !== y) },
    back: moveLine(source, ref, y)?.operations ?? [],
    to(by, snapping) {
      const { rect, met } = dragged(
        { x: [0, 0], y: [y, y] },
        { grip: { x: "none", y: "both" }, by, snapping },
      );
      const to = rect.y[0];
      return {
        ghost: { kind: "line", face: ref.face, axis: "y", at: to, met },
        change: moveLine(source, ref, to),
      };
    },
  };
  return {
    face: ref.face,
    name: `line ${ref.id}`,
    take: (at, near) => (Math.abs(at[1] - y) <= near ? whole : undefined),
    parts: [{ name: ref.id, taken: whole, at: { y } }],
  };
}

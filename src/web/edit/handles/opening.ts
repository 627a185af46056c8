/** An opening in the hand: the whole of it, a side, or a corner. */
import type { Design } from "../../../design.ts";
import type { Point } from "../../../geometry/point.ts";
import type { Rect } from "../../../geometry/rect.ts";
import { placeOpening } from "../../../project/editing/openings.ts";
import { moveOpenings } from "../../../project/editing/openings-together.ts";
import { snap } from "../../../units/length.ts";
import { openingsOf, type Pick } from "../../picks/pick.ts";
import { dragged, type Grip, snapLines } from "../snap.ts";
import { type Handle, sourceOf, type Taken } from "./handle.ts";

export function openingHandle(
  design: Design,
  document: unknown,
  ref: Extract<Pick, { kind: "opening" }>,
): Handle | undefined {
  const given = design.project.faces
    .find(({ id }) => id === ref.face)
    ?.openings.find(({ id }) => id === ref.id);
  if (!given) return undefined;
  const source = sourceOf(design, document);
  const rect: Rect = { x: given.x, y: given.y };
  const standsOnBase = given.toBase === true;
  const lines = snapLines(design, ref);
  const together = openingsOf(design, ref);
  const back = moveOpenings(source, together, [0, 0]).operations;
  const held = (grip: Grip): Taken => ({
    lines,
    back,
    to(by, snapping) {
      const kept: Grip = standsOnBase && grip.y !== "high" ? { ...grip, y: "none" } : grip;
      const moved = dragged(rect, { grip: kept, by, snapping });
      return {
        ghost: { kind: "rect", face: ref.face, ...moved },
        // A side is dragged of one alone; the whole takes along what is picked with it.
        change:
          grip.x === "both" && grip.y === "both" && together.length > 1
            ? moveOpenings(source, together, [
                snap(moved.rect.x[0] - rect.x[0]),
                snap(moved.rect.y[0] - rect.y[0]),
              ])
            : placeOpening(source, ref, moved.rect),
      };
    },
  });
  return {
    face: ref.face,
    name: `opening ${ref.id}`,
    take(at, near) {
      const grip = gripAt(rect, { at, near });
      return grip && held(grip);
    },
    parts: [
      {
        name: ref.id,
        taken: held({ x: "both", y: "both" }),
        at: standsOnBase ? { x: rect.x[0] } : { x: rect.x[0], y: rect.y[0] },
      },
    ],
  };
}

/** A side, a corner, or the whole; undefined beside it. */
function gripAt({ x, y }: Rect, { at, near }: { at: Point; near: number }): Grip | undefined {
  if (at[0] < x[0] - near || at[0] > x[1] + near || at[1] < y[0] - near || at[1] > y[1] + near)
    return undefined;
  const side = (value: number, [low, high]: readonly [number, number]): "low" | "high" | "none" =>
    Math.abs(value - low) <= near ? "low" : Math.abs(value - high) <= near ? "high" : "none";
  const grip = { x: side(at[0], x), y: side(at[1], y) };
  return grip.x === "none" && grip.y === "none" ? { x: "both", y: "both" } : grip;
}

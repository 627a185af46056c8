/** A joint of sheets in the hand: where it is put it is pinned. */
import type { Design } from "../../../design.ts";
import { polygonBounds } from "../../../geometry/polygon.ts";
import { type JointAxis, pinJoint } from "../../../project/editing/joints.ts";
import { zoneAt } from "../../../project/editing/zones.ts";
import type { Joint } from "../../../setout/facade.ts";
import { message } from "../../../text/message.ts";
import { snap } from "../../../units/length.ts";
import { jointIdAt } from "../../picks/joint-id.ts";
import { jointOf, type Pick } from "../../picks/pick.ts";
import { dragged, zoneLines } from "../snap.ts";
import { asItWas, type Handle, sourceOf, type Taken } from "./handle.ts";

export interface SheetJoint {
  readonly joint: Joint;
  readonly zone: string;
  readonly axis: JointAxis;
  /** As a pin would be written (mm). */
  readonly at: number;
}

/** What is picked, where it is a joint that a pin can hold: one between two sheets of a zone of the file. */
export function sheetJointOf(design: Design, pick: Pick): SheetJoint | undefined {
  const joint = jointOf(design, pick);
  const face = design.project.faces.find(({ id }) => id === pick.face);
  if (joint?.kind !== "sheet joint" || joint.zone === undefined || !face) return undefined;
  const { x, y } = polygonBounds(joint.region);
  return joint.along === "y"
    ? { joint, zone: joint.zone, axis: "x", at: snap((x[0] + x[1]) / 2) }
    : { joint, zone: joint.zone, axis: "y", at: y[0] };
}

export function jointHandle(
  design: Design,
  document: unknown,
  pick: Extract<Pick, { kind: "joint" }>,
): Handle | undefined {
  const source = sourceOf(design, document);
  const held = sheetJointOf(design, pick);
  const ref = { face: pick.face, id: held?.zone ?? "" };
  const zone = held && zoneAt(source, ref);
  if (!held || !zone) return undefined;
  const { axis, at, joint } = held;
  const box = polygonBounds(joint.region);
  const whole: Taken = {
    lines: zoneLines(design, pick.face),
    back: asItWas(document, [`${zone.path}/joints`]),
    to(by, snapping) {
      const grip = axis === "x" ? ({ x: "both", y: "none" } as const) : ({ x: "none", y: "both" } as const);
      const { rect, met } = dragged({ x: [at, at], y: [at, at] }, { grip, by, snapping });
      const to = rect[axis][0];
      return {
        ghost: { kind: "line", face: pick.face, axis, at: to, met },
        change: pinJoint(source, ref, { axis, from: at, to }),
        pick: { ...pick, id: jointIdAt(pick.id, axis === "x" ? snap(to - joint.width / 2) : to) },
      };
    },
  };
  return {
    face: pick.face,
    name: `joint ${ref.id}`,
    take: (point, near) =>
      point[0] >= box.x[0] - near &&
      point[0] <= box.x[1] + near &&
      point[1] >= box.y[0] - near &&
      point[1] <= box.y[1] + near
        ? whole
        : undefined,
    parts: [{ name: message("page.edit.joint"), taken: whole, at: { [axis]: at } }],
  };
}

/** Taking out what is picked; of a joint, its pin. */
import type { Design } from "../../design.ts";
import type { Change } from "../../project/editing/change.ts";
import { unpinJoint } from "../../project/editing/joints.ts";
import { removeOpening } from "../../project/editing/openings.ts";
import { removePenetration } from "../../project/editing/penetrations.ts";
import { removeZone, zoneAt } from "../../project/editing/zones.ts";
import type { Pick } from "../picks/pick.ts";
import { sourceOf } from "./handles/handle.ts";
import { sheetJointOf } from "./handles/joint.ts";

/** Undefined for what cannot be taken out. */
export function removalOf(design: Design, document: unknown, pick: Pick): Change | undefined {
  const source = sourceOf(design, document);
  switch (pick.kind) {
    case "opening":
      return removeOpening(source, pick);
    case "penetration":
      return removePenetration(source, pick);
    case "zone":
      return removeZone(source, pick);
    case "joint": {
      const held = sheetJointOf(design, pick);
      const ref = { face: pick.face, id: held?.zone ?? "" };
      const pinned = held && zoneAt(source, ref)?.zone.joints?.pinned?.[held.axis]?.includes(held.at);
      return pinned ? unpinJoint(source, ref, held) : undefined;
    }
    default:
      return undefined;
  }
}

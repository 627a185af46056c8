/** Taking out what is picked; of a joint, its pin. */
import type { Design } from "../../design.ts";
import type { Change, Ref, Source } from "../../project/editing/change.ts";
import { unpinJoint } from "../../project/editing/joints.ts";
import { removeLine } from "../../project/editing/lines.ts";
import { removeOpening } from "../../project/editing/openings.ts";
import { removeOpenings } from "../../project/editing/openings-together.ts";
import { removePenetration } from "../../project/editing/penetrations.ts";
import { removeZone, zoneAt } from "../../project/editing/zones.ts";
import { openingsOf, type Pick } from "../picks/pick.ts";
import { sourceOf } from "./handles/handle.ts";
import { sheetJointOf } from "./handles/joint.ts";

function removalOfOpenings(source: Source, refs: readonly Ref[]): Change | undefined {
  const [first, ...others] = refs;
  return first && others.length === 0 ? removeOpening(source, first) : removeOpenings(source, refs);
}

/** Undefined for what cannot be taken out. */
export function removalOf(design: Design, document: unknown, pick: Pick): Change | undefined {
  const source = sourceOf(design, document);
  switch (pick.kind) {
    case "opening":
      return removalOfOpenings(source, openingsOf(design, pick));
    case "penetration":
      return removePenetration(source, pick);
    case "line":
      return removeLine(source, pick);
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

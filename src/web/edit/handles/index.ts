/** The handle of whatever is picked. */
import type { Design } from "../../../design.ts";
import type { Pick } from "../../picks/pick.ts";
import { faceHandle } from "./face.ts";
import type { Handle } from "./handle.ts";
import { jointHandle } from "./joint.ts";
import { lineHandle } from "./line.ts";
import { openingHandle } from "./opening.ts";
import { penetrationHandle } from "./penetration.ts";
import { zoneHandle } from "./zone.ts";

export function handleOf(design: Design, document: unknown, pick: Pick): Handle | undefined {
  switch (pick.kind) {
    case "opening":
      return openingHandle(design, document, pick);
    case "penetration":
      return penetrationHandle(design, document, pick);
    case "zone":
      return zoneHandle(design, document, pick);
    case "line":
      return lineHandle(design, document, pick);
    case "joint":
      return jointHandle(design, document, pick);
    case "face":
      return faceHandle(design, document, pick.face);
    default:
      return undefined;
  }
}

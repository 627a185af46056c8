/** The handle of whatever is picked. */
import type { Design } from "../../../design.ts";
import type { Pick } from "../../picks/pick.ts";
import type { Handle } from "./handle.ts";
import { openingHandle } from "./opening.ts";
import { penetrationHandle } from "./penetration.ts";

export function handleOf(design: Design, document: unknown, pick: Pick): Handle | undefined {
  switch (pick.kind) {
    case "opening":
      return openingHandle(design, document, pick);
    case "penetration":
      return penetrationHandle(design, document, pick);
    default:
      return undefined;
  }
}

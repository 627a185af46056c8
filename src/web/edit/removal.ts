/** Taking out what is picked. */
import type { Design } from "../../design.ts";
import type { Change } from "../../project/editing/change.ts";
import { removeOpening } from "../../project/editing/openings.ts";
import { removePenetration } from "../../project/editing/penetrations.ts";
import type { Pick } from "../picks/pick.ts";
import { sourceOf } from "./handles/handle.ts";

/** Undefined for what cannot be taken out. */
export function removalOf(design: Design, document: unknown, pick: Pick): Change | undefined {
  const source = sourceOf(design, document);
  switch (pick.kind) {
    case "opening":
      return removeOpening(source, pick);
    case "penetration":
      return removePenetration(source, pick);
    default:
      return undefined;
  }
}

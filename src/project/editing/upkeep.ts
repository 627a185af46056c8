/** When a facade was handed over, and how often something is done to it. */
import type { PatchOperation } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import type { Project } from "../schema/project.ts";
import type { UpkeepTask } from "../schema/upkeep.ts";
import type { Change } from "./change.ts";

/** @param day ISO 8601 */
export function setHandover({ upkeep }: Project, day: string): Change {
  const operation: PatchOperation = upkeep
    ? { op: "add", path: "/upkeep/since", value: day }
    : { op: "add", path: "/upkeep", value: { since: day } };
  return { operations: [operation], says: message("project.edit.handover", { day }) };
}

/** @param months undefined for as often as is usual */
export function setInterval(
  { upkeep }: Project,
  { task, face }: { readonly task: UpkeepTask; readonly face: string },
  months: number | undefined,
): Change | undefined {
  const list = upkeep?.every;
  const at = list?.findIndex((one) => one.task === task && one.face === face) ?? -1;
  const path = "/upkeep/every";
  const says = message("project.edit.interval", { task: message(`upkeep.task.${task}`), face });
  if (months === undefined) {
    if (at < 0) return undefined;
    const gone = list?.length === 1 ? path : `${path}/${at}`;
    return { operations: [{ op: "remove", path: gone }], says };
  }
  const value = { task, face, months };
  if (at >= 0) {
    return { operations: [{ op: "replace", path: `${path}/${at}/months`, value: months }], says };
  }
  const operation: PatchOperation = list
    ? { op: "add", path: `${path}/-`, value }
    : upkeep
      ? { op: "add", path, value: [value] }
      : { op: "add", path: "/upkeep", value: { every: [value] } };
  return { operations: [operation], says };
}

/** How hard the cuts of a project are searched for. */
import { message } from "../../text/message.ts";
import type { Change, Source } from "./change.ts";

/** @param effort times the usual number of steps */
export function setEffort({ project }: Source, effort: number): Change {
  const { cutting } = project;
  return {
    operations: [
      cutting
        ? { op: "add", path: "/cutting/effort", value: effort }
        : { op: "add", path: "/cutting", value: { effort } },
    ],
    says: message("project.edit.effort", { effort: String(effort) }),
  };
}

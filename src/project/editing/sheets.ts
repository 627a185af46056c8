/** The sheet set in the project file: which sheets are issued in which order, and the record of an issue. */
import { message } from "../../text/message.ts";
import type { Project } from "../schema/project.ts";
import type { SheetKind } from "../schema/sheets.ts";
import type { Change, Source } from "./change.ts";

export function setSheetOrder({ project }: Source, order: readonly SheetKind[]): Change {
  return {
    operations: [
      project.sheets
        ? { op: "add", path: "/sheets/order", value: order }
        : { op: "add", path: "/sheets", value: { order } },
    ],
    says: message("project.edit.sheets"),
  };
}

/** @param issued the record with the new revision as its last */
export function recordIssue(issued: NonNullable<Project["issued"]>): Change {
  const revision = issued.revisions.at(-1)?.revision ?? "";
  return {
    operations: [{ op: "add", path: "/issued", value: issued }],
    says: message("project.edit.issue", { revision }),
  };
}

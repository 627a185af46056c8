/** The sheet set in the project file: which sheets are issued in which order, and the record of an issue. */
import type { PatchOperation } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import { valueAt } from "../pointer.ts";
import type { Project } from "../schema/project.ts";
import type { LabelSheet, SheetKind, SheetPaper } from "../schema/sheets.ts";
import { type Change, likeWritten, type Source } from "./change.ts";

export function setSheetOrder(source: Source, order: readonly SheetKind[]): Change {
  return { operations: [written(source, "order", order)], says: message("project.edit.sheets") };
}

/** Takes one sheet out of the set, or in again. */
export function leaveSheetOut(source: Source, name: string, out: boolean): Change {
  const { leaveOut = [] } = source.project.sheets ?? {};
  const others = leaveOut.filter((one) => one !== name);
  const operation =
    out || others.length > 0
      ? written(source, "leaveOut", out ? [...others, name] : others)
      : ({ op: "remove", path: "/sheets/leaveOut" } as const);
  return {
    operations: leaveOut.includes(name) === out ? [] : [operation],
    says: message(out ? "project.edit.sheet-out" : "project.edit.sheet-in", { name }),
  };
}

/** @param paper undefined for the usual one */
export function setSheetPaper(source: Source, paper: SheetPaper | undefined): Change {
  const says = message("project.edit.sheet-paper");
  if (paper !== undefined) return { operations: [written(source, "paper", paper)], says };
  const told = source.project.sheets?.paper !== undefined;
  return { operations: told ? [{ op: "remove", path: "/sheets/paper" }] : [], says };
}

export type LabelField = "columns" | "rows" | "width" | "height" | "left" | "top" | "gapX" | "gapY";

/**
 * One measure of the sheet of labels; a sheet that was not told is written whole.
 * @param held the sheet of labels as it stands
 * @param value mm; of `columns` and `rows` their count
 */
export function setLabelMeasure(source: Source, held: LabelSheet, field: LabelField, value: number): Change {
  const says = message("project.edit.labels", { field: message(`page.labels.${field}`) });
  if (!source.project.sheets?.labels)
    return { operations: [written(source, "labels", { ...held, [field]: value })], says };
  const own = likeWritten(value, valueAt(source.document, ["sheets", "labels", field]));
  return { operations: [{ op: "replace", path: `/sheets/labels/${field}`, value: own }], says };
}

/** @param labels undefined for the usual ones of the reader's units */
export function setLabelSheet(source: Source, labels: LabelSheet | undefined): Change {
  const says = message("project.edit.labels", { field: message("page.labels.paper") });
  if (labels) return { operations: [written(source, "labels", labels)], says };
  const told = source.project.sheets?.labels !== undefined;
  return { operations: told ? [{ op: "remove", path: "/sheets/labels" }] : [], says };
}

function written({ project }: Source, field: string, value: unknown): PatchOperation {
  return project.sheets
    ? { op: "add", path: `/sheets/${field}`, value }
    : { op: "add", path: "/sheets", value: { [field]: value } };
}

/** @param issued the record with the new revision as its last */
export function recordIssue(issued: NonNullable<Project["issued"]>): Change {
  const revision = issued.revisions.at(-1)?.revision ?? "";
  return {
    operations: [{ op: "add", path: "/issued", value: issued }],
    says: message("project.edit.issue", { revision }),
  };
}

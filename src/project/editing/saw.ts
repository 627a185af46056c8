/** What the saw takes, and what it can be asked. */
import { message } from "../../text/message.ts";
import { valueAt } from "../pointer.ts";
import { type Change, likeWritten, type Source } from "./change.ts";

export type SawField = "kerf" | "fence" | "lift" | "table-length" | "table-width";

/** @param value mm; `lift` in kg */
export function setSaw({ project, document }: Source, field: SawField, value: number): Change {
  const says = message("project.edit.saw", { field: message(`page.saw.${field}`) });
  const saw = ["stock", "saw"];
  const written = (key: readonly string[]): number | string =>
    likeWritten(value, valueAt(document, [...saw, ...key]));
  if (field !== "table-length" && field !== "table-width") {
    const own = field === "lift" ? value : written([field]);
    return { operations: [{ op: "add", path: `/stock/saw/${field}`, value: own }], says };
  }
  const side = field === "table-length" ? "length" : "width";
  if (project.stock.saw.table) {
    const operation = {
      op: "replace" as const,
      path: `/stock/saw/table/${side}`,
      value: written(["table", side]),
    };
    return { operations: [operation], says };
  }
  // Of a table that was not told, the other side is as long until it is typed.
  return {
    operations: [{ op: "add", path: "/stock/saw/table", value: { length: value, width: value } }],
    says,
  };
}

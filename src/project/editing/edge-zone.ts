/** The edge zone of a sheets' data sheet: along outside corners and free ends, where wind pulls hardest. */
import { message } from "../../text/message.ts";
import { valueAt } from "../pointer.ts";
import { type Change, likeWritten, type Source } from "./change.ts";

/** The zone as wide as told; of no width it goes out of the file. Put in anew, screws stand as elsewhere until they are told. */
export function widenEdgeZone(source: Source, cladding: string, width: number): Change | undefined {
  const at = sheetsAt(source, cladding);
  if (!at || (width <= 0 && !at.zone)) return undefined;
  const says = message("project.edit.edge-zone", { cladding, width });
  if (width <= 0) return { says, operations: [{ op: "remove", path: at.path }] };
  const written = at.written("width");
  if (at.zone)
    return {
      says,
      operations: [{ op: "replace", path: `${at.path}/width`, value: likeWritten(width, written) }],
    };
  const { fixingSpacing } = at.sheets.dataSheet;
  return {
    says,
    operations: [{ op: "add", path: at.path, value: { width, fixingSpacing: [...fixingSpacing] } }],
  };
}

/** The greatest spacing of screws in the zone; the least gives way to it. */
export function spaceEdgeZone(source: Source, cladding: string, most: number): Change | undefined {
  const at = sheetsAt(source, cladding);
  if (!at?.zone || most <= 0) return undefined;
  const path = `${at.path}/fixingSpacing`;
  const [least] = at.zone.fixingSpacing;
  return {
    says: message("project.edit.edge-spacing", { cladding, most }),
    operations: [
      ...(least > most ? [{ op: "replace" as const, path: `${path}/0`, value: most }] : []),
      { op: "replace", path: `${path}/1`, value: likeWritten(most, at.written("fixingSpacing", 1)) },
    ],
  };
}

function sheetsAt({ project, document }: Source, id: string) {
  const index = project.claddings.findIndex((one) => one.id === id);
  const sheets = project.claddings[index];
  if (sheets?.kind !== "sheets") return undefined;
  const place = ["claddings", index, "dataSheet", "edgeZone"];
  return {
    sheets,
    path: `/${place.join("/")}`,
    zone: sheets.dataSheet.edgeZone,
    written: (...steps: (string | number)[]): unknown => valueAt(document, [...place, ...steps]),
  };
}

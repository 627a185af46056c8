/** Which boards of a zone are to look alike. */
import { message } from "../../text/message.ts";
import type { Project, Zone } from "../schema/project.ts";
import type { Change, Ref, Source } from "./change.ts";
import { zoneAt } from "./zones.ts";

export const ALIKE = ["face", "course", "any"] as const;

export type Alike = (typeof ALIKE)[number];

/** Only boards of a pile differ in look before they are cut. */
export function takesFromPile({ claddings, pile }: Project, zone: Zone): boolean {
  return pile !== undefined && claddings.some(({ id, kind }) => id === zone.cladding && kind === "boards");
}

/** @returns undefined where there is no such zone */
export function keepAlike(source: Source, ref: Ref, alike: Alike): Change | undefined {
  const at = zoneAt(source, ref);
  return (
    at && {
      operations: [{ op: "add", path: `${at.path}/alike`, value: alike }],
      says: message("project.edit.alike", { zone: ref.id, face: ref.face }),
    }
  );
}

/** How laying again is bounded and weighed, typed: what joints and clearances may take, and what a re-cut costs. */
import { message } from "../../text/message.ts";
import { valueAt } from "../pointer.ts";
import type { AsBuilt } from "../schema/as-built.ts";
import { type Change, likeWritten, type Source } from "./change.ts";

export const BANDS = ["joint", "clearance"] as const;
export type BandName = (typeof BANDS)[number];

export const WEIGHTS = ["trimCut", "remakeCut", "trimFinished", "remakeFinished"] as const;
export type WeightName = (typeof WEIGHTS)[number];

/** The most that the file takes of a weight. */
export const MOST_WEIGHT = 1000;

/** How far a joint or a clearance may be from what it was set out to (mm, not less than nothing). */
export function setBand({ project, document }: Source, name: BandName, mm: number): Change {
  const old = valueAt(document, ["asBuilt", "within", name, "value"]);
  const value = { ...project.asBuilt?.within?.[name], value: likeWritten(mm, old), basis: "given" };
  return {
    operations: within(project.asBuilt, "within", { name, value }),
    says: message("project.edit.laying", { field: message(`project.edit.laying.${name}`) }),
  };
}

/** What trimming a piece or making it again costs, by its stage: a whole number of 0 to 1000, against the others. */
export function setWeight({ project }: Source, name: WeightName, value: number): Change {
  return {
    operations: within(project.asBuilt, "weights", { name, value }),
    says: message("project.edit.laying", { field: message(`project.edit.laying.${name}`) }),
  };
}

/** The group that a figure stands in is made where the file has none yet. */
function within(
  asBuilt: AsBuilt | undefined,
  group: "within" | "weights",
  { name, value }: { readonly name: string; readonly value: unknown },
): Change["operations"] {
  if (!asBuilt) return [{ op: "add", path: "/asBuilt", value: { [group]: { [name]: value } } }];
  if (!asBuilt[group]) return [{ op: "add", path: `/asBuilt/${group}`, value: { [name]: value } }];
  return [{ op: "add", path: `/asBuilt/${group}/${name}`, value }];
}

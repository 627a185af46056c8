/** The most that boards, sheets and battens may sag in wind. */
import type { Basis } from "../../findings/finding.ts";
import type { FacelessProject } from "../context.ts";
import type { ZoneStudy } from "./study.ts";

export type Part = "skin" | "carriers";

export interface SagLimit {
  /** The span over this. */
  readonly over: number;
  readonly basis: Basis;
}

/** The file's own limit before the code's; undefined where neither gives one. */
export function sagLimit(
  { view, structure }: ZoneStudy,
  { limits }: FacelessProject,
  part: Part,
): SagLimit | undefined {
  const own = limits.sagSpanOver?.[part === "carriers" ? "battens" : view.cladding.kind];
  if (own) return { over: own.value, basis: own.basis };
  const { sagSpanOver } = structure;
  return sagSpanOver && { over: sagSpanOver.value, basis: sagSpanOver.basis };
}

/** Findings that someone answers for: a waiver names the rule and, if it should not hold everywhere, the place. */
import type { Finding } from "../findings/finding.ts";
import type { Project } from "./schema/project.ts";

export type Waiver = NonNullable<Project["waivers"]>[number];

/**
 * The waiver that covers a finding. Its `where` is a face, a zone or opening as `face/zone`, the mark of a piece, or a path
 * of the project file; without it the rule is waived everywhere.
 */
export function waiverOf(finding: Finding, waivers: readonly Waiver[] = []): Waiver | undefined {
  return waivers.find(
    ({ code, where }) => code === finding.code && (where === undefined || places(finding).includes(where)),
  );
}

function places({ where }: Finding): (string | undefined)[] {
  const { path, face, zone, opening, marks = [] } = where;
  const inFace = [zone, opening].flatMap((id) =>
    id === undefined || face === undefined ? [] : [`${face}/${id}`],
  );
  return [path, face, ...inFace, ...marks];
}

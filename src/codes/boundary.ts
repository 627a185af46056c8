/**
 * Distance to a boundary within which published rules restrict combustible cladding. A caution, not a design: each code has
 * its own measure of the distance, exceptions and protections, and the local code decides.
 */
import type { Project } from "../project/schema/project.ts";
import { jurisdictionOf, type RuleValue } from "./rule-value.ts";

type BoundaryRule = Omit<RuleValue, "own">;

/** Values in millimetres; both seen at second hand only. */
const RULES: readonly BoundaryRule[] = [
  {
    id: "canada-exposing-face",
    jurisdiction: "canada",
    value: 1200,
    basis: "given",
    source: {
      kind: "document",
      document: "National Building Code of Canada, Division B, at second hand",
      clause: "9.10.15.5",
    },
  },
  {
    id: "england-external-wall",
    jurisdiction: "united-kingdom",
    value: 1000,
    basis: "given",
    source: {
      kind: "document",
      document: "Approved Document B, volume 1, at second hand",
      clause: "Table 10.1",
    },
  },
];

/** Common practice: twice the Canadian distance, so that two like walls facing each other are both looked at. */
export const BOUNDARY_CAUTION_MM = 2400;

export function boundaryRules(project: Project): RuleValue[] {
  const place = jurisdictionOf(project);
  return RULES.map((rule) => ({ ...rule, own: rule.jurisdiction === place }));
}

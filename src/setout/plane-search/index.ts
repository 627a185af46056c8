/** The plane search: which stacks of battens, packers and boards bring neighbouring faces into one plane. */
export type {
  BuildUpPlan,
  CladdingPlan,
  PassingCombination,
  PlaneCombination,
  PlaneCounts,
  PlaneMeeting,
  PlaneMerit,
  PlaneRule,
  PlaneSearchRequest,
  PlaneSearchResult,
  Planing,
  RuleSaid,
  ZonePlan,
} from "./model.ts";
export { planeGroups } from "./scope.ts";
export { searchPlanes } from "./search-planes.ts";

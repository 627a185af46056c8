/** The plane search: which stacks of battens, packers and boards bring neighbouring faces into one plane. */
export type {
  PassingCombination,
  PlaneCombination,
  PlaneSearchRequest,
  PlaneSearchResult,
  Planing,
  RuleSaid,
} from "./model.ts";
export { planeGroups } from "./scope.ts";
export { searchPlanes } from "./search-planes.ts";

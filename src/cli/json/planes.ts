/** A plane search in the published shape. */
import type {
  PassingCombination,
  PlaneCombination,
  PlaneSearchResult,
  RuleSaid,
} from "../../setout/plane-search/index.ts";
import { type Reader, say } from "../../text/say.ts";
import type { PlanesJson } from "../shapes/planes.ts";

type SearchJson = PlanesJson["searches"][number];
type CombinationJson = SearchJson["passing"][number];

export function planesJson(searches: readonly PlaneSearchResult[], reader: Reader): PlanesJson {
  return { schemaVersion: 1, searches: searches.map((search) => searchJson(search, reader)) };
}

function searchJson(search: PlaneSearchResult, reader: Reader): SearchJson {
  const { zones, followers, counts, passing, failing, leftOut, nearest } = search;
  return {
    zones: zones.map((ref) => ({ ...ref })),
    followers: followers.map((ref) => ({ ...ref })),
    counts: { ...counts },
    passing: passing.map((one) => combinationJson(one, reader)),
    failing: failing.map((one) => combinationJson(one, reader)),
    leftOut: { ...leftOut },
    ...(nearest && { nearest: combinationJson(nearest, reader) }),
  };
}

function combinationJson(one: PlaneCombination | PassingCombination, reader: Reader): CombinationJson {
  return {
    buildUps: one.buildUps.map((plan) => ({
      ...plan,
      battens: [...plan.battens],
      packers: [...plan.packers],
    })),
    claddings: one.claddings.map((plan) => ({ ...plan })),
    zones: one.zones.map((plan) => ({ ...plan, reveals: plan.reveals.map((reveal) => ({ ...reveal })) })),
    meetings: one.meetings.map((meeting) => ({
      ...meeting,
      left: { ...meeting.left },
      right: { ...meeting.right },
    })),
    merit: { ...one.merit },
    present: one.present,
    why: say(one.rank, reader),
    failed: one.failed.map((said) => ruleJson(said, reader)),
    attention: one.attention.map((said) => ruleJson(said, reader)),
    ...("edit" in one && { edit: one.edit.map((operation) => ({ ...operation })) }),
  };
}

function ruleJson(
  { rule, zones, says, demand, limit, unit }: RuleSaid,
  reader: Reader,
): CombinationJson["failed"][number] {
  return {
    rule,
    zones: zones.map((ref) => ({ ...ref })),
    says: say(says, reader),
    ...(demand !== undefined && { demand }),
    ...(limit !== undefined && { limit }),
    ...(unit && { unit }),
  };
}

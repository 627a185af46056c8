/**
 * The plane search: every combination of battens, packers and planing out of the stock whose faces meet and that keeps
 * cavity, screws, frames and lots, ranked; beside it those that meet and break a rule, each rule named with its numbers.
 * Exact and exhaustive: nothing is sampled, and what is ruled out unseen is ruled out by its step alone. The weight on
 * screws through insulation and the wind on all of it are for proof, once a combination is in the project.
 */
import type { PatchOperation } from "../../findings/finding.ts";
import { snap } from "../../units/length.ts";
import { editBuildUp, editCladding } from "./edit.ts";
import { type Judge, type Judged, judgeOf, meetingsOf, refOf } from "./judge.ts";
import { buriedFrames, revealsOf } from "./judge-frames.ts";
import { choiceAt, countAll, eachMeeting, planeAt } from "./meetings.ts";
import { compareMerits, rankSaid } from "./merit.ts";
import type {
  PassingCombination,
  PlaneCombination,
  PlaneMerit,
  PlaneSearchRequest,
  PlaneSearchResult,
} from "./model.ts";
import { moves, type Scope, scopeOf } from "./scope.ts";
import { shortlist } from "./shortlist.ts";

const SHOWN = { passing: 24, failing: 24 } as const;

export function searchPlanes(request: PlaneSearchRequest): PlaneSearchResult {
  const { project, demands, zones, planing, show = SHOWN } = request;
  const scope = scopeOf(project, zones, planing);
  const judge = judgeOf(scope, demands);
  const search = { scope, judge };
  const passing = shortlist(show.passing, byMerit);
  const failing = shortlist(show.failing, byFailures);
  const counts = { all: countAll(scope), meeting: 0, passing: 0, failing: 0, failingOne: 0 };
  eachMeeting(scope, 0, (combination) => {
    const judged = judge.judge(combination);
    counts.meeting += 1;
    counts[judged.failed === 0 ? "passing" : "failing"] += 1;
    counts.failingOne += judged.failed === 1 ? 1 : 0;
    (judged.failed === 0 ? passing : failing).add(judged);
  });
  const bestPassing = passing.best();
  const first = bestPassing[0]?.merit;
  const bestFailing = failing.best();
  const nearest = counts.passing === 0 ? nearestApart(search) : undefined;
  return {
    zones,
    followers: scope.zones.filter((zone) => moves(scope, zone) && !zone.asked).map(refOf),
    counts,
    passing: bestPassing.map((judged) => passed(search, judged, first)),
    failing: bestFailing.map((judged) => told(search, judged, first)),
    leftOut: {
      passing: counts.passing - bestPassing.length,
      failing: counts.failing - bestFailing.length,
    },
    ...(nearest && { nearest: told(search, nearest, first) }),
  };
}

interface Search {
  readonly scope: Scope;
  readonly judge: Judge;
}

function byMerit(a: Judged, b: Judged): number {
  return compareMerits(a.merit, b.merit);
}

function byFailures(a: Judged, b: Judged): number {
  return a.failed - b.failed || a.failures - b.failures || byMerit(a, b);
}

/** Wider than this no one speaks of one plane. */
const FARTHEST_MM = 64;

/** What comes nearest to one plane among the combinations that break no rule but that their faces stand apart. */
function nearestApart({ scope, judge }: Search): Judged | undefined {
  for (let wider = 1; wider <= FARTHEST_MM; wider *= 2) {
    const apart = shortlist(1, (a: Judged, b: Judged) => a.apart - b.apart || byMerit(a, b));
    eachMeeting(scope, wider, (combination) => {
      const judged = judge.judge(combination);
      const others = judged.said.some(
        ({ outcome, rule }) => outcome === "fail" && rule !== "meet" && rule !== "mitre",
      );
      if (!others) apart.add(judged);
    });
    const [found] = apart.best();
    if (found) return found;
  }
  return undefined;
}

function passed(search: Search, judged: Judged, first: PlaneMerit | undefined): PassingCombination {
  return { ...told(search, judged, first), edit: editOf(search, judged) };
}

function told({ scope, judge }: Search, judged: Judged, first: PlaneMerit | undefined): PlaneCombination {
  const { combination, merit, said } = judged;
  return {
    buildUps: scope.buildUps.flatMap(({ buildUp, varied }, at) => {
      if (!varied) return [];
      const { battens, packers } = choiceAt(scope, combination, at);
      const { batten, rail } = judge.buildUp(combination, at).screws;
      const screws = { battenScrew: batten, ...(rail && { railScrew: rail }) };
      return [{ buildUp: buildUp.id, battens: battens.map(({ id }) => id), packers, ...screws }];
    }),
    claddings: scope.claddings.flatMap(({ cladding, varied }, at) => {
      if (!varied) return [];
      const thickness = combination.thicknesses[at] ?? cladding.thickness;
      const screw = judge.claddingScrew(combination, at);
      return [{ cladding: cladding.id, planed: snap(cladding.thickness - thickness), thickness, screw }];
    }),
    zones: scope.zones.flatMap((zone, at) => {
      if (!zone.asked && !moves(scope, zone)) return [];
      const { backZ, cavity } = choiceAt(scope, combination, zone.buildUp);
      const faceZ = planeAt(scope, combination, at);
      return [{ ...refOf(zone), faceZ, backZ, cavity, reveals: revealsOf(zone, faceZ) }];
    }),
    meetings: meetingsOf(scope, combination),
    merit,
    present: merit.changes === 0,
    rank: rankSaid(merit, first),
    failed: said.filter(({ outcome }) => outcome === "fail"),
    attention: [
      ...said.filter(({ outcome }) => outcome === "attention"),
      ...scope.zones.flatMap((zone) =>
        moves(scope, zone) ? buriedFrames(zone, choiceAt(scope, combination, zone.buildUp).backZ) : [],
      ),
    ],
  };
}

function editOf({ scope, judge }: Search, { combination }: Judged): PatchOperation[] {
  const { project, buildUps, claddings } = scope;
  return [
    ...buildUps.flatMap(({ buildUp, varied, present }, at) => {
      if (!varied) return [];
      const { screws } = judge.buildUp(combination, at);
      return editBuildUp(project, buildUp, { choice: choiceAt(scope, combination, at), present, screws });
    }),
    ...claddings.flatMap(({ cladding, varied }, at) => {
      if (!varied) return [];
      const screw = judge.claddingScrew(combination, at);
      return editCladding(project, cladding, {
        thickness: combination.thicknesses[at] ?? cladding.thickness,
        screw,
      });
    }),
  ];
}

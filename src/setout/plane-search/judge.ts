/** Judges whole combinations; each part of one is judged once, however often it comes up. */
import type { Demands } from "../../codes/demands.ts";
import type { ZoneRef } from "../../project/lookup.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { editBuildUp } from "./edit.ts";
import { type BuildUpVerdict, judgeBuildUp } from "./judge-build-up.ts";
import { type CladdingVerdict, judgeCladding } from "./judge-cladding.ts";
import { proudFrames } from "./judge-frames.ts";
import { type Combination, choiceAt, planeAt } from "./meetings.ts";
import type { PlaneMeeting, PlaneMerit, PlaneRule, RuleSaid } from "./model.ts";
import { moves, type Scope, type ScopeZone } from "./scope.ts";
import { chosenScrew, type Held } from "./screws.ts";

export interface Judged {
  readonly combination: Combination;
  /** All that fails, and what else its build-ups and claddings deserve a look for; buried frames are told later. */
  readonly said: readonly RuleSaid[];
  /** Different rules broken, and how often any is broken. */
  readonly failed: number;
  readonly failures: number;
  /** By how much the worst step is over its limit; 0 where all faces meet. */
  readonly apart: number;
  readonly merit: PlaneMerit;
}

export interface Judge {
  readonly judge: (combination: Combination) => Judged;
  readonly buildUp: (combination: Combination, at: number) => BuildUpVerdict;
  readonly claddingScrew: (combination: Combination, at: number) => string;
}

/** A cavity deeper than this gains nothing (common practice: an inch; most rule sets ask 20 to 25 mm). */
const ENOUGH_CAVITY_MM = 25;

export function judgeOf(scope: Scope, demands: Demands): Judge {
  const { project, buildUps, claddings, zones } = scope;
  const moving = zones.flatMap((zone, at) => (moves(scope, zone) ? [{ zone, at }] : []));
  const variedBuildUps = placesOfVaried(buildUps);
  const variedCladdings = placesOfVaried(claddings);
  const priced = project.stock.battens.every(({ pricePerM }) => pricePerM !== undefined);
  const enough = Math.max(ENOUGH_CAVITY_MM, demands.cavityMinMm);
  const ofBuildUp = buildUpVerdicts(scope, demands);
  const ofCladding = claddingVerdicts(scope, demands);
  const screwOf = claddingScrews(scope);

  const judge = (combination: Combination): Judged => {
    const said: RuleSaid[] = [];
    let changes = 0;
    let packers = 0;
    let packing = 0;
    let cost = 0;
    let cavity = Number.POSITIVE_INFINITY;
    const battens = new Set<string>();
    for (const at of variedBuildUps) {
      const verdict = ofBuildUp(combination, at);
      said.push(...verdict.said);
      changes += verdict.changes;
      const choice = choiceAt(scope, combination, at);
      packers += choice.packers.length;
      packing = snap(packing + choice.packing);
      cavity = Math.min(cavity, choice.cavity);
      for (const { id, pricePerM = 0 } of choice.battens) {
        battens.add(id);
        cost += pricePerM;
      }
    }
    let broken = 0;
    let planing = 0;
    for (const at of variedCladdings) {
      const given = scope.claddings[at]?.cladding;
      const verdict = ofCladding(combination, at);
      const { screw, said: lacks } = screwOf(combination, at);
      said.push(...verdict.said, ...lacks);
      broken += verdict.broken;
      const off = Math.abs((given?.thickness ?? 0) - (combination.thicknesses[at] ?? 0));
      planing = snap(planing + off);
      changes += Number(screw !== given?.screw) + Number(off > 0);
    }
    let plane = 0;
    for (const { zone, at } of moving) {
      const faceZ = planeAt(scope, combination, at);
      plane = Math.max(plane, faceZ);
      if (zone.openings.length > 0) said.push(...proudFrames(zone, faceZ));
    }
    const { step, apart, said: steps } = stepsOf(scope, combination);
    said.push(...steps);
    return {
      combination,
      said,
      ...failuresIn(said),
      apart,
      merit: {
        broken,
        packers,
        planing,
        cavityShort: snap(Math.max(0, enough - cavity)),
        // A sum must not depend on the order of its parts.
        battenCost: priced ? Math.round(cost * 1e6) / 1e6 : 0,
        battens: battens.size,
        step,
        packing,
        changes,
        plane,
      },
    };
  };
  return { judge, buildUp: ofBuildUp, claddingScrew: (combination, at) => screwOf(combination, at).screw };
}

function failuresIn(said: readonly RuleSaid[]): Pick<Judged, "failed" | "failures"> {
  const rules: PlaneRule[] = [];
  let failures = 0;
  for (const { outcome, rule } of said) {
    if (outcome !== "fail") continue;
    failures += 1;
    if (!rules.includes(rule)) rules.push(rule);
  }
  return { failed: rules.length, failures };
}

function placesOfVaried(things: readonly { readonly varied: boolean }[]): number[] {
  return things.flatMap(({ varied }, at) => (varied ? [at] : []));
}

export function refOf({ face, zone }: ScopeZone): ZoneRef {
  return { face, zone };
}

/** Works a value out the first time it is asked for. */
function held<Value>(map: Map<number | string, Value>, key: number | string, work: () => Value): Value {
  const known = map.get(key);
  if (known !== undefined) return known;
  const value = work();
  map.set(key, value);
  return value;
}

type Counted = BuildUpVerdict & { readonly changes: number };

function buildUpVerdicts(scope: Scope, demands: Demands): (combination: Combination, at: number) => Counted {
  const { project, buildUps, zones } = scope;
  const known = buildUps.map(() => new Map<number | string, Counted>());
  return (combination, at) =>
    held(known[at] as Map<number | string, Counted>, combination.choices[at] ?? 0, () => {
      const one = buildUps[at] as Scope["buildUps"][number];
      const choice = choiceAt(scope, combination, at);
      const on = zones.filter(({ buildUp }) => buildUp === at).map(refOf);
      const verdict = judgeBuildUp({ project, demands }, one, choice, on);
      const edit = editBuildUp(project, one.buildUp, {
        choice,
        present: one.present,
        screws: verdict.screws,
      });
      return { ...verdict, changes: edit.length };
    });
}

function claddingVerdicts(
  scope: Scope,
  demands: Demands,
): (combination: Combination, at: number) => CladdingVerdict {
  const known = scope.claddings.map(() => new Map<number | string, CladdingVerdict>());
  return ({ thicknesses }, at) => {
    const thickness = thicknesses[at] ?? 0;
    return held(known[at] as Map<number | string, CladdingVerdict>, thickness, () => {
      const { cladding } = scope.claddings[at] as Scope["claddings"][number];
      return judgeCladding({ project: scope.project, demands }, cladding, thickness);
    });
  };
}

type Chosen = ReturnType<typeof chosenScrew>;

/** The screw of a cladding has to suit in every zone of the building that has it, one entry for each build-up. */
function claddingScrews(scope: Scope): (combination: Combination, at: number) => Chosen {
  const behind = scope.claddings.map((_, at) => {
    const zones = scope.zones.filter(({ cladding }) => cladding === at);
    return [...new Set(zones.map(({ buildUp }) => buildUp))].map((buildUp) => ({
      buildUp,
      varied: scope.buildUps[buildUp]?.varied === true,
      zones: zones.filter((zone) => zone.buildUp === buildUp).map(refOf),
    }));
  });
  const known = new Map<number | string, Chosen>();
  return (combination, at) => {
    const { cladding } = scope.claddings[at] as Scope["claddings"][number];
    const thickness = combination.thicknesses[at] ?? cladding.thickness;
    const places = behind[at] ?? [];
    let key = `${at} ${thickness}`;
    for (const { buildUp } of places) {
      const { inFront, holder } = choiceAt(scope, combination, buildUp);
      key += ` ${inFront} ${holder}`;
    }
    return held(known, key, () =>
      chosenScrew(scope.project, {
        rule: "cladding-screw",
        use: cladding.kind === "boards" ? "board" : "sheet",
        present: cladding.screw,
        limit: scope.project.limits.screwBite.cladding.value,
        held: places.map(({ buildUp, varied, zones }): Held => {
          const { inFront, holder } = choiceAt(scope, combination, buildUp);
          const still = !varied && thickness === cladding.thickness;
          return {
            zones,
            passes: snap(thickness + inFront),
            holder,
            ...(still && { keeps: cladding.screw }),
          };
        }),
      }),
    );
  };
}

export function meetingsOf(scope: Scope, combination: Combination): PlaneMeeting[] {
  return scope.meetings.map(({ kind, left, right, limit }) => ({
    kind,
    left: refOf(scope.zones[left] as ScopeZone),
    right: refOf(scope.zones[right] as ScopeZone),
    step: snap(planeAt(scope, combination, right) - planeAt(scope, combination, left)),
    limit,
  }));
}

/** The largest step, and a sentence for each that is over its limit. */
function stepsOf(
  scope: Scope,
  combination: Combination,
): { readonly step: number; readonly apart: number; readonly said: readonly RuleSaid[] } {
  let largest = 0;
  let apart = 0;
  const said: RuleSaid[] = [];
  for (const { kind, left, right, limit } of scope.meetings) {
    const step = Math.abs(snap(planeAt(scope, combination, right) - planeAt(scope, combination, left)));
    largest = Math.max(largest, step);
    if (step <= limit) continue;
    apart = Math.max(apart, step - limit);
    const rule = kind === "open mitre" ? "mitre" : "meet";
    const between = [left, right].map((zone) => refOf(scope.zones[zone] as ScopeZone));
    const [a = "", b = ""] = between.map(({ face, zone }) => `${face} / ${zone}`);
    const says = message(`planes.${rule}`, { left: a, right: b, step, limit });
    said.push({ rule, outcome: "fail", zones: between, demand: step, limit, unit: "mm", says });
  }
  return { step: largest, apart, said };
}

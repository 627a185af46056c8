/** What a plane search may change, what changes with it, and which faces meet there. */
import { faceFrame, turnDeg } from "../../geometry/frame.ts";
import { distance } from "../../geometry/point.ts";
import type { ZoneRef } from "../../project/lookup.ts";
import type { BuildUp, Cladding, Face, Project, Zone } from "../../project/schema/project.ts";
import { snap } from "../../units/length.ts";
import { MEETS_WITHIN_MM } from "../corners.ts";
import { buildUpOf, claddingOf } from "../resolve.ts";
import { type Choice, choicesOf, combinations, presentChoice } from "./choices.ts";
import type { Planing } from "./model.ts";

export interface Opening {
  readonly id: string;
  readonly projection: number | undefined;
  /** Whether the file asks for returns in its reveal. */
  readonly lined: boolean;
}

/** A zone in the search, by the places of its build-up and cladding in the lists of the scope. */
export interface ScopeZone extends ZoneRef {
  readonly buildUp: number;
  readonly cladding: number;
  readonly openings: readonly Opening[];
  /** Asked for, and not only changing along. */
  readonly asked: boolean;
}

export interface ScopeBuildUp {
  readonly buildUp: BuildUp;
  readonly varied: boolean;
  /** One, as it stands, where it is not varied. */
  readonly choices: readonly Choice[];
  readonly present: Choice;
}

export interface ScopeCladding {
  readonly cladding: Cladding;
  /** Of a zone asked for: its screw may change, and boards may be planed. */
  readonly varied: boolean;
  /** Thicknesses tried, the given one first. */
  readonly thicknesses: readonly number[];
}

/** Two zones whose faces must meet, by their places in the list. */
export interface Meeting {
  readonly kind: "side by side" | "open mitre";
  readonly left: number;
  readonly right: number;
  readonly limit: number;
}

export interface Scope {
  readonly project: Project;
  readonly zones: readonly ScopeZone[];
  readonly buildUps: readonly ScopeBuildUp[];
  readonly claddings: readonly ScopeCladding[];
  readonly meetings: readonly Meeting[];
}

export function scopeOf(project: Project, asked: readonly ZoneRef[], planing: Planing | undefined): Scope {
  const placed = project.faces.flatMap((face) => face.zones.map((zone) => ({ face, zone })));
  const isAsked = (one: { face: Face; zone: Zone }): boolean =>
    asked.some(({ face, zone }) => face === one.face.id && zone === one.zone.id);
  const among = placed.filter(isAsked);
  const variedBuildUps = new Set(among.map(({ zone }) => zone.buildUp));
  const variedCladdings = new Set(among.map(({ zone }) => zone.cladding));
  const buildUps = unique(placed.map(({ zone }) => buildUpOf(project, zone))).map((buildUp): ScopeBuildUp => {
    const present = presentChoice(project, buildUp);
    const varied = variedBuildUps.has(buildUp.id);
    return { buildUp, varied, present, choices: varied ? choicesOf(project, buildUp) : [present] };
  });
  const claddings = unique(placed.map(({ zone }) => claddingOf(project, zone))).map(
    (cladding): ScopeCladding => {
      const varied = variedCladdings.has(cladding.id);
      return { cladding, varied, thicknesses: thicknessesOf(cladding, varied ? planing : undefined) };
    },
  );
  const zones = placed.map(
    (one): ScopeZone => ({
      face: one.face.id,
      zone: one.zone.id,
      buildUp: buildUps.findIndex(({ buildUp }) => buildUp.id === one.zone.buildUp),
      cladding: claddings.findIndex(({ cladding }) => cladding.id === one.zone.cladding),
      openings: openingsBeside(one.face, one.zone),
      asked: isAsked(one),
    }),
  );
  const scope = { project, zones, buildUps, claddings, meetings: [] };
  return { ...scope, meetings: meetingsOf(scope) };
}

function unique<Thing extends { readonly id: string }>(things: readonly Thing[]): Thing[] {
  return [...new Map(things.map((thing) => [thing.id, thing])).values()];
}

function thicknessesOf(cladding: Cladding, planing: Planing | undefined): number[] {
  const { thickness } = cladding;
  if (cladding.kind !== "boards" || !planing || !(planing.step > 0)) return [thickness];
  const { least = 0, most, step } = planing;
  const steps: number[] = [];
  for (let k = Math.ceil(Math.min(least, 0) / step - 1e-9); k * step <= most + 1e-9; k++)
    if (k) steps.push(k);
  return [thickness, ...steps.map((k) => snap(thickness - k * step)).filter((left) => left > 0)];
}

/** Windows and doors that the zone reaches, with how far their frames stand out. */
function openingsBeside(face: Face, { x, y }: Zone): Opening[] {
  const from = x[0] === "left end" ? Number.NEGATIVE_INFINITY : x[0];
  const to = x[1] === "right end" ? Number.POSITIVE_INFINITY : x[1];
  return face.openings
    .filter(({ kind }) => kind === "window" || kind === "door")
    .filter((one) => one.x[0] < to && one.x[1] > from && (!y || (one.y[0] < y[1] && one.y[1] > y[0])))
    .map(({ id, frameProjection, reveal }) => ({
      id,
      projection: frameProjection ?? face.frameProjection,
      lined: reveal !== undefined,
    }));
}

/** Whether a zone's plane can move in this search. */
export function moves(scope: Scope, { buildUp, cladding }: ScopeZone): boolean {
  return scope.buildUps[buildUp]?.varied === true || (scope.claddings[cladding]?.thicknesses.length ?? 0) > 1;
}

/**
 * Every meeting in the building that the search can touch. One that no asked zone takes part in only changes along: it
 * may stay as bad as it is, and get no worse.
 */
function meetingsOf(scope: Scope): Meeting[] {
  return pairs(scope.project).flatMap(({ kind, left, right }): Meeting[] => {
    const at = { left: placeOf(scope, left), right: placeOf(scope, right) };
    const a = scope.zones[at.left];
    const b = scope.zones[at.right];
    if (!a || !b || (!moves(scope, a) && !moves(scope, b))) return [];
    const limit = kind === "open mitre" ? 0 : scope.project.limits.facesMeetWithin.value;
    const now = Math.abs(snap(presentPlane(scope, b) - presentPlane(scope, a)));
    return [{ kind, ...at, limit: a.asked || b.asked ? limit : Math.max(limit, now) }];
  });
}

function placeOf({ zones }: Scope, { face, zone }: ZoneRef): number {
  return zones.findIndex((one) => one.face === face && one.zone === zone);
}

function presentPlane(scope: Scope, { buildUp, cladding }: ScopeZone): number {
  const back = scope.buildUps[buildUp]?.present.backZ ?? 0;
  return snap(back + (scope.claddings[cladding]?.cladding.thickness ?? 0));
}

type Pair = Pick<Meeting, "kind"> & { readonly left: ZoneRef; readonly right: ZoneRef };

function pairs(project: Project): Pair[] {
  const beside = project.faces.flatMap((face) => {
    const zones = leftToRight(face);
    return zones.slice(1).map((right, i): Pair => {
      const left = zones[i] as Zone;
      return {
        kind: "side by side",
        left: { face: face.id, zone: left.id },
        right: { face: face.id, zone: right.id },
      };
    });
  });
  return [...beside, ...mitres(project)];
}

function leftToRight(face: Face): Zone[] {
  const start = ({ x }: Zone): number => (x[0] === "left end" ? Number.NEGATIVE_INFINITY : x[0]);
  return [...face.zones].sort((a, b) => start(a) - start(b));
}

/** Off square by more than this a corner is mitred whatever it is called, as corners are laid out. */
const SQUARE_WITHIN_DEG = 5;

function mitres(project: Project): Pair[] {
  return project.faces.flatMap((left) => {
    const right = project.faces.find(
      (face) => face !== left && distance(left.plan.to, face.plan.from) <= MEETS_WITHIN_MM,
    );
    if (!right) return [];
    const spec = project.corners?.find((one) => one.left === left.id && one.right === right.id);
    const turn = Math.abs(turnDeg(faceFrame(left.plan), faceFrame(right.plan)));
    if (spec?.kind !== "open mitre" && Math.abs(turn - 90) <= SQUARE_WITHIN_DEG) return [];
    const [a, b] = [leftToRight(left).at(-1), leftToRight(right)[0]];
    if (!a || !b) return [];
    return [
      {
        kind: "open mitre" as const,
        left: { face: left.id, zone: a.id },
        right: { face: right.id, zone: b.id },
      },
    ];
  });
}

/** The groups of zones of a project whose faces meet, two zones or more in each. */
export function planeGroups(project: Project): ZoneRef[][] {
  const groups: ZoneRef[][] = [];
  const holding = (ref: ZoneRef): ZoneRef[] | undefined =>
    groups.find((group) => group.some(({ face, zone }) => face === ref.face && zone === ref.zone));
  for (const { left, right } of pairs(project)) {
    const a = holding(left);
    const b = holding(right);
    if (a && b && a !== b) {
      groups.splice(groups.indexOf(b), 1);
      a.push(...b);
    } else if (a && !b) a.push(right);
    else if (b && !a) b.push(left);
    else if (!a) groups.push([left, right]);
  }
  return groups;
}

/** Every set of thicknesses, one for each cladding of the scope. */
export function thicknessSets({ claddings }: Scope): number[][] {
  return combinations(claddings.map(({ thicknesses }) => thicknesses));
}

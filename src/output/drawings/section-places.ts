/**
 * Where each face is cut: an upright section of each zone, and level ones at a jamb, at junctions and at a corner; a soffit across. The
 * sheets of sections and the marks on the elevation both ask here.
 */
import { type Interval, intervalLength, subtractIntervals } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Project } from "../../project/schema/project.ts";
import { stretchesOf } from "../../scene/views/plan-cut.ts";
import type { SectionMark } from "../../scene/views/section-marks.ts";
import { sectionId } from "../../scene/views/vertical-section.ts";
import type { Facade, FaceLayout, ZoneLayout } from "../../setout/facade.ts";

export interface UprightCut extends SectionMark {
  readonly zone: ZoneLayout;
}

export interface LevelCut extends SectionMark {
  /** Along the face, mm: what the section shows. */
  readonly window: Interval;
  /** Whose build-up it shows. */
  readonly zone: string | undefined;
  readonly of: { readonly kind: "junction" | "corner" } | { readonly kind: "jamb"; readonly opening: string };
}

/** Id of the plan that shows where details are cut level, and the name of its sheet. */
export const KEY_PLAN = "key-plan";

/** The sheet that shows a face with its marks. */
export function elevationOf({ id }: Pick<FaceLayout, "id">): string {
  return `face-${id}`;
}

/** The face that the project says begins at the right end. */
export function nextOf(
  { id }: FaceLayout,
  { faces, corners }: { readonly faces: readonly FaceLayout[] } & Pick<Project, "corners">,
): FaceLayout | undefined {
  const right = corners?.find(({ left }) => left === id)?.right;
  return faces.find((one) => one.id === right);
}

/**
 * One in each zone, and one more where that goes through a recess down to the base, so that the wall is seen from its base up. Upright
 * cuts have letters from A by their zones, the second ones after them, level ones from M: neither moves the other. A soffit has no
 * upright cut.
 */
export function uprightCuts(face: FaceLayout): UprightCut[] {
  if (face.frame.level !== undefined) return [];
  const first = face.zones.map((zone) => ({ zone, at: sectionAt(face, zone) }));
  const second = first.flatMap(({ zone, at }) => {
    const beside = isOverRecess(face, zone, at) ? besideOpenings(face, zone) : undefined;
    return beside === undefined ? [] : [{ zone, at: beside }];
  });
  return [...first, ...second].map(
    ({ zone, at }, i): UprightCut => ({
      mark: `${face.code}-${letter(i, "A")}`,
      cut: "upright",
      at,
      scene: sectionId(face.id, at),
      zone,
    }),
  );
}

function isOverRecess(face: FaceLayout, zone: ZoneLayout, at: number): boolean {
  const low = polygonBounds(zone.region).y[0];
  return face.openings.some(
    ({ kind, region: { x, y } }) => kind === "recess" && x[0] < at && at < x[1] && y[0] <= low,
  );
}

/** In the widest stretch of a zone that no opening takes; undefined where openings take it all. */
function besideOpenings(face: FaceLayout, zone: ZoneLayout): number | undefined {
  const free = subtractIntervals(
    polygonBounds(zone.region).x,
    face.openings.map(({ region }) => region.x),
  );
  const [widest] = free.sort((a, b) => intervalLength(b) - intervalLength(a));
  return widest && clearOfJoints(face, zone, widest);
}

export function levelCuts(face: FaceLayout, next: FaceLayout | undefined): LevelCut[] {
  if (face.frame.level !== undefined) return [];
  return [...jamb(face), ...junctions(face), ...corner(face, next)].map((one, i) => ({
    ...one,
    cut: "level",
    mark: `${face.code}-${letter(i, "M")}`,
  }));
}

export interface SoffitCut extends SectionMark {
  /** Whose build-up it shows. */
  readonly zone: string | undefined;
}

/** A soffit lies: it is cut across, from the wall outward, where most of its cladding is met. */
export function soffitCuts(face: FaceLayout): SoffitCut[] {
  if (face.frame.level === undefined) return [];
  const { x } = polygonBounds(face.outline);
  const clad = face.pieces.filter(({ kind }) => kind === "board" || kind === "sheet");
  const cutBy = (at: number): number =>
    clad.filter(({ outline }) => stretchesOf(outline, { along: "y", at }).length > 0).length;
  const shares = [0.5, 0.46, 0.54, 0.4, 0.6].map((share) => Math.round(x[0] + (x[1] - x[0]) * share));
  const at = shares.reduce((best, one) => (cutBy(one) > cutBy(best) ? one : best));
  return [
    {
      mark: `${face.code}-${letter(0, "A")}`,
      cut: "upright",
      at,
      scene: `soffit-${face.id}`,
      zone: face.zones[0]?.id,
    },
  ];
}

/** What sections are cut from. */
export interface Cuttable {
  readonly facade: Pick<Facade, "faces" | "planes">;
  readonly project: Pick<Project, "corners">;
}

/** Sections are made where the build-up is known. */
function isBuilt(face: FaceLayout, zone: string | undefined, { facade: { planes } }: Cuttable): boolean {
  return planes.some((plane) => plane.face === face.id && plane.zone === zone);
}

/** The level sections that are made of a face, whether the project leaves their sheets out or not. */
function builtLevelCuts(face: FaceLayout, from: Cuttable): LevelCut[] {
  const next = nextOf(face, { faces: from.facade.faces, corners: from.project.corners });
  return levelCuts(face, next).filter(({ zone }) => isBuilt(face, zone, from));
}

/** More marks than this would take larger paper than the key plan is worth. */
const MOST_ON_PLAN = 60;

/** The level sections that the key plan points to: all of them, or none where they are too many and the elevations alone tell them. */
export function cutsOnPlan(from: Cuttable): (LevelCut & { readonly face: string })[] {
  const all = from.facade.faces.flatMap((face) =>
    builtLevelCuts(face, from).map((cut) => ({ ...cut, face: face.id })),
  );
  return all.length <= MOST_ON_PLAN ? all : [];
}

/** Every section that is made of a face, as its elevation points to it. */
export function cutsOf(face: FaceLayout, from: Cuttable): SectionMark[] {
  return [
    ...uprightCuts(face).filter(({ zone }) => isBuilt(face, zone.id, from)),
    ...builtLevelCuts(face, from),
    ...soffitCuts(face).filter(({ zone }) => isBuilt(face, zone, from)),
  ].map(({ mark, cut, at, scene }) => ({ mark, cut, at, scene }));
}

/** After the last letter they go on with figures. */
function letter(place: number, first: "A" | "M"): string {
  const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
  const [from, to] = first === "A" ? [0, letters.indexOf("M")] : [letters.indexOf("M"), letters.length];
  const count = to - from;
  const round = Math.floor(place / count);
  return `${letters[from + (place % count)]}${round > 0 ? round : ""}`;
}

type Unmarked = Omit<LevelCut, "mark" | "cut">;

/** To each side of what a section shows, mm. */
export const BESIDE = 260;

/**
 * Near the middle of the zone's first opening, whose sill and head are then seen; else near its own middle. Beside a joint
 * that stands there: a section down a joint shows no cladding.
 */
function sectionAt(face: FaceLayout, zone: ZoneLayout): number {
  const [left, right] = polygonBounds(zone.region).x;
  const through = face.openings
    .map(({ region: { x } }) => ({ x, from: Math.max(left, x[0]), to: Math.min(right, x[1]) }))
    .find(({ x, from, to }) => to - from > (x[1] - x[0]) / 2);
  return clearOfJoints(face, zone, through ? [through.from, through.to] : [left, right]);
}

function clearOfJoints(face: FaceLayout, zone: ZoneLayout, [from, to]: Interval): number {
  const clad = face.pieces
    .filter((piece) => piece.zone === zone.id && (piece.kind === "board" || piece.kind === "sheet"))
    .map(({ outline }) => polygonBounds(outline).x);
  const cutBy = (x: number): number => clad.filter((span) => span[0] < x && x < span[1]).length;
  const [first = (from + to) / 2, ...others] = SHARES.map((share) => Math.round(from + share * (to - from)));
  return others.reduce((best, x) => (cutBy(x) > cutBy(best) ? x : best), first);
}

/** Where along an opening or a stretch of a zone a section may stand: the middle first. */
const SHARES: readonly number[] = [0.5, 0.42, 0.58, 0.3, 0.7];

/** The zone that reaches a place of the face. */
function zoneAt(face: FaceLayout, [x, y]: readonly [number, number]): string | undefined {
  return face.zones.find(({ region }) =>
    stretchesOf(region, { along: "x", at: y }).some(([from, to]) => from <= x && x <= to),
  )?.id;
}

/** A height near the wished one at which a board is cut, not the gap between two. */
function clearHeight(face: FaceLayout, wished: number, x: Interval): number {
  const cutBy = (at: number): number =>
    face.pieces.filter(
      ({ kind, outline }) =>
        (kind === "board" || kind === "sheet") &&
        stretchesOf(outline, { along: "x", at }).some(([from, to]) => from < x[1] && to > x[0]),
    ).length;
  const tries = [0, 35, -35, 70, -70].map((off) => wished + off);
  return tries.reduce((best, at) => (cutBy(at) > cutBy(best) ? at : best), wished);
}

function jamb(face: FaceLayout): Unmarked[] {
  const [opening] = face.openings.filter(({ kind }) => kind !== "recess");
  if (!opening) return [];
  const { x, y } = opening.region;
  const at = clearHeight(face, (y[0] + y[1]) / 2, [x[0] - BESIDE, x[0]]);
  return [
    {
      scene: `jamb-${face.id}-${opening.id}`,
      at,
      window: [x[0] - BESIDE, x[0] + BESIDE / 2],
      zone: zoneAt(face, [x[0] - BESIDE / 2, at]),
      of: { kind: "jamb", opening: opening.id },
    },
  ];
}

/** Where a zone ends and another begins. */
function junctions(face: FaceLayout): Unmarked[] {
  return face.zones.slice(1).flatMap((zone): Unmarked[] => {
    const box = polygonBounds(zone.region);
    const x = box.x[0];
    if (!face.zones.some((one) => Math.abs(polygonBounds(one.region).x[1] - x) < BESIDE / 4)) return [];
    const open = face.openings.filter(({ region }) => region.x[0] < x + BESIDE && region.x[1] > x - BESIDE);
    const low = box.y[0] + (box.y[1] - box.y[0]) * 0.3;
    const wished = open.some(({ region }) => region.y[0] < low && region.y[1] > low)
      ? box.y[1] - (box.y[1] - box.y[0]) * 0.1
      : low;
    const window: Interval = [x - BESIDE, x + BESIDE];
    const at = clearHeight(face, wished, window);
    return [{ scene: `junction-${face.id}-${zone.id}`, at, window, zone: zone.id, of: { kind: "junction" } }];
  });
}

function corner(face: FaceLayout, next: FaceLayout | undefined): Unmarked[] {
  if (!next) return [];
  const { origin, along } = face.frame;
  const [dx, dy] = [next.frame.origin[0] - origin[0], next.frame.origin[1] - origin[1]];
  const end = dx * along[0] + dy * along[1];
  const box = polygonBounds(face.outline);
  const at = clearHeight(face, box.y[0] + (box.y[1] - box.y[0]) * 0.4, [end - BESIDE, end]);
  return [
    {
      scene: `corner-${face.id}-${next.id}`,
      at,
      window: [end - BESIDE, end + BESIDE],
      zone: zoneAt(face, [end - BESIDE, at]) ?? face.zones.at(-1)?.id,
      of: { kind: "corner" },
    },
  ];
}

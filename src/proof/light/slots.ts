/** The open joints of a zone through which light falls on the membrane, like ones together. */
import type { Interval } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { regionArea } from "../../geometry/region.ts";
import type { Joint, Piece } from "../../setout/facade.ts";
import type { ZoneView } from "../context.ts";
import type { SlotBefore } from "./behind-slot.ts";
import type { Across } from "./face-sun.ts";

/** Joints of one zone that light passes alike. */
export interface SlotKind {
  readonly across: Across;
  readonly slot: SlotBefore;
  /** As fixed, before the season widens it (mm). */
  readonly fixedMm: number;
  /** Area when widest (mm²) with no batten behind, and how many joints. */
  readonly areaMm2: number;
  readonly count: number;
}

/** @param growthMm how much a gap between courses opens from fixing to the driest month */
export function slotKinds(view: ZoneView, growthMm: number): SlotKind[] {
  const { plane, cladding } = view;
  if (!plane) return [];
  const module = Math.min(...view.pieces.map(({ cut }) => cut.width));
  const covers = view.battens.map(({ outline }) => polygonBounds(outline));
  const kinds = new Map<string, SlotKind>();
  for (const joint of view.joints) {
    if (!opens(joint)) continue;
    const open = 1 - coveredShare(joint, covers);
    if (open < LEAST_OPEN) continue;
    const channel = runsBetween(joint, covers);
    const opening = joint.kind === "course gap" ? growthMm : 0;
    const gapMm = joint.width + opening;
    if (gapMm <= 0) continue;
    const across: Across = joint.along === "x" ? "level" : "upright";
    const bevelled = cladding.kind === "boards" && cladding.direction === "horizontal" && across === "level";
    const key = `${across} ${joint.width} ${channel}`;
    const known = kinds.get(key);
    const area = (open * regionArea({ outline: joint.region, holes: joint.holes }) * gapMm) / joint.width;
    kinds.set(key, {
      across,
      slot: {
        gapMm,
        thicknessMm: cladding.thickness + (channel ? plane.cavity : 0),
        bevelDeg: bevelled ? cladding.bevelDeg : 0,
        cavityMm: channel ? 0 : plane.cavity,
        everyMm: module + gapMm,
      },
      fixedMm: joint.width,
      areaMm2: area + (known?.areaMm2 ?? 0),
      count: 1 + (known?.count ?? 0),
    });
  }
  return [...kinds.values()];
}

/** What stands at an opening, a corner or the end of the cladding has flashings, returns and closures behind it. */
function opens({ kind }: Joint): boolean {
  return kind === "course gap" || kind === "butt" || kind === "sheet joint";
}

interface Box {
  readonly x: Interval;
  readonly y: Interval;
}

/** Under this share a joint counts as backed by battens from end to end. */
const LEAST_OPEN = 0.1;

/** How much of a joint has battens behind it, which take the light in the membrane's place. */
function coveredShare(joint: Joint, covers: readonly Box[]): number {
  const box = polygonBounds(joint.region);
  const area = (box.x[1] - box.x[0]) * (box.y[1] - box.y[0]);
  let covered = 0;
  for (const { x, y } of covers) {
    const wide = Math.min(x[1], box.x[1]) - Math.max(x[0], box.x[0]);
    const high = Math.min(y[1], box.y[1]) - Math.max(y[0], box.y[0]);
    if (wide > 0 && high > 0) covered += wide * high;
  }
  return Math.min(1, covered / area);
}

/** How far a batten's edge may stand from a joint's and still go on from it inward (mm). */
const FLUSH = 1;

/** Whether battens stand on both sides of a joint, so that it goes on between them as deep as the membrane. */
function runsBetween(joint: Joint, covers: readonly Box[]): boolean {
  const box = polygonBounds(joint.region);
  const [over, along] = joint.along === "x" ? (["y", "x"] as const) : (["x", "y"] as const);
  const long = box[along][1] - box[along][0];
  const beside = (side: 0 | 1): boolean => {
    const length = covers
      .filter((cover) => Math.abs(cover[over][side === 0 ? 1 : 0] - box[over][side]) <= FLUSH)
      .reduce((sum, cover) => {
        const common = Math.min(cover[along][1], box[along][1]) - Math.max(cover[along][0], box[along][0]);
        return sum + Math.max(0, common);
      }, 0);
    return length >= 0.9 * long;
  };
  return beside(0) && beside(1);
}

/** From the lowest to the highest piece (mm). */
export function heightsOf(pieces: readonly Piece[]): Interval {
  const heights = pieces.map(({ outline }) => polygonBounds(outline).y);
  return [Math.min(...heights.map(([low]) => low)), Math.max(...heights.map(([, high]) => high))];
}

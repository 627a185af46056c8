/** A year of light on the membrane of each zone, through all its joints, at their widest in the year. */
import type { Demands } from "../../codes/demands.ts";
import { regionArea } from "../../geometry/region.ts";
import type { Project } from "../../project/schema/project.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import type { ZoneView } from "../context.ts";
import { type Brightest, bareWall, type Lit, throughSlot } from "./behind-slot.ts";
import type { LightInput } from "./input.ts";
import type { LightSite, Shade, YearOfLight } from "./model.ts";
import { hasOverhang, shadeAt } from "./shade.ts";
import { heightsOf, type SlotKind, slotKinds } from "./slots.ts";
import { type PlaceSun, placeSun, SUNS } from "./sun-memo.ts";
import { mixed } from "./year-of-light.ts";

export interface SlotLight extends SlotKind {
  /** Behind the slots, per area of slot. */
  readonly through: YearOfLight;
}

export interface ZoneLight {
  readonly view: ZoneView;
  /** On the wall before any cladding, at its foot. */
  readonly bare: YearOfLight;
  /** On the membrane, spread over the whole zone; under eaves, as at the zone's middle height. */
  readonly average: YearOfLight;
  readonly slots: readonly SlotLight[];
  /** The slot behind which one point takes most, and that point; undefined where no light gets in. */
  readonly worst: { readonly kind: SlotLight; readonly point: Brightest; readonly lit: Lit } | undefined;
}

type LightOfZone = Omit<ZoneLight, "view">;

/** What a sheet shows of it. */
export interface ShownLight extends LightOfZone {
  readonly view: Pick<ZoneView, "where" | "cladding">;
}

/**
 * Kept beside a sun, zone by zone of a laid-out face: what the face does not hold itself stands in the key, so a face that an
 * edit leaves as it was needs no light again.
 */
const KEPT = new WeakMap<
  PlaceSun,
  WeakMap<FaceLayout, Map<string, { readonly key: string; readonly light: LightOfZone }>>
>();

interface Asked {
  readonly project: Project;
  readonly demands: Demands;
  readonly zones: readonly ZoneView[];
  readonly light?: LightInput | undefined;
}

/** The site of the light; undefined where the ground is not known. */
export function lightSite({ light }: Demands): LightSite | undefined {
  const { ground, groundLacks: _lacks, figures: _names, ...place } = light;
  return ground && { groundShare: ground.light, groundUvShare: ground.ultraviolet, ...place };
}

/** Undefined where the project does not tell its ground. */
export function zoneLights(asked: Asked): ZoneLight[] | undefined {
  const site = lightSite(asked.demands);
  if (!site) return undefined;
  const { memo = SUNS, weather } = asked.light ?? {};
  const sun = weather ? placeSun(site, weather) : memo.recall(site);
  return asked.zones.flatMap((view) => zoneLight(view, asked, sun) ?? []);
}

function zoneLight(view: ZoneView, { project, demands }: Asked, sun: PlaceSun): ZoneLight | undefined {
  const { plane, projectFace: face, cladding } = view;
  if (!plane || view.pieces.length === 0) return undefined;
  const shaded = { project, face, faceZ: plane.faceZ };
  const heights = heightsOf(view.pieces);
  const middle = hasOverhang(shaded) ? (heights[0] + heights[1]) / 2 : heights[0];
  const placed: Placed = {
    view,
    azimuthDeg: face.azimuthDeg,
    foot: shadeAt(shaded, heights[0]),
    middle: shadeAt(shaded, middle),
    growthMm: growthMm(view, demands),
  };
  const bevel = cladding.kind === "boards" ? [cladding.direction, cladding.bevelDeg] : [];
  const key = [
    placed.azimuthDeg,
    ...Object.values(placed.foot),
    ...Object.values(placed.middle),
    placed.growthMm,
    plane.cavity,
    cladding.thickness,
    ...bevel,
  ].join(" ");
  const faces = KEPT.get(sun) ?? new WeakMap();
  KEPT.set(sun, faces);
  const zones = faces.get(view.face) ?? new Map();
  faces.set(view.face, zones);
  const known = zones.get(view.where.zone);
  const light = known?.key === key ? known.light : lightOf(placed, sun);
  if (light !== known?.light) zones.set(view.where.zone, { key, light });
  return { view, ...light };
}

interface Placed {
  readonly view: ZoneView;
  readonly azimuthDeg: number;
  /** At the zone's foot, and at its middle height under eaves. */
  readonly foot: Shade;
  readonly middle: Shade;
  /** How much a gap between courses opens (mm). */
  readonly growthMm: number;
}

function lightOf({ view, azimuthDeg, foot, middle, growthMm }: Placed, sun: PlaceSun): LightOfZone {
  const slots = slotKinds(view, growthMm).map(
    (kind): SlotLight => ({
      through: throughSlot(sun.on({ azimuthDeg, across: kind.across, shade: middle }), kind.slot),
      ...kind,
    }),
  );
  const area = zoneArea(view);
  return {
    bare: bareWall(sun.on({ azimuthDeg, across: slots[0]?.across ?? "level", shade: foot })),
    average: mixed(slots.map(({ through, areaMm2 }) => ({ year: through, share: areaMm2 / area }))),
    slots,
    worst: worstOf(slots, sun, ({ across }) => sun.on({ azimuthDeg, across, shade: foot })),
  };
}

/** Behind boards of one thickness the widest of each direction is the brightest, so it alone is searched. */
function worstOf(
  slots: readonly SlotLight[],
  sun: PlaceSun,
  litFor: (kind: SlotLight) => Lit,
): ZoneLight["worst"] {
  const found = (["level", "upright"] as const).flatMap((across) => {
    const [widest] = slots
      .filter((kind) => kind.across === across)
      .sort((a, b) => b.slot.gapMm - a.slot.gapMm);
    if (!widest) return [];
    const lit = litFor(widest);
    return [{ kind: widest, lit, point: sun.brightest(lit, widest.slot) }];
  });
  return found.sort((a, b) => b.point.year.uvMJYear - a.point.year.uvMJYear)[0];
}

/** How much the widest board's shrinkage opens a gap between courses, from fixing to the driest month (mm). */
export function growthMm({ cladding, pieces }: ZoneView, { boards }: Demands): number {
  const perMm = boards[cladding.id]?.seasonal?.driestMm ?? 0;
  return perMm * Math.max(0, ...pieces.map(({ cut }) => cut.width));
}

/** Pieces and what is open between them (mm²). */
export function zoneArea(view: ZoneView): number {
  const pieces = view.pieces.reduce((sum, { outline, holes }) => sum + regionArea({ outline, holes }), 0);
  const joints = view.joints
    .filter(({ kind }) => kind !== "edge" && kind !== "corner")
    .reduce((sum, { region, holes }) => sum + regionArea({ outline: region, holes }), 0);
  return pieces + joints;
}

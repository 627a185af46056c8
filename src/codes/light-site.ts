/** Sun, sky and ground of the place, for the light that falls through open joints. */

import { catalogueWith } from "../catalogue/own-figures.ts";
import type { LightFile } from "../catalogue/schema/light.ts";
import type { Basis } from "../findings/finding.ts";
import type { Project } from "../project/schema/project.ts";
import { namesOf, weaker } from "./rule-value.ts";

/** Twelve values, January first. */
type Months = readonly number[];

export interface LightDemand {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly air: {
    readonly pressureMbar: number;
    readonly ozoneCm: number;
    readonly waterCm: number;
    readonly haze380: number;
    readonly haze500: number;
    readonly forwardShare: number;
  };
  /** W/m². */
  readonly solarConstantWPerM2: number;
  readonly beamUvShare: number;
  readonly skyUvShare: number;
  /** Undefined where the project tells neither the ground nor the snow; `groundLacks` names the paths. */
  readonly ground: GroundDemand | undefined;
  readonly groundLacks: readonly string[];
  /** Names of the figures that the light rests on. */
  readonly figures: readonly string[];
}

export interface GroundDemand {
  /** Shares of light, and of ultraviolet, that the ground throws back. */
  readonly light: Months;
  readonly ultraviolet: Months;
  readonly basis: Basis;
}

export function lightDemand(project: Project): LightDemand {
  const { latitudeDeg, longitudeDeg } = project.site;
  const { air, ground, sun, ultravioletShare } = catalogueWith(project.figures).light;
  const known = groundOf(project, ground);
  const { climate } = project.site;
  const given = climate?.groundReflectance !== undefined && climate.groundUvReflectance !== undefined;
  const { bare, snow, snowFromDepth } = ground;
  const ofGround = [bare.light, bare.ultraviolet, snow.light, snow.ultraviolet, snowFromDepth];
  return {
    latitudeDeg,
    longitudeDeg,
    air: {
      pressureMbar: air.pressure.value,
      ozoneCm: air.ozone.value,
      waterCm: air.water.value,
      haze380: air.haze380.value,
      haze500: air.haze500.value,
      forwardShare: air.forwardShare.value,
    },
    solarConstantWPerM2: sun.constant.value,
    beamUvShare: ultravioletShare.beam.value,
    skyUvShare: ultravioletShare.sky.value,
    figures: namesOf(
      ...Object.values(air),
      ...Object.values(ultravioletShare),
      sun.constant,
      ...(given ? [] : ofGround),
    ),
    ground: known,
    groundLacks: known ? [] : ["/site/climate/snowDepthMm", "/site/climate/groundUvReflectance"],
  };
}

/** What the project tells of its ground, else white or bare by the depth of snow. */
function groundOf({ site: { climate } }: Project, ground: LightFile["ground"]): GroundDemand | undefined {
  const given = { light: climate?.groundReflectance, ultraviolet: climate?.groundUvReflectance };
  const snow = climate?.snowDepthMm;
  if (!snow && !(given.light && given.ultraviolet)) return undefined;
  const byDepth = (of: "light" | "ultraviolet"): Months =>
    (snow?.values ?? []).map((depth) =>
      depth >= ground.snowFromDepth.value ? ground.snow[of].value : ground.bare[of].value,
    );
  // The ultraviolet decides; the light of a month only brightens its sky a little.
  const basis: Basis = given.ultraviolet
    ? given.ultraviolet.basis
    : weaker("typical", snow?.basis ?? "typical");
  return {
    light: given.light?.values ?? byDepth("light"),
    ultraviolet: given.ultraviolet?.values ?? byDepth("ultraviolet"),
    basis,
  };
}

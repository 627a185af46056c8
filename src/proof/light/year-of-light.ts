/** Beam, sky and ground put together: a year of light and of ultraviolet on a surface. */

import type { LightSite, Months, YearOfLight } from "./model.ts";
import type { EvenShares } from "./shares.ts";
import type { SunTable } from "./sun-table.ts";

const WH_PER_KWH = 1000;
const MJ_PER_WH = 0.0036;

/** @param beam Wh/m² on the surface, by month */
export function yearOfLight(
  { site, table }: { readonly site: LightSite; readonly table: SunTable },
  { beam, shares }: { readonly beam: Months; readonly shares: EvenShares },
): YearOfLight {
  const lightKWh = beam.map((direct, month) => {
    const sky = table.sky[month] ?? 0;
    const level = table.level[month] ?? 0;
    const ground = site.groundShare[month] ?? 0;
    return (direct + shares.sky * sky + shares.ground * ground * level) / WH_PER_KWH;
  });
  const parts = beam.map((direct, month) => {
    const { beamPart, skyPart } = ultraviolet({ site, table }, month);
    const ground = (site.groundUvShare[month] ?? 0) * (beamPart + skyPart);
    return {
      beam: site.beamUvShare * direct * MJ_PER_WH,
      sky: shares.sky * skyPart * MJ_PER_WH,
      ground: shares.ground * ground * MJ_PER_WH,
    };
  });
  return whole(
    lightKWh,
    parts.map((part) => part.beam + part.sky + part.ground),
    {
      beam: sum(parts.map((part) => part.beam)),
      sky: sum(parts.map((part) => part.sky)),
      ground: sum(parts.map((part) => part.ground)),
    },
  );
}

function whole(lightKWh: Months, uvMJ: Months, uvParts: YearOfLight["uvParts"]): YearOfLight {
  return { lightKWh, uvMJ, lightKWhYear: sum(lightKWh), uvMJYear: sum(uvMJ), uvParts };
}

/** Of the light on level ground in a month, the ultraviolet of the beam and of the sky (Wh/m²). */
export function ultraviolet(
  { site, table }: { readonly site: LightSite; readonly table: SunTable },
  month: number,
): { readonly beamPart: number; readonly skyPart: number } {
  const sky = table.sky[month] ?? 0;
  const level = table.level[month] ?? 0;
  return { beamPart: site.beamUvShare * (level - sky), skyPart: site.skyUvShare * sky };
}

/** A year made of others by their shares. */
export function mixed(years: readonly { readonly year: YearOfLight; readonly share: number }[]): YearOfLight {
  const months = (of: (year: YearOfLight) => Months): Months =>
    Array.from({ length: 12 }, (_, month) =>
      sum(years.map(({ year, share }) => share * (of(year)[month] ?? 0))),
    );
  const part = (of: keyof YearOfLight["uvParts"]): number =>
    sum(years.map(({ year, share }) => share * year.uvParts[of]));
  return whole(
    months(({ lightKWh }) => lightKWh),
    months(({ uvMJ }) => uvMJ),
    { beam: part("beam"), sky: part("sky"), ground: part("ground") },
  );
}

export function sum(values: Months): number {
  return values.reduce((total, value) => total + value, 0);
}

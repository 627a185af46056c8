/**
 * How the gap between courses follows the seasons: boards come to the moisture content that the month's mean air gives
 * them. Sun, rain and a dark surface take single boards further either way.
 */
import type { Catalogue } from "../catalogue/files.ts";
import { catalogueWith } from "../catalogue/own-figures.ts";
import type { Species } from "../catalogue/species.ts";
import { changeByCoefficient } from "../equations/change-by-coefficient.ts";
import { changeByShrinkage } from "../equations/change-by-shrinkage.ts";
import { equilibriumMoisture } from "../equations/equilibrium-moisture.ts";
import type { Basis } from "../findings/finding.ts";
import type { BoardCladding, Project } from "../project/schema/project.ts";
import { boardWoods } from "./board-woods.ts";
import { materialBasis, namesOf, weaker } from "./rule-value.ts";
import { speciesNamed } from "./species-named.ts";

export interface SeasonalDemand {
  /** Change of a course's gap from fixing, mm per mm of board width, signed: below 0 it closes. */
  readonly wettestMm: number;
  readonly driestMm: number;
  /** Moisture content in percent at fixing and in the wettest and driest month. */
  readonly fixingPercent: number;
  readonly wettestPercent: number;
  readonly driestPercent: number;
  /** 1 is January. */
  readonly wettestMonth: number;
  readonly driestMonth: number;
  /** The wood that moves most, as the project file writes it. */
  readonly wood: string;
  readonly basis: Basis;
  /** Names of the wood's figures. */
  readonly figures: readonly string[];
}

/** The seasonal demand, or the paths of the project file that it lacks. */
export type Seasonal =
  | { readonly known: true; readonly demand: SeasonalDemand }
  | { readonly known: false; readonly lacks: readonly string[] };

export function seasonalOf(project: Project, cladding: BoardCladding, path: string): Seasonal {
  const temperature = project.site.climate?.meanTempC;
  const humidity = project.site.climate?.meanRelativeHumidityPercent;
  const fixingPercent = cladding.moisturePercent?.atFixing;
  if (temperature === undefined || humidity === undefined || fixingPercent === undefined) {
    const lacks = [
      temperature === undefined ? ["/site/climate/meanTempC"] : [],
      humidity === undefined ? ["/site/climate/meanRelativeHumidityPercent"] : [],
      fixingPercent === undefined ? [`${path}/moisturePercent`] : [],
    ];
    return { known: false, lacks: lacks.flat() };
  }
  const months = temperature.values.map((temperatureC, month) =>
    equilibriumMoisture({ temperatureC, humidityPercent: tabled(humidity.values[month] ?? 0) }),
  );
  const wettestPercent = Math.max(...months);
  const driestPercent = Math.min(...months);
  const catalogue = catalogueWith(project.figures);
  const woods = boardWoods(project, cladding).map(({ name }) => {
    const wood = speciesNamed(name, catalogue);
    const growth = (toPercent: number) =>
      growthPerMm(wood, catalogue.species.rules, { fromPercent: fixingPercent, toPercent });
    return { name, wettest: growth(wettestPercent), driest: growth(driestPercent) };
  });
  const most = woods.reduce((a, b) =>
    b.wettest.perMm - b.driest.perMm > a.wettest.perMm - a.driest.perMm ? b : a,
  );
  return {
    known: true,
    demand: {
      wettestMm: -most.wettest.perMm,
      driestMm: -most.driest.perMm,
      fixingPercent,
      wettestPercent,
      driestPercent,
      wettestMonth: months.indexOf(wettestPercent) + 1,
      driestMonth: months.indexOf(driestPercent) + 1,
      wood: most.name,
      figures: most.wettest.figures,
      basis: [temperature.basis, humidity.basis, most.wettest.basis].reduce(weaker),
    },
  };
}

/** Humidity within the span of the table behind the equation: near saturation the equation runs away. */
function tabled(humidityPercent: number): number {
  return Math.min(95, Math.max(5, humidityPercent));
}

/** Growth of a flat-sawn board per millimetre of width; a wood that the catalogue lacks moves by the rule for softwood. */
function growthPerMm(
  wood: Species | undefined,
  woodRules: Catalogue["species"]["rules"],
  change: { fromPercent: number; toPercent: number },
): { perMm: number; basis: Basis; figures: readonly string[] } {
  const shrinkage = wood?.shrinkageTangential;
  if (shrinkage) {
    const saturation = wood.fibreSaturation ?? woodRules.fibreSaturation;
    return {
      perMm: changeByShrinkage({
        ...change,
        widthMm: 1,
        shrinkagePercent: shrinkage.value,
        saturationPercent: saturation.value,
      }),
      basis: weaker(materialBasis(shrinkage.basis), materialBasis(saturation.basis)),
      figures: namesOf(shrinkage, saturation),
    };
  }
  const coefficient = wood?.coefficientTangential ?? woodRules.coefficientAcrossGrainSoftwood;
  return {
    perMm: changeByCoefficient({ ...change, widthMm: 1, coefficientPerPercent: coefficient.value }),
    basis: materialBasis(coefficient.basis),
    figures: namesOf(coefficient),
  };
}

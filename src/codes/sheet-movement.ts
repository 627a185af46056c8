/** How far a sheet moves with heat and moisture, from its data sheet and the place's extremes. */
import { catalogueWith } from "../catalogue/own-figures.ts";
import { surfaceTemperature } from "../equations/surface-temperature.ts";
import { thermalExpansion } from "../equations/thermal-expansion.ts";
import type { Basis } from "../findings/finding.ts";
import type { Project, SheetCladding } from "../project/schema/project.ts";
import { materialBasis, namesOf, weaker } from "./rule-value.ts";

export interface SheetTemperatures {
  readonly fixedC: number;
  readonly coldestC: number;
  readonly hottestC: number;
  readonly basis: Basis;
  /** Names of the figures that make them. */
  readonly figures: readonly string[];
}

export interface SheetDemand {
  /**
   * Free movement each way from the fixed point (mm per m), heat and moisture added: an upper bound, since a hot sheet is
   * mostly dry. Undefined where the project gives no temperature extremes.
   */
  readonly movementMmPerM: number | undefined;
  /** Growth by heat from fixing (mm per m); undefined as above. */
  readonly heatGrowthMmPerM: number | undefined;
  readonly temperatures: SheetTemperatures | undefined;
  readonly expansionPerK: number;
  readonly moistureMmPerM: number;
  /** Least joint of the data sheet (mm). */
  readonly jointMm: number;
  /** Largest batten spacing of the data sheet (mm). */
  readonly battenCentresMm: number;
  /** Basis of the data sheet's figures. */
  readonly basis: Basis;
}

export function sheetDemand(project: Project, { dataSheet }: SheetCladding): SheetDemand {
  const temperatures = sheetTemperatures(project);
  const change = (toC: number, fromC: number): number =>
    thermalExpansion({ lengthMm: 1000, expansionPerK: dataSheet.thermalPerK, fromC, toC });
  const grows = temperatures && change(temperatures.hottestC, temperatures.fixedC);
  const shrinks = temperatures && -change(temperatures.coldestC, temperatures.fixedC);
  return {
    movementMmPerM:
      grows === undefined || shrinks === undefined
        ? undefined
        : Math.max(grows, shrinks) + dataSheet.moistureMmPerM,
    heatGrowthMmPerM: grows,
    temperatures,
    expansionPerK: dataSheet.thermalPerK,
    moistureMmPerM: dataSheet.moistureMmPerM,
    jointMm: dataSheet.minJoint,
    battenCentresMm: dataSheet.maxBattenSpacing,
    basis: dataSheet.basis,
  };
}

function sheetTemperatures(project: Project): SheetTemperatures | undefined {
  const extremes = project.site.climate?.extremeTempC;
  if (extremes === undefined) return undefined;
  const [coldestC, airC] = extremes.values;
  // A dark sheet in full sun; the schedule of the site may say at what temperature it is fixed.
  const { fixedAt, darkAbsorption, sunOnWall } = catalogueWith(project.figures).heat.sunlitSheet;
  return {
    fixedC: fixedAt.value,
    coldestC,
    hottestC: surfaceTemperature({
      airC,
      absorptionM2KPerW: darkAbsorption.value,
      sunWPerM2: sunOnWall.value,
      skyLossK: 0,
    }),
    figures: namesOf(fixedAt, darkAbsorption, sunOnWall),
    basis: [fixedAt, darkAbsorption, sunOnWall]
      .map(({ basis }) => materialBasis(basis))
      .reduce(weaker, extremes.basis),
  };
}

/** Inputs of every equation: in range, and so unlike that a swap of two of one unit shows. */
import { AIR_SAMPLES } from "./equation-samples.ts";
import { LIGHT_SAMPLES } from "./light-samples.ts";
import { STRUCTURE_SAMPLES } from "./structure-samples.ts";

export const SAMPLES: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  "equilibrium-moisture": { temperatureC: 21, humidityPercent: 65 },
  "meter-moisture": { meterPercent: 14, calibratedC: 21, woodC: 4.2, speciesPoints: -1.5 },
  "change-by-coefficient": { widthMm: 140, coefficientPerPercent: 0.00323, fromPercent: 7, toPercent: 13 },
  "change-by-shrinkage": {
    widthMm: 140,
    shrinkagePercent: 9.1,
    saturationPercent: 30,
    fromPercent: 12,
    toPercent: 20,
  },
  "surface-temperature": { airC: 35, absorptionM2KPerW: 0.052, sunWPerM2: 800, skyLossK: 3.9 },
  "thermal-expansion": { lengthMm: 3000, expansionPerK: 1e-5, fromC: 10, toC: 70 },
  "joint-width-arithmetic": {
    heatMm: 1.8,
    moistureMm: 3,
    sizeToleranceMm: 1,
    placeToleranceMm: 2,
    leastMm: 5,
  },
  "joint-width-root-sum-square": {
    heatMm: 1.8,
    moistureMm: 3,
    sizeToleranceMm: 1,
    placeToleranceMm: 2,
    leastMm: 5,
  },
  "hole-size": {
    shankMm: 5,
    fromFixedPointMm: 1450,
    expansionPerK: 1e-5,
    temperatureChangeK: 60,
    moistureMmPerM: 0.5,
  },
  "woven-free-share": { openingMm: 3, wireMm: 0.5 },
  "net-vent-area": {
    slotMm: 25,
    battenWidthMm: 45,
    battenCentresMm: 400,
    freeShare: 0.7347,
    cleanShare: 0.8,
  },
  "open-share": { gapMm: 8, boardMm: 140 },
  ...AIR_SAMPLES,
  ...STRUCTURE_SAMPLES,
  ...LIGHT_SAMPLES,
};

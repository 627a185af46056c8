/** Inputs of the equations on wind, bending, screws and hanging: in range, and so unlike that a swap shows. */
type Samples = Readonly<Record<string, Readonly<Record<string, number>>>>;

const TERRAIN = { heightM: 8, roughnessM: 0.3, leastHeightM: 5 };
const SPANS = {
  firstMm: 600,
  secondMm: 450,
  thirdMm: 700,
  fourthMm: 520,
  leftArmMm: 90,
  rightArmMm: 160,
  loadNPerMm: 0.8,
};
const BOTH = { pullN: 300, shearN: 500, pullHeldN: 396, shearHeldN: 950 };

export const STRUCTURE_SAMPLES: Samples = {
  "coefficient-by-area": {
    areaM2: 4,
    smallM2: 1,
    largeM2: 50,
    smallCoefficient: -2.1,
    largeCoefficient: -1.5,
  },
  "end-strip-width": { leastWidthM: 14, heightM: 6, floorM: 1.1 },
  "nbc-exposure": { heightM: 30, factor: 0.71, referenceM: 12, exponent: 0.3, least: 0.7 },
  "nbc-pressure": { importance: 1.15, hourlyPa: 440, exposure: 0.9, topography: 1.2 },
  "wind-net-pressure": { pressurePa: 400, outside: -2.1, inside: 0.6 },
  "asce-exposure": { heightM: 6.5, leastHeightM: 4.57, gradientM: 274, alpha: 9.5, factor: 3.1 },
  "asce-elevation": { altitudeM: 110 },
  "asce-velocity-pressure": {
    speedMPerS: 52,
    exposure: 0.98,
    topography: 1.1,
    directionality: 0.85,
    elevation: 0.99,
  },
  "en-basic-pressure": { speedMPerS: 26, densityKgPerM3: 1.25 },
  "en-terrain-factor": { roughnessM: 0.3 },
  "en-roughness": TERRAIN,
  "en-turbulence": TERRAIN,
  "en-peak-pressure": { ...TERRAIN, speedMPerS: 26, densityKgPerM3: 1.25 },
  "en-probability": { yearlyProbability: 0.1, shape: 0.2, exponent: 0.45 },
  "en-strip-length": { crosswindM: 12, heightM: 8 },
  "beam-moment": SPANS,
  "beam-reaction": SPANS,
  "beam-sag": { ...SPANS, modulusMPa: 9500, widthMm: 64, thicknessMm: 19 },
  "bending-stress": { momentNmm: 13_000, widthMm: 64, thicknessMm: 19 },
  "nds-screw-withdrawal": { specificGravity: 0.42, diameterMm: 4.83 },
  "nds-lag-withdrawal": { specificGravity: 0.42, diameterMm: 9.5 },
  "nds-nail-withdrawal": { specificGravity: 0.55, diameterMm: 3.3 },
  "nds-head-pull-through": { specificGravity: 0.42, headMm: 9.2, thicknessMm: 19 },
  "nds-bearing-strength": { specificGravity: 0.42 },
  "nds-lateral": {
    rootMm: 3.9,
    yieldMPa: 620,
    sideMm: 19,
    mainMm: 38,
    gapMm: 2,
    sideMPa: 23,
    mainMPa: 32,
  },
  "nds-combined": BOTH,
  "csa-screw-withdrawal": { coefficient: 59, specificGravity: 0.42, diameterMm: 4.17 },
  "en-screw-withdrawal": { diameterMm: 8, threadMm: 64, densityKgPerM3: 350 },
  "en-head-pull-through": { strengthMPa: 13, headMm: 10, densityKgPerM3: 320, declaredAtKgPerM3: 350 },
  "en-head-strength": { densityKgPerM3: 350 },
  "en-embedment": { densityKgPerM3: 350, diameterMm: 5, predrilled: 1 },
  "en-yield-moment": { tensileMPa: 540, diameterMm: 5 },
  "en-screw-shear": {
    diameterMm: 5,
    yieldNmm: 10_600,
    headSideMm: 22,
    pointSideMm: 30,
    headSideMPa: 22,
    pointSideMPa: 27,
    pullHeldN: 800,
  },
  "en-combined": BOTH,
  "screw-sway": { loadN: 60, gapMm: 80, rootMm: 4, stiffness: 12, modulusMPa: 210_000 },
  "thickest-foam": {
    screwDiameterMm: 5,
    screwSpacingMm: 400,
    furringSpacingMm: 500,
    claddingKgPerM2: 40,
  },
  "missed-stud-angle": { studMm: 38, offsetMm: 4, coverMm: 6, depthMm: 130 },
};

/** Products, sums and the greater of two do not care which of two is which. */
export const STRUCTURE_ALIKE: Readonly<Record<string, readonly string[]>> = {
  "nbc-pressure": ["importance exposure", "importance topography"],
  "asce-velocity-pressure": ["exposure directionality", "exposure elevation", "directionality elevation"],
  "asce-exposure": ["heightM leastHeightM"],
  "en-roughness": ["heightM leastHeightM"],
  "en-turbulence": ["heightM leastHeightM"],
  "en-peak-pressure": ["heightM leastHeightM"],
  "missed-stud-angle": ["offsetMm coverMm"],
  // The table goes by the product of the two; the diameter has only to be no less than a No. 10.
  "thickest-foam": ["screwSpacingMm furringSpacingMm"],
};

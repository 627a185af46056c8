/** Inputs of the equations of light, in range and so unlike that a swap of two of one unit shows. */

const THROUGH = {
  zenithDeg: 55,
  outsideWPerM2: 1390,
  pressureMbar: 990,
  ozoneCm: 0.3,
  waterCm: 1.5,
  haze380: 0.15,
  haze500: 0.1,
};
const AIR = { ...THROUGH, forwardShare: 0.85, groundShare: 0.7 };
const SLOT = { gapMm: 10, thicknessMm: 20, bevelDeg: 8 };

export const LIGHT_SAMPLES: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  "sun-elevation": { latitudeDeg: 46.8, longitudeDeg: -71.4, daysFromJ2000: 9300.71 },
  "sun-azimuth": { latitudeDeg: 46.8, longitudeDeg: -71.4, daysFromJ2000: 9300.71 },
  "extraterrestrial-beam": { dayOfYear: 40, solarConstantWPerM2: 1367 },
  "air-mass": { zenithDeg: 70 },
  "clear-sky-beam": THROUGH,
  "clear-sky-diffuse": AIR,
  "clear-sky-level": AIR,
  "clear-sky-rough": { zenithDeg: 30 },
  "wall-incidence": { elevationDeg: 35, azimuthDeg: 200, wallAzimuthDeg: 172 },
  "wall-irradiance": { beamWPerM2: 800, skyWPerM2: 90, levelWPerM2: 450, incidence: 0.6, groundShare: 0.2 },
  "profile-angle-level": { elevationDeg: 35, azimuthDeg: 200, wallAzimuthDeg: 172 },
  "profile-angle-upright": { azimuthDeg: 200, wallAzimuthDeg: 172 },
  "slot-cut-off": SLOT,
  "slot-beam-share": { ...SLOT, profileDeg: 12 },
  "slot-exchange": SLOT,
  "slot-sky-share": { ...SLOT, skyToDeg: 18 },
  "slot-ground-share": SLOT,
  "slot-window-share": { ...SLOT, acrossFrom: 0.05, acrossTo: 0.2, alongFrom: -0.5, alongTo: 3 },
  "view-share": { fromDeg: -5, toDeg: 20 },
  "lit-stripe-top": { ...SLOT, cavityMm: 27, profileDeg: -20 },
  "uv-irradiance": { beamWPerM2: 800, skyWPerM2: 90, beamUvShare: 0.034, skyUvShare: 0.138 },
};

/** Pairs that the geometry treats alike: the cosine of a turn either way, two slopes that add, two edges. */
export const LIGHT_ALIKE: Readonly<Record<string, readonly string[]>> = {
  "wall-incidence": ["azimuthDeg wallAzimuthDeg"],
  "profile-angle-level": ["azimuthDeg wallAzimuthDeg"],
  "slot-beam-share": ["bevelDeg profileDeg"],
};

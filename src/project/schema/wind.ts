/** Design wind of the place, and the structural code that it is reckoned by. */
import * as z from "zod";
import { figure, note, size } from "./values.ts";

/** Structural codes by their edition; `src/codes/packs` holds one entry for each. */
export const STRUCTURE_CODES = [
  "canada-nbc-2020",
  "usa-asce-7-16",
  "usa-asce-7-22",
  "europe-en-1991-1-4",
] as const;

/** Canada: open, rough. United States: B, C, D. Europe: 0, I, II, III, IV. */
const TERRAINS = ["open", "rough", "B", "C", "D", "0", "I", "II", "III", "IV"] as const;

export type Terrain = (typeof TERRAINS)[number];

const UNITED_STATES = ["B", "C", "D"] as const;

/** The words for terrain that each code reads. */
export const TERRAINS_OF: Readonly<Record<StructureCode, readonly Terrain[]>> = {
  "canada-nbc-2020": ["open", "rough"],
  "usa-asce-7-16": UNITED_STATES,
  "usa-asce-7-22": UNITED_STATES,
  "europe-en-1991-1-4": ["0", "I", "II", "III", "IV"],
};

const positive = figure.extend({ value: z.number().positive() });

export type StructureCode = (typeof STRUCTURE_CODES)[number];

export const wind = z.looseObject({
  note,
  code: z.enum(STRUCTURE_CODES),
  /** United States: gust of three seconds. Europe: ten minutes at 10 m over grass (m/s). Canada takes `windPressure1in50Pa`. */
  speedMPerS: figure.extend({ value: z.number().min(10).max(120) }).optional(),
  terrain: z.enum(TERRAINS).optional(),
  /** Mean height of the roof over the ground; in Europe the ridge. */
  roofHeight: size.optional(),
  /** Lesser and greater dimension of the whole building in plan. */
  plan: z.tuple([size, size]).optional(),
  /** Canada; normal where absent. */
  importance: z.enum(["low", "normal", "high"]).optional(),
  /** How wind gets inside; enclosed where absent. */
  enclosure: z.enum(["enclosed", "partially enclosed"]).optional(),
  /** Factor of a hill or ridge on the pressure; 1 where absent. */
  topography: figure.extend({ value: z.number().min(1).max(4) }).optional(),
  /** Taken off the pressure on open-jointed boards and sheets for bending, never for screws (%). */
  reliefPercent: figure.extend({ value: z.number().min(0).max(60), source: z.string().min(1) }).optional(),
});

/** A span over this number is the most sag. */
export const sagLimits = z.looseObject({
  boards: positive.optional(),
  sheets: positive.optional(),
  battens: positive.optional(),
});

/** What a grade of timber bears, as the tables of the chosen code give it. */
export const timberGrade = z.looseObject({
  note,
  bendingMPa: z.number().positive(),
  modulusMPa: z.number().positive(),
  /** Europe: characteristic (kg/m³). */
  densityKgPerM3: z.number().positive().optional(),
  basis: z.enum(["given", "typical", "memory"]),
  source: z.string().optional(),
});

/** What a screw's data sheet declares. */
export const declaredScrew = z.looseObject({
  note,
  basis: z.enum(["given", "typical", "memory"]),
  source: z.string().optional(),
  /** design: ready to compare with the chosen code's loads. characteristic: before the factors of duration and safety. */
  level: z.enum(["design", "characteristic"]),
  withdrawalNPerMm: z.number().positive().optional(),
  /** Through the wood under the head (N). */
  pullThroughN: z.number().positive().optional(),
  shearN: z.number().positive().optional(),
  tensionN: z.number().positive().optional(),
  threadLength: size.optional(),
  rootDiameter: size.optional(),
  /** Of the wire (MPa). */
  tensileMPa: z.number().min(200).max(2000).optional(),
});

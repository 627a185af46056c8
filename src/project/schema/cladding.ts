/** Claddings and the layers behind them. */
import * as z from "zod";
import { FINISH_KINDS } from "./upkeep.ts";
import { basis, clear, figure, id, lengthFigure, note, size, span } from "./values.ts";
import { sagLimits, timberGrade } from "./wind.ts";

/** Ids of the rule sets of `data/cavity-rules.json`; a test holds the two lists to each other. */
export const CAVITY_RULE_SETS = [
  "canada-nbc",
  "germany-din-18516-1",
  "austria-oenorm-b-8110-2",
  "austria-timber-information",
  "switzerland-practice",
  "united-kingdom-warranty-body",
  "united-kingdom-timber-cladding",
  "united-kingdom-fibre-cement",
  "sweden-practice",
  "new-zealand-e2-as1",
  "usa-green-building-standard",
  "usa-oregon",
] as const;

const boards = z.looseObject({
  id,
  note,
  kind: z.literal("boards"),
  /** Upright boards hang on level rails over the battens, so that water and air pass behind. */
  direction: z.enum(["horizontal", "vertical"]),
  /** Species id of the catalogue, or a word of your own. */
  species: z.string().min(1),
  thickness: size,
  bevelDeg: z.number().min(0).max(45),
  /** Finished face widths, one to three. */
  widths: z.array(size).min(1).max(3),
  /** Least and most gap between courses. */
  gapBand: span,
  /** Gap at a butt joint. */
  endGap: clear,
  maxEqualWidthsTouching: z.int().min(1).optional(),
  /** Longest piece that the stock gives. */
  maxPieceLength: size,
  lots: z.array(id).optional(),
  screw: id,
  /** Width from which a board takes two screws at each batten. */
  twoScrewsFrom: lengthFigure,
  endDistance: lengthFigure,
  edgeDistance: lengthFigure,
  /** How far a board may stand past its last screw. */
  maxOverhang: lengthFigure,
  moisturePercent: z.looseObject({ now: z.number().optional(), atFixing: z.number() }).optional(),
  finish: z.string().optional(),
  finishKind: z.enum(FINISH_KINDS).optional().describe("Which published life its upkeep goes by."),
  /** What is done to the ends as they are cut. */
  cutEnds: z.enum(["sealed", "bare"]).optional(),
  /** The lowest of the chosen code where absent. */
  grade: timberGrade.optional(),
});

const sheets = z.looseObject({
  id,
  note,
  kind: z.literal("sheets"),
  material: z.string().min(1),
  thickness: size,
  joint: size,
  /** What closes level joints from behind, how far it reaches past the joint, and how thick it is; a backing strip where absent. */
  levelJoint: z
    .looseObject({
      behind: z.enum(["open", "backing strip", "drip profile"]),
      cover: size.optional(),
      thickness: size.optional(),
    })
    .optional(),
  stock: z.array(id).min(1),
  /** How sheets stand on the wall, by their long side; upright where absent. */
  lay: z.enum(["upright", "lying", "either"]).optional(),
  screw: id,
  /** What is done to edges as they are cut; `as the data sheet` where it asks for nothing. */
  cutEdges: z.enum(["sealed", "bare", "as the data sheet"]).optional(),
  dataSheet: z.looseObject({
    basis,
    densityKgM3: z.number().positive(),
    modulusMPa: z.number().positive().optional(),
    bendingStrengthMPa: z.number().positive().optional(),
    thermalPerK: z.number().nonnegative(),
    moistureMmPerM: z.number().nonnegative(),
    edgeDistance: span,
    cornerDistance: clear,
    fixingSpacing: span,
    /** Along outside corners and free ends, where wind pulls hardest: how wide, and the spacing there. */
    edgeZone: z.looseObject({ note, width: size, fixingSpacing: span }).optional(),
    maxBattenSpacing: size,
    minJoint: clear,
    pullThroughN: z.number().positive().optional(),
    /** Of the bending strength and the pull-through. design: ready to compare with the chosen code's loads. */
    strengthLevel: z.enum(["design", "characteristic"]).optional(),
    /** Divides characteristic strengths. */
    materialFactor: z.number().min(1).max(5).optional(),
  }),
});

export const cladding = z.discriminatedUnion("kind", [boards, sheets]);

/** A layer outward from the sheathing. `batten` and `counter-batten` name a batten of the stock. */
export const layer = z.discriminatedUnion("kind", [
  z.looseObject({
    kind: z.literal("membrane"),
    thickness: clear,
    lightStable: z.boolean(),
    /** How far the upper sheet laps over the lower, and a sheet over the one beside it. */
    laps: z.looseObject({ level: size, upright: size }).optional(),
    /** The roll that it comes on; 1500 mm by 50 m, which is usual, where absent. */
    roll: z.looseObject({ width: size, length: size }).optional(),
  }),
  z.looseObject({
    kind: z.literal("insulation"),
    thickness: size,
    material: z.string().min(1),
    bearing: z.enum(["soft", "firm"]),
    conductivityWPerMK: z.number().min(0.005).max(5).optional(),
    /** Stress at a tenth of its thickness, EN 826 (kPa). */
    stressAt10PercentKPa: figure.extend({ value: z.number().positive().max(2000) }).optional(),
    /** What holds battens off it where it is soft. */
    battensHeldBy: z.enum(["rigid strips", "adjustable screws", "blocks"]).optional(),
  }),
  z.looseObject({ kind: z.literal("packer"), thickness: size }),
  z.looseObject({ kind: z.literal("batten"), stock: id }),
  z.looseObject({ kind: z.literal("rail"), stock: id }),
  z.looseObject({ kind: z.literal("gasket"), thickness: size }),
]);

export const buildUp = z.looseObject({
  id,
  note,
  layers: z.array(layer).min(1),
  battenScrew: id,
  /** Holds rails to battens; needed where a layer is of rails. */
  railScrew: id.optional(),
});

/** Ultraviolet, 280 to 400 nm, that the membrane stands (MJ/m²). */
const uvDose = z.looseObject({ value: z.number().positive(), basis, source: z.string().optional(), note });

export const limits = z.looseObject({
  note,
  clearances: z.looseObject({
    jamb: lengthFigure,
    head: lengthFigure,
    sill: lengthFigure,
    penetration: lengthFigure,
  }),
  cavityMin: lengthFigure,
  /** The published rule set that governs depth and vents of the cavity here. */
  cavityRules: z.enum(CAVITY_RULE_SETS).optional(),
  /** Share of the vents that dirt, paint and webs leave open. */
  ventsLeftOpen: z
    .looseObject({ value: z.number().positive().max(1), basis, source: z.string().optional() })
    .optional(),
  facesMeetWithin: lengthFigure,
  /** Sliver rule, as a share of the module (the sheet's or board's full size). */
  sliver: z.looseObject({ wish: figure, floor: figure }),
  screwBite: z.looseObject({ cladding: lengthFigure, studs: lengthFigure }),
  /** Most packing behind a batten at one screw, the build-up's own included. */
  packing: lengthFigure.optional(),
  /** How far battens may lean from plumb along and up a wall that was surveyed (mm in a metre); 2 where absent, common practice. */
  lean: lengthFigure.optional(),
  /** Most sag in wind: a span over these numbers. */
  sagSpanOver: sagLimits.optional(),
  /** Whether the wood under and behind the cladding stays under 20 % of moisture; wet where absent. */
  timberService: z.enum(["dry", "wet"]).optional(),
  membrane: z
    .looseObject({
      maxGap: lengthFigure,
      maxOpenPercent: figure,
      maxWeeksUncovered: figure.optional(),
      /** In a year at the brightest point behind its joints. */
      maxUvPerYear: uvDose.optional(),
      /** In all while it is bare, before the cladding covers it. */
      maxUvUncovered: uvDose.optional(),
    })
    .optional(),
});

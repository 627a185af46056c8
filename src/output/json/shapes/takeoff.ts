/** The published shape of `outerleaf takeoff --json`. Lengths in mm; other quantities have their unit in the name. */
import * as z from "zod";
import { findingsShape } from "./finding.ts";

const size = { length: z.number(), width: z.number(), thickness: z.number() };

const piece = z.object({
  mark: z.string(),
  kind: z.string(),
  face: z.string(),
  zone: z.string().optional(),
  course: z.number().int().optional(),
  ...size,
  material: z.string(),
  massKg: z.number(),
  lot: z.string().optional(),
  finish: z.string().optional(),
});

const batten = piece.omit({ course: true, lot: true, finish: true }).extend({
  stock: z.string().optional(),
  ripped: z.boolean().describe("Narrower than what it is cut from."),
  screws: z.array(z.object({ screw: z.string(), count: z.number().int() })),
  packers: z.array(z.object({ thickness: z.number(), count: z.number().int() })),
});

const strip = z.object({
  material: z.string(),
  width: z.number(),
  thickness: z.number(),
  metres: z.number(),
});

const span = z.object({ least: z.number(), most: z.number() });

const finish = z.object({
  cladding: z.string(),
  finish: z.string(),
  areaM2: z.number(),
  coats: z.number().optional(),
  litres: span.optional(),
  dryingDays: z.number().optional().describe("Until the last coat is dry, at a day a coat."),
  coverage: span.extend({ source: z.string() }).optional().describe("m² that a litre covers in one coat."),
});

const orderLine = z.object({
  item: z.string(),
  key: z.string().describe("Key of the item's words in the message catalogues."),
  id: z.string().optional().describe("Id in the project's stock."),
  unit: z.enum(["sheet", "length", "pack", "piece", "m", "m2", "L"]),
  needed: z.number(),
  ordered: z.number().describe("Needed and spare, rounded up to how it is sold."),
  unitPrice: z.number().optional(),
  amount: z.number().optional(),
});

export const shape = z.object({
  schemaVersion: z.literal(1),
  pieces: z.array(piece),
  battens: z.array(batten),
  screws: z.array(
    z.object({
      screw: z.string(),
      count: z.number().int(),
      fixed: z.number().int(),
      sliding: z.number().int(),
      plain: z.number().int(),
    }),
  ),
  areas: z.array(
    z.object({
      face: z.string(),
      zone: z.string(),
      cladding: z.string(),
      gross: z.number().describe("m²"),
      net: z.number().describe("m², less openings"),
      pieces: z.number().describe("m², seen from outside"),
      openSharePercent: z.number(),
    }),
  ),
  masses: z.array(
    z.object({ kind: z.string(), material: z.string(), count: z.number().int(), massKg: z.number() }),
  ),
  massKg: z.number(),
  packers: z.array(z.object({ thickness: z.number(), count: z.number().int() })),
  closures: z.array(strip),
  flashings: z.array(strip),
  gaskets: z.array(strip),
  pans: z.array(strip).describe("Sill pans by developed width."),
  sleeves: z.array(
    z.object({
      material: z.string(),
      diameter: z.number(),
      length: z.number(),
      count: z.number().int(),
    }),
  ),
  layers: z.array(
    z.object({
      kind: z.enum(["membrane", "insulation"]),
      material: z.string().optional(),
      thickness: z.number(),
      areaM2: z.number(),
      roll: z
        .object({ width: z.number(), areaM2: z.number() })
        .optional()
        .describe("Of a membrane: what its strips take, with laps and what is cut off."),
    }),
  ),
  finishes: z.array(finish),
  order: z.object({
    currency: z.string(),
    lines: z.array(orderLine),
    consumables: z.array(orderLine).describe("Blades, bits, tape, sealer; without a price."),
    sum: z.number().describe("Of the lines that have a price."),
    withoutPrice: z.number().int().describe("How many lines have none."),
  }),
  findings: findingsShape.describe("Of cutting: what the order rests on."),
});

export type TakeoffJson = z.output<typeof shape>;

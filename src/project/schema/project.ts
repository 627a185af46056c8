/** The project file, whole. Types, validation and the published JSON Schema all come from here. */
import * as z from "zod";
import { asBuilt } from "./as-built.ts";
import { buildUp, cladding, limits } from "./cladding.ts";
import { crews } from "./crews.ts";
import { corner, face, rod } from "./face.ts";
import { issued, sheets } from "./sheets.ts";
import { roof, site } from "./site.ts";
import { spoiled } from "./spoiled.ts";
import { pile, stock } from "./stock.ts";
import { structure } from "./structure.ts";
import { upkeep } from "./upkeep.ts";
import { id, length, note, ownFigure } from "./values.ts";
import { SCHEMA_VERSION } from "./version.ts";

/** What the longest search for cuts takes, in usual ones. */
export const MOST_EFFORT = 64;

export const project = z.looseObject({
  $schema: z.string().optional(),
  schemaVersion: z.literal(SCHEMA_VERSION),
  title: z.string().min(1),
  about: z.string().optional(),
  /** Revision letter and state, printed in the title block. */
  revision: z.string().optional(),
  note,
  display: z.looseObject({
    note,
    units: z.enum(["mm", "feet-inch"]),
    denominator: z.union([z.literal(16), z.literal(32)]),
    language: z.enum(["en", "fr"]),
  }),
  site,
  roof: roof.optional(),
  structure,
  buildUps: z.array(buildUp).min(1),
  claddings: z.array(cladding).min(1),
  limits,
  /** In place of figures of the reference data, by their names in docs/sources.md. */
  figures: z.record(z.string(), ownFigure).optional(),
  faces: z.array(face).min(1),
  /** Ids of faces, openings, penetrations and lines that were taken out: paper speaks of them, and no new one is given them. */
  retired: z.array(id).optional(),
  corners: z.array(corner).optional(),
  rods: z.array(rod).optional(),
  stock,
  pile: pile.optional(),
  cutting: z
    .looseObject({
      note,
      effort: z
        .int()
        .min(1)
        .max(MOST_EFFORT)
        .optional()
        .describe("How many times the usual number of steps the cuts are searched for."),
      spoiled: z
        .array(spoiled)
        .optional()
        .describe("Stock that the plan reckoned with and that gives nothing: the rest is cut without it."),
    })
    .optional(),
  /** Readings of the wall; positive stands out from the plumb plane. */
  survey: z
    .array(
      z.looseObject({
        face: id,
        x: z.array(length),
        y: z.array(length),
        outward: z.array(z.array(length)),
        /** Readings at places off the grid. */
        places: z.array(z.looseObject({ x: length, y: length, outward: length })).optional(),
        /** Places that were read more than once: what repeats differ by is the error of a reading. */
        again: z.array(z.looseObject({ x: length, y: length, outward: length })).optional(),
      }),
    )
    .optional(),
  asBuilt: asBuilt.optional(),
  crews: crews.optional(),
  /** Figures of your own, by which planes that a wall can be packed to are priced beside each other. */
  packingWork: z
    .looseObject({
      note,
      minutesPerPacker: z.number().min(0).max(600).optional(),
      minutesPerSpot: z.number().min(0).max(6000).optional().describe("To plane the wall back at one place."),
      pricePerPacker: z.number().nonnegative().optional(),
      pricePerHour: z.number().nonnegative().optional(),
    })
    .optional(),
  /** Of the resistance meter that boards are read with as they are fixed. */
  moistureMeter: z
    .looseObject({
      note,
      calibratedAtC: z
        .number()
        .min(0)
        .max(40)
        .describe("Temperature of the wood at which it needs no correction."),
      species: z
        .array(
          z.looseObject({
            species: z.string().min(1),
            points: z.number().min(-10).max(10).describe("What its chart adds, in points of percent."),
          }),
        )
        .optional(),
    })
    .optional(),
  upkeep: upkeep.optional(),
  sheets: sheets.optional(),
  issued: issued.optional(),
  /** Findings that someone answers for. */
  waivers: z
    .array(
      z.looseObject({
        code: z.string(),
        where: z.string().optional(),
        who: z.string().min(1),
        when: z.iso.date(),
        why: z.string().min(1),
      }),
    )
    .optional(),
});

/** The project as it is read: lengths in millimetres on the 1/8000 mm grid. */
export type Project = z.output<typeof project>;
/** The project as it is written in the file. */
export type ProjectDocument = z.input<typeof project>;

export type Face = Project["faces"][number];
export type Opening = Face["openings"][number];
export type Zone = Face["zones"][number];
export type Cladding = Project["claddings"][number];
export type BoardCladding = Extract<Cladding, { kind: "boards" }>;
export type SheetCladding = Extract<Cladding, { kind: "sheets" }>;
export type BuildUp = Project["buildUps"][number];
export type Layer = BuildUp["layers"][number];
export type Corner = NonNullable<Project["corners"]>[number];
export type RodSpec = NonNullable<Project["rods"]>[number];
export type Screw = Project["stock"]["screws"][number];
export type BattenStock = Project["stock"]["battens"][number];
export type PileBoard = NonNullable<Project["pile"]>["boards"][number];

/** JSON Schema 2020-12 of the file as it is written. */
export function projectJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(project, { target: "draft-2020-12", io: "input", unrepresentable: "any" }) as Record<
    string,
    unknown
  >;
}

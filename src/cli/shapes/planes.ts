/** The published shape of `outerleaf planes --json`. Lengths in mm; depths are outward from the sheathing's outer face. */
import * as z from "zod";

const ref = { face: z.string(), zone: z.string() };
const refs = z.array(z.object(ref));

const rule = z.object({
  rule: z.enum([
    "meet",
    "mitre",
    "cavity",
    "cavity-rules",
    "cladding-screw",
    "batten-screw",
    "rail-screw",
    "narrower-batten",
    "frame",
    "proportion",
    "lot",
    "soft-packers",
  ]),
  zones: refs.describe("What it is about; none for a rule on boards."),
  says: z.string(),
  demand: z.number().optional(),
  limit: z.number().optional(),
  unit: z.enum(["mm", "1"]).optional().describe("Unit of demand and limit."),
});

const combination = z
  .object({
    buildUps: z.array(
      z.object({
        buildUp: z.string(),
        battens: z
          .array(z.string())
          .describe("Ids of the stock, battens and rails from the sheathing outward."),
        packers: z.array(z.number()).describe("Thicknesses behind the batten."),
        battenScrew: z.string(),
        railScrew: z.string().optional(),
      }),
    ),
    claddings: z.array(
      z.object({
        cladding: z.string(),
        planed: z.number().describe("Less than the project's thickness by this."),
        thickness: z.number(),
        screw: z.string(),
      }),
    ),
    zones: z.array(
      z.object({
        ...ref,
        faceZ: z.number().describe("Outer plane of the cladding."),
        backZ: z.number().describe("Back of the cladding."),
        cavity: z.number(),
        reveals: z
          .array(z.object({ opening: z.string(), reveal: z.number() }))
          .describe("How far each frame stays behind the plane; below 0 it stands proud."),
      }),
    ),
    meetings: z.array(
      z.object({
        kind: z.enum(["side by side", "open mitre"]),
        left: z.object(ref),
        right: z.object(ref),
        step: z.number().describe("Right plane less left plane."),
        limit: z.number(),
      }),
    ),
    merit: z
      .object({
        broken: z.number().describe("Rules of board proportion that planing breaks."),
        packers: z.number(),
        planing: z.number(),
        cavityShort: z.number(),
        battenCost: z.number().describe("Price of one metre behind each build-up; 0 where one is unknown."),
        battens: z.number().describe("Different battens of the stock."),
        step: z.number(),
        packing: z.number(),
        changes: z.number(),
        plane: z.number(),
      })
      .describe("Ranked by these in this order; less is better."),
    present: z.boolean().describe("The project has it already."),
    why: z.string().describe("What sets it apart from the first of those that pass."),
    failed: z.array(rule),
    attention: z.array(rule),
    edit: z
      .array(
        z.object({
          op: z.enum(["add", "remove", "replace"]),
          path: z.string(),
          value: z.unknown().optional(),
        }),
      )
      .optional()
      .describe("JSON Patch (RFC 6902) that puts it in; can be handed to --edit. Only for those that pass."),
  })
  .meta({ id: "combination" });

const count = z.number().int();

export const shape = z.object({
  schemaVersion: z.literal(1),
  searches: z
    .array(
      z.object({
        zones: refs.describe("Whose build-ups were searched."),
        followers: refs.describe("Zones that change along, because they share a build-up or planed boards."),
        counts: z.object({
          all: count,
          meeting: count.describe("Those whose faces meet; the rest is ruled out by its step alone."),
          passing: count,
          failing: count,
          failingOne: count.describe("Of the failing: those that break one rule."),
        }),
        passing: z.array(combination).describe("Best first."),
        failing: z.array(combination).describe("Those that break one rule first."),
        leftOut: z.object({ passing: count, failing: count }),
        nearest: combination.optional().describe("Where nothing passes: what comes nearest to one plane."),
      }),
    )
    .describe("One for each group of zones whose faces meet."),
});

export type PlanesJson = z.output<typeof shape>;

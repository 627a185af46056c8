/** The published shape of `outerleaf pack --json`. Lengths in mm, in the face frame; leans in mm a metre. */
import * as z from "zod";
import { findingShape } from "../../output/json/shapes/finding.ts";
import { PLANE_KINDS } from "../../site/survey/packing.ts";

const plane = z
  .object({ at: z.number(), alongPerM: z.number(), upPerM: z.number() })
  .describe("outward = at + alongPerM · x/1000 + upPerM · y/1000");

const crossing = z.object({
  batten: z.string().describe("Mark."),
  zone: z.string(),
  x: z.number(),
  y: z.number(),
  wall: z.number().describe("How far the wall stands out there, between its readings."),
  wanted: z
    .number()
    .describe("From the wall to the batten's back; below nothing where the wall is planed off."),
  packers: z.array(z.number()).describe("Thickest first."),
  off: z.number().describe("Their sum less what is wanted."),
  planeOff: z.number(),
  biteLeft: z.number().describe("Of the batten's screw in the timber, behind that packing."),
});

export const shape = z.object({
  schemaVersion: z.literal(1),
  leanPerM: z.number().describe("How far the planes may lean from plumb."),
  repeatError: z
    .object({ deviation: z.number(), freedom: z.number().int() })
    .optional()
    .describe("Standard deviation of one reading, from places that were read more than once."),
  faces: z.array(
    z.object({
      face: z.string(),
      readings: z.array(
        z.object({
          x: z.number(),
          y: z.number(),
          outward: z.number(),
          times: z.number().int(),
          nearest: z.number().optional().describe("From the plane of least squares, positive outside it."),
        }),
      ),
      leastSquares: z.object({ plane, most: z.number() }).optional(),
      smallestBand: z.object({ plane, half: z.number() }).optional(),
      twist: z.number().optional().describe("How far the fourth corner lies off the plane of the others."),
      unread: z.array(z.object({ batten: z.string(), x: z.number(), y: z.number() })),
      packings: z
        .array(
          z.object({
            kind: z.enum(PLANE_KINDS),
            plane,
            sum: z.number(),
            most: z.number(),
            packers: z.array(z.object({ thickness: z.number(), count: z.number().int() })),
            cost: z
              .object({
                packers: z.number().int(),
                spots: z.number().int().describe("Places where the wall is planed off."),
                minutes: z.number().optional(),
                price: z.number().optional().describe("Packers and time, in the project's currency."),
                lacks: z.array(z.string()).describe("Paths of the figures that are missing for it."),
              })
              .describe("By the project's own figures, packingWork."),
            crossings: z.array(crossing),
          }),
        )
        .describe("The least packing first."),
    }),
  ),
  corners: z
    .array(z.object({ left: z.string(), right: z.string(), foot: z.number(), head: z.number() }))
    .describe(
      "Where two faces that were read meet: how far their own outer planes would stand off otherwise than one another, the left one's less the right one's, at the lowest and the highest crossing. Joined planes stand off alike.",
    ),
  findings: z
    .array(findingShape)
    .describe("Of the joined plane where a face has one, else of the outer one: neither needs planing."),
});

export type PackJson = z.output<typeof shape>;

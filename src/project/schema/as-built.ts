/** What was measured of openings and ends, and how the cladding was laid again for it. `docs/decisions/0022` says how. */
import * as z from "zod";
import { id, length, lengthFigure, note, size, span } from "./values.ts";

const measuredOpening = z.looseObject({
  face: id,
  opening: id,
  left: length.optional().describe("Of the left jamb, in the face frame."),
  width: size.optional(),
  sill: length.optional().describe("Above the datum."),
  height: size.optional(),
  diagonals: z
    .tuple([size, size])
    .optional()
    .describe("From the lower left to the upper right corner, and from the lower right to the upper left."),
  note,
});

const measuredEnd = z.looseObject({
  face: id,
  end: z.enum(["left", "right"]),
  at: length.describe("Where the sheathing ends, in the face frame."),
  note,
});

/** An edge: where it was and where it is. */
const move = z.tuple([length, length]);

const laidPiece = z.looseObject({
  mark: z.string().min(1),
  x: z.array(move).describe("Of its upright edges, from and to."),
  y: z.array(move).describe("Of its level edges, from and to."),
});

const laidFace = z.looseObject({
  face: id,
  drawn: z
    .array(z.looseObject({ opening: id, x: span, y: span }))
    .describe("Openings as they were when the cladding was set out."),
  pieces: z.array(laidPiece),
});

const weight = z.int().min(0).max(1000);

export const asBuilt = z.looseObject({
  note,
  openings: z.array(measuredOpening).optional(),
  ends: z.array(measuredEnd).optional(),
  within: z
    .looseObject({
      joint: lengthFigure.optional().describe("How far a joint may be from what it was set out to."),
      clearance: lengthFigure
        .optional()
        .describe("How far the clearance beside an opening may be from its own."),
    })
    .optional(),
  weights: z
    .looseObject({
      trimCut: weight.optional(),
      trimFinished: weight.optional(),
      remakeCut: weight.optional(),
      remakeFinished: weight.optional(),
    })
    .optional()
    .describe("What it costs to trim a piece or to make it again, by its stage, against each other."),
  laid: z.array(laidFace).optional(),
});

export type AsBuilt = z.output<typeof asBuilt>;
export type LaidRecord = NonNullable<AsBuilt["laid"]>[number];
export type LaidPiece = LaidRecord["pieces"][number];

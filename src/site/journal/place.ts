/** Where an entry belongs on the facade. */
import * as z from "zod";
import { id } from "../../project/schema/values.ts";

/** As drawings and labels print it. */
export const mark = z
  .string()
  .regex(/^[A-Za-z][A-Za-z0-9.-]{0,47}$/)
  .describe("A piece's mark, as on its label.");

/** Farther than any building reaches (mm). */
export const FARTHEST_MM = 200_000;

const millimetres = z.number().min(-FARTHEST_MM).max(FARTHEST_MM);

/** A face, and as much more as is known. */
export const place = z
  .strictObject({
    face: id.optional(),
    piece: mark.optional(),
    opening: id.optional(),
    x: millimetres.optional().describe("Millimetres in the face frame, to the right seen from outside."),
    y: millimetres.optional().describe("Millimetres in the face frame, up from the datum."),
  })
  .describe("Where on the facade; empty for the whole job.");

export const onPiece = place.required({ piece: true });
export const onFace = place.required({ face: true });
export const onOpening = place.required({ face: true, opening: true });
/** A node of the grid, or a crossing of battens. */
export const atPoint = place.required({ face: true, x: true, y: true });

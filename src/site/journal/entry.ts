/**
 * What a device tells of the site: one entry, made whole before it is sent. `docs/decisions/0020` says how entries are
 * kept and corrected.
 */
import * as z from "zod";
import { id } from "../../project/schema/values.ts";
import { atPoint, FARTHEST_MM, onFace, onOpening, onPiece, place } from "./place.ts";

/** Most that one note, name or reason may hold, in UTF-16 units. */
const LONGEST_TEXT = 2000;

/** As many entries can be taken back by one. */
const MOST_CORRECTED = 50;

const MOST_PHOTOS = 20;

export const entryId = z
  .string()
  .regex(/^[0-9a-f]{16,32}-[1-9][0-9]{0,8}$/)
  .describe("The device's own name in hexadecimal, a hyphen, and the number of what it told: 1, 2, 3 …");

const text = z.string().trim().min(1).max(LONGEST_TEXT);
const name = z.string().trim().min(1).max(100);
const photo = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .describe("SHA-256 of the picture's bytes.");
const photos = z.array(photo).max(MOST_PHOTOS);

/** Moisture of the wood by mass, percent of the dry mass. */
const moisturePercent = z.number().min(0).max(200);

const common = {
  id: entryId,
  told: z.iso.datetime().describe("The device's own time, UTC; it is told and never ordered by."),
  corrects: z
    .array(entryId)
    .min(1)
    .max(MOST_CORRECTED)
    .optional()
    .describe("Earlier entries of this kind that no longer count."),
};

/** In the order of the work. */
export const STAGES = ["cut", "finished", "delivered", "fixed"] as const;
export type Stage = (typeof STAGES)[number];

/** Broken on the way or in the hand, never come, or made to another size than drawn. */
export const SHORTAGES = ["broken", "missing", "other-size"] as const;

export const HOLD_POINTS = ["H1", "H2", "H3", "H4", "H5", "H6"] as const;

const kinds = [
  z.strictObject({
    ...common,
    kind: z.literal("piece"),
    place: onPiece,
    body: z.strictObject({ stage: z.enum(STAGES), batch: name.optional(), says: text.optional() }),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("reading"),
    place: atPoint,
    body: z.strictObject({
      outward: z
        .number()
        .min(-1000)
        .max(1000)
        .describe("Millimetres, positive where the wall stands out from the plumb plane."),
    }),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("opening"),
    place: onOpening,
    body: z
      .strictObject({
        width: z.number().positive().max(20_000).optional(),
        height: z.number().positive().max(20_000).optional(),
        left: z.number().optional().describe("Of the left jamb, in the face frame."),
        sill: z.number().optional().describe("Above the datum."),
        diagonals: z.tuple([z.number().positive(), z.number().positive()]).optional(),
      })
      .describe("As measured, in millimetres."),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("end"),
    place: onFace,
    body: z.strictObject({
      end: z.enum(["left", "right"]),
      at: z
        .number()
        .min(-FARTHEST_MM)
        .max(FARTHEST_MM)
        .describe("Where the sheathing ends, in millimetres of the face frame."),
    }),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("moisture"),
    place,
    body: z.strictObject({
      meterPercent: moisturePercent.describe("As the meter shows it, before any correction."),
      temperatureC: z.number().min(-40).max(60).optional().describe("Of the wood."),
      species: name.optional(),
      meter: name.optional(),
    }),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("photo"),
    place,
    body: z.strictObject({ photo, says: text.optional() }),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("hold-point"),
    place: onFace,
    body: z.strictObject({
      point: z.enum(HOLD_POINTS),
      signed: name.describe("Who looked and signs."),
      seen: z.array(text).max(50).describe("What was seen, item by item."),
      photos: photos.min(1),
    }),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("finding"),
    place,
    body: z.strictObject({ says: text, photos: photos.optional() }),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("short"),
    place: onPiece,
    body: z.strictObject({
      why: z.enum(SHORTAGES).describe("Why the piece is not there to be fixed."),
      says: text.optional(),
      photos: photos.optional(),
    }),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("settled"),
    place,
    body: z.strictObject({
      finding: entryId.describe("The entry that raised it."),
      says: text.optional(),
      photos: photos.optional(),
    }),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("note"),
    place,
    body: z.strictObject({ says: text, photos: photos.optional() }),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("upkeep"),
    place,
    body: z.strictObject({
      task: id.describe("Of the upkeep schedule."),
      says: text.optional(),
      finish: name.optional(),
      meterPercent: moisturePercent.optional(),
      photos: photos.optional(),
    }),
  }),
  z.strictObject({
    ...common,
    kind: z.literal("undone"),
    corrects: z
      .array(entryId)
      .min(1)
      .max(MOST_CORRECTED)
      .describe("Entries of any kind that are taken back."),
    place,
    body: z.strictObject({ says: text.optional() }),
  }),
] as const;

export const ENTRY_KINDS = kinds.map(({ shape }) => shape.kind.value);

export const entryShape = z
  .discriminatedUnion("kind", kinds)
  .refine(({ id: own, corrects }) => !corrects?.includes(own), { path: ["corrects"] })
  .describe("An entry as its device made it.");

export type Entry = z.output<typeof entryShape>;
export type EntryKind = Entry["kind"];
export type EntryOf<Kind extends EntryKind> = Extract<Entry, { readonly kind: Kind }>;

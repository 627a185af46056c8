/** What is done to the facade in the years after it was handed over. */
import * as z from "zod";
import { id, note } from "./values.ts";

/** In the order in which a year goes round the house. */
export const UPKEEP_TASKS = ["look", "joints", "wash", "finish", "wear"] as const;
export type UpkeepTask = (typeof UPKEEP_TASKS)[number];

/** Kinds of finish whose life is published; `data/finishes.json` holds their years. */
export const FINISH_KINDS = [
  "water-repellent-preservative",
  "tinted-clear",
  "semitransparent-stain",
  "semitransparent-stain-one-coat-smooth",
  "semitransparent-stain-two-coats-sawn",
  "solid-colour-stain",
  "paint",
  "charred-re-oiling",
  "charred-brushed-re-oiling",
  "charred-left-alone",
] as const;

/** A century: no finish and no owner asks for less. */
const LONGEST_MONTHS = 1200;

export const upkeep = z.looseObject({
  note,
  since: z.iso.date().optional().describe("When the facade was handed over: upkeep counts from then."),
  every: z
    .array(
      z.looseObject({
        task: z.enum(UPKEEP_TASKS),
        face: id.optional().describe("All faces where absent."),
        months: z.int().min(1).max(LONGEST_MONTHS),
        note,
      }),
    )
    .optional()
    .describe("How often, in place of what is usual; one for a face goes before one for all."),
});

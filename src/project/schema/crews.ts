/** Who does what on site: the day's list is given out by it. */
import * as z from "zod";
import { id, note } from "./values.ts";

/** In the order of the work, from the wall outward. */
export const WORK_STEPS = ["membrane", "flashings", "timber", "closures", "cladding", "trims"] as const;
export type WorkStepName = (typeof WORK_STEPS)[number];

/** More lifts no scaffold has. */
const MOST_LIFTS = 100;

const crew = z.looseObject({
  note,
  name: z.string().trim().min(1).max(40),
  /** Empty where what it did stood on a face that is no more. */
  work: z.array(
    z.looseObject({
      note,
      face: id,
      steps: z.array(z.enum(WORK_STEPS)).min(1).optional().describe("All where absent."),
      lifts: z
        .array(z.int().min(1).max(MOST_LIFTS))
        .min(1)
        .optional()
        .describe(
          "Of the scaffold, 1 at the ground; all where absent. Work that is not done by lifts is left out.",
        ),
    }),
  ),
});

export const crews = z.array(crew).describe("What two crews are given is the first one's.");

export type Crews = z.output<typeof crews>;

/** The published shape of `outerleaf take-in --json`. */
import * as z from "zod";
import { findingsShape } from "../../output/json/shapes/finding.ts";

export const shape = z.object({
  schemaVersion: z.literal(1),
  file: z.string(),
  into: z.string().optional().describe("The project that it goes into; absent where one is begun."),
  written: z
    .object({
      file: z.string(),
      bytes: z.number().int(),
      sha256: z.string().regex(/^[0-9a-f]{64}$/),
    })
    .optional()
    .describe("Absent without --to: nothing is written then."),
  changes: z.array(z.string()).describe("What is otherwise then, a sentence each."),
  findings: findingsShape,
});

export type TakeInJson = z.output<typeof shape>;

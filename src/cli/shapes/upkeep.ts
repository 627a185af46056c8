/** The published shape of `outerleaf upkeep --json`. Days as ISO 8601 has them. */
import * as z from "zod";
import { UPKEEP_TASKS } from "../../project/schema/upkeep.ts";

export const shape = z.object({
  schemaVersion: z.literal(1),
  since: z.string().optional().describe("When the facade was handed over."),
  lines: z
    .array(
      z.object({
        task: z.enum(UPKEEP_TASKS),
        face: z.string(),
        cladding: z.string().optional().describe("Whose finish is renewed."),
        months: z.number().int().optional().describe("Absent where nothing tells how often."),
        basis: z.enum(["given", "typical", "derived", "memory"]),
        why: z.string(),
        source: z.object({
          kind: z.enum(["document", "common practice", "your data sheet", "your project"]),
          document: z.string().optional(),
        }),
        next: z.string().optional(),
      }),
    )
    .describe("Face by face."),
});

export type UpkeepJson = z.output<typeof shape>;

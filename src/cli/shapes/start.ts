/** The published shape of `outerleaf start --json`: printed once the documents are written, before the page is served. */
import * as z from "zod";
import { findingShape } from "../../output/json/shapes/finding.ts";

export const shape = z.object({
  schemaVersion: z.literal(1),
  file: z.string(),
  folder: z.string(),
  manifest: z.string(),
  documents: z.array(z.object({ name: z.string(), bytes: z.number().int(), sha256: z.string() })),
  counts: z.object({
    sheets: z.number().int(),
    boards: z.number().int(),
    battens: z.number().int(),
    screws: z.number().int(),
  }),
  findings: z.array(findingShape).describe("Those that are to be settled."),
  address: z.url().optional().describe("Of the page; none with --once."),
});

export type StartJson = z.output<typeof shape>;

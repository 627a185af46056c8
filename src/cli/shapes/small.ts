/** The published shapes of the commands that say little: new, check, prove, issue, serve, and every refusal. */
import * as z from "zod";
import { findingShape, findingsShape } from "../../output/json/shapes/finding.ts";

const schemaVersion = z.literal(1);
const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

export const newShape = z.object({ schemaVersion, file: z.string(), bytes: z.number().int(), sha256 });

export const checkShape = z.object({
  schemaVersion,
  file: z.string(),
  usable: z.boolean().describe("Whether the file can be designed from; false ends with code 2."),
  findings: findingsShape,
});

export const proveShape = z.object({ schemaVersion, findings: findingsShape });

export const issueShape = z.object({
  schemaVersion,
  folder: z.string(),
  manifest: z.string(),
  documents: z.array(z.object({ name: z.string(), bytes: z.number().int(), sha256 })),
  frozen: z
    .int()
    .positive()
    .optional()
    .describe("The number of the set in the database, where a revision was given."),
  findings: z.array(findingShape).describe("Those that are to be settled."),
});

export const serveShape = z.object({ schemaVersion, address: z.url(), file: z.string() });

export const refusedShape = z
  .object({
    schemaVersion,
    refused: z.string().describe("What cannot be used."),
    hint: z.string().optional().describe("What would mend it."),
    findings: findingsShape.describe("One for each problem of the file; none for a mistyped command."),
  })
  .describe("Printed instead of a command's own shape when it ends with code 2.");

/** The file `manifest.json` of an issue; it also marks the folder as one that may be written anew. */
export const manifestShape = z.object({
  schemaVersion,
  writtenBy: z.literal("outerleaf issue"),
  version: z.string(),
  project: z.string(),
  revision: z.string(),
  language: z.enum(["en", "fr"]),
  units: z.enum(["mm", "feet-inch"]),
  input: z.object({ name: z.string(), sha256 }),
  edit: z.object({ name: z.string(), sha256 }).optional(),
  documents: z.array(z.object({ name: z.string(), bytes: z.number().int(), sha256 })),
});

export type IssueJson = z.output<typeof issueShape>;

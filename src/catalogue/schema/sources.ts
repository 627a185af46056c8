/** `data/sources.json`: the documents that figures name. */
import * as z from "zod";
import { idSchema } from "./figure.ts";

export const sourcesFileSchema = z.record(
  idSchema,
  z.strictObject({
    document: z.string().min(1),
    edition: z.string().min(1).optional(),
    clause: z.string().min(1).optional(),
    kind: z.enum(["standard", "handbook", "guidance", "derived", "common-practice", "memory"]),
    note: z.string().min(1).optional(),
  }),
);
export type SourcesFile = z.infer<typeof sourcesFileSchema>;
export type Source = SourcesFile[string];

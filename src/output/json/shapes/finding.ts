/** Findings in the published shapes. */
import * as z from "zod";

/** A figure or text that a sentence was made with. */
type ValueShape = string | number | ValueShape[];
const value: z.ZodType<ValueShape> = z.lazy(() => z.union([z.string(), z.number(), z.array(value)]));

const values = z.record(z.string(), value).describe("What was put into the sentence; lengths in mm.");
const key = z.string().describe("Key of the sentence in the message catalogues, the same in every language.");

const patch = z.array(
  z.object({
    op: z.enum(["add", "remove", "replace"]),
    path: z.string(),
    value: z.unknown().optional(),
  }),
);

const basis = z.enum(["given", "typical", "derived", "memory"]);

export const findingShape = z
  .object({
    code: z
      .string()
      .regex(/^[FSPCM]\d{3}$/)
      .describe("Code of the rule; never renamed, never reused."),
    rule: z.string().describe("Short English name of the rule."),
    outcome: z.enum(["pass", "fail", "attention", "not applicable", "cannot evaluate"]),
    provisional: z.boolean().describe("A pass that rests on a typical value or one from memory."),
    waived: z.object({ who: z.string(), when: z.string(), why: z.string() }).optional(),
    where: z.object({
      path: z.string().optional().describe("JSON Pointer (RFC 6901) into the project file."),
      face: z.string().optional(),
      zone: z.string().optional(),
      opening: z.string().optional(),
      marks: z.array(z.string()).optional(),
      at: z.array(z.number()).length(2).optional().describe("Point of the face frame, mm."),
    }),
    says: z.string().describe("The sentence, in the language asked for."),
    key,
    values,
    hint: z.string().optional().describe("What would mend it."),
    demand: z.number().optional(),
    limit: z.number().optional(),
    unit: z.string().optional().describe("Unit of demand and limit."),
    ratio: z.number().optional().describe("Above 1 fails."),
    working: z
      .object({
        formula: z.string(),
        inputs: z.array(
          z.object({ symbol: z.string(), meaning: z.string(), value: z.number(), unit: z.string(), basis }),
        ),
        substituted: z.string(),
      })
      .optional(),
    source: z.object({
      kind: z.enum(["document", "common practice", "your data sheet", "your project"]),
      document: z.string().optional(),
      clause: z.string().optional(),
    }),
    figures: z
      .array(z.string())
      .optional()
      .describe(
        "Figures of the reference data that it rests on; `figures` of the project file replaces one.",
      ),
    edit: patch.optional().describe("JSON Patch (RFC 6902) that mends it; can be handed to --edit."),
    choices: z
      .array(
        z.object({
          says: z.string().describe("What would be done, in the language asked for."),
          key,
          values,
          edit: patch
            .optional()
            .describe("Can be handed to --edit; none where the mend cannot be written into the file."),
        }),
      )
      .optional()
      .describe("Every way to mend it that is known, best first; each edit has been tried on the project."),
  })
  .meta({ id: "finding" });

export const findingsShape = z.array(findingShape).describe("What is to be settled first comes first.");

export type FindingJson = z.output<typeof findingShape>;

/** Values that the project file is made of. Lengths are read as millimetres; text with a unit is turned into them. */
import * as z from "zod";
import { parseLength } from "../../units/feet-inch.ts";
import { snap } from "../../units/length.ts";

/** A word that names a thing: letters, figures and hyphens. Marks are made from these, so they stay short. */
export const id = z
  .string()
  .regex(/^[A-Za-z][A-Za-z0-9-]{0,23}$/)
  .describe("Letters, figures and hyphens, starting with a letter, 24 at most.");

/** A picture by its bytes: wherever it lies, it is this one. */
export const PICTURE_NAME = /^[0-9a-f]{64}$/;

export const picture = z
  .string()
  .regex(PICTURE_NAME)
  .describe(
    "SHA-256 of the picture's bytes, in hexadecimal; the workbench keeps the picture beside the project.",
  );

/** Words for whoever reads the file; nothing is made of them. */
export const note = z.string().optional();

/** A reach that no building leaves: it catches metres typed as millimetres and slipped decimal signs. */
const FARTHEST_MM = 200_000;

/** A length or position: a number of millimetres, or text with its unit such as `3'-4 1/2"`, `40 1/2 in`, `95.5 cm`. */
export const length = z
  .union([
    z.number(),
    z.string().transform((text, context) => {
      const parsed = parseLength(text, "mm");
      if (parsed.ok) return parsed.value;
      context.addIssue({ code: "custom", params: { kind: "length" }, message: text, input: text });
      return z.NEVER;
    }),
  ])
  .transform((mm) => snap(mm))
  .pipe(z.number().min(-FARTHEST_MM).max(FARTHEST_MM))
  // The published schema sees what is written, before it becomes a number: the bounds are told to it apart.
  .meta({ minimum: -FARTHEST_MM, maximum: FARTHEST_MM })
  .describe('Millimetres, or text with a unit: 950, "95.5 cm", "3\'-4 1/2\\"".');

/** A length that must be more than nothing. */
export const size = length.pipe(z.number().positive()).meta({ exclusiveMinimum: 0 });

/** A length that may be nothing, but not less. */
export const clear = length.pipe(z.number().nonnegative()).meta({ minimum: 0 });

export const point = z.tuple([length, length]);

/** Two lengths, the lesser first; `project/check` sees to the order. */
export const span = z.tuple([length, length]);

export const basis = z
  .enum(["given", "typical", "memory"])
  .describe("given: yours or your data sheet's; typical: usual for the kind; memory: to be confirmed.");

/** A limit with where it comes from. */
export const figure = z.looseObject({ value: z.number(), basis, source: z.string().optional(), note });

/** A length with where it comes from. */
export const lengthFigure = z.looseObject({ value: clear, basis, source: z.string().optional(), note });

/** A figure of the reference data as it is here: a number, a span, or the word of a class. */
export const ownFigure = z.looseObject({
  value: z.union([
    z.number(),
    z.string().min(1),
    z.looseObject({ min: z.number().optional(), max: z.number().optional() }),
  ]),
  /** The unit that the reference data gives it in; none for words and plain ratios. */
  unit: z.string().optional(),
  source: z.string().optional(),
  note,
});

/** Twelve monthly values, January first. */
export const months = z.array(z.number()).length(12);

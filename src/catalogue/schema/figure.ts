/** The shape of every figure in `data/`: a value that says its unit, where it stands and how we came by it. */
import * as z from "zod";

/**
 * How a figure came to us. `published`: read in the issuing body's own text. `seen-secondary`: read in a reprint or a
 * quotation of it. `derived`: worked out from figures that were read. `memory`: remembered, and to be confirmed before
 * it is relied on. `common-practice`: what the trade does, no document. `invented`: made for the demonstration.
 */
export const basisSchema = z.enum([
  "published",
  "seen-secondary",
  "derived",
  "memory",
  "common-practice",
  "invented",
]);
/** `given`: put in the catalogue's place by a project file; no file of `data/` may say so. */
export type Basis = z.infer<typeof basisSchema> | "given";

/** The closed list of units. `1` is a plain ratio; `1/%MC` is a share of the dimension for one point of moisture content. */
export const unitSchema = z.enum([
  "1",
  "%",
  "1/%MC",
  "1e-6/K",
  "MPa",
  "N/m2",
  "kg/m3",
  "kg/m2",
  "mm",
  "mm/m",
  "cm",
  "m",
  "in",
  "ft",
  "m2",
  "ft2",
  "cm2/m",
  "mm2/m",
  "m2/L",
  "m2/s",
  "m/s",
  "W/m2",
  "W/mK",
  "m2K/W",
  "mbar",
  "deg",
  "°C",
  "years",
  "count",
  "diameters",
]);

export const idSchema = z.string().regex(/^[A-Za-z0-9#/.]+(-[A-Za-z0-9#/.]+)*$/);

const provenance = {
  /** Key into `data/sources.json`: where the figure stands, whether or not that place was opened. */
  source: idSchema,
  basis: basisSchema as z.ZodType<Basis>,
  note: z.string().min(1).optional(),
};

export const figureSchema = z.strictObject({ value: z.number(), unit: unitSchema, ...provenance });
/** One number with its unit, source and basis. */
export type Figure = z.infer<typeof figureSchema>;

export const rangeSchema = z.strictObject({
  value: z
    .strictObject({ min: z.number().optional(), max: z.number().optional() })
    .refine((range) => range.min !== undefined || range.max !== undefined, "a range needs a bound")
    .refine((range) => (range.min ?? -Infinity) <= (range.max ?? Infinity), "min is above max"),
  unit: unitSchema,
  ...provenance,
});
/** A span of values; one bound may be open. */
export type RangeFigure = z.infer<typeof rangeSchema>;

export const monthlySchema = z.strictObject({
  value: z.array(z.number()).length(12),
  unit: unitSchema,
  ...provenance,
});
/** Twelve values, January first. */
export type MonthlyFigure = z.infer<typeof monthlySchema>;

export const quantitySchema = z.union([figureSchema, rangeSchema]);
/** What a source gives for one property: a number or a span. */
export type Quantity = z.infer<typeof quantitySchema>;

export const statementSchema = z.strictObject({ key: idSchema, ...provenance });
/** A fact without a number; its wording is in the message catalogues. */
export type Statement = z.infer<typeof statementSchema>;

export const jurisdictionSchema = z.enum([
  "austria",
  "canada",
  "france",
  "germany",
  "new-zealand",
  "scotland",
  "sweden",
  "switzerland",
  "united-kingdom",
  "usa",
]);
export type Jurisdiction = z.infer<typeof jurisdictionSchema>;

/** The published shape of `outerleaf reckon --json`: the list of equations, or one of them worked. */
import * as z from "zod";

const schemaVersion = z.literal(1);
const input = z.object({
  key: z.string(),
  unit: z.string(),
  range: z.array(z.number()).length(2).describe("Least and most for which the source stands."),
});
const source = z.object({ document: z.string(), clause: z.string().optional() });

const list = z.object({
  schemaVersion,
  equations: z.array(
    z.object({
      name: z.string(),
      formula: z.string(),
      inputs: z.array(input),
      result: z.object({ unit: z.string() }),
      source,
    }),
  ),
});

const worked = z.object({
  schemaVersion,
  name: z.string(),
  formula: z.string(),
  inputs: z.array(input.extend({ value: z.number() })),
  outcome: z.enum(["pass", "cannot evaluate"]),
  outside: z.array(z.string()).describe("Inputs outside their range: then there is no value."),
  substituted: z.string(),
  result: z.object({ unit: z.string(), value: z.number().optional() }),
  source,
});

export const shape = z.union([list, worked]);
export type ReckonJson = z.output<typeof shape>;

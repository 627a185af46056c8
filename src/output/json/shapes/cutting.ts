/** Parts that the published shapes of `cut` and `saw` share. Lengths in mm; the sheet frame has x along the width. */
import * as z from "zod";

export const span = z.object({ from: z.number(), to: z.number() });
const rectangle = { x: z.number(), y: z.number(), width: z.number(), height: z.number() };

/** A region of a sheet and what the saw does with it. */
export interface TreeShape {
  x: number;
  y: number;
  width: number;
  height: number;
  cut?: { along: "x" | "y"; at: number } | undefined;
  children?: TreeShape[] | undefined;
  piece?: string | undefined;
  offcut?: true | undefined;
}

export const tree: z.ZodType<TreeShape> = z
  .object({
    ...rectangle,
    cut: z
      .object({ along: z.enum(["x", "y"]), at: z.number() })
      .optional()
      .describe("Right through the region; the blade takes the kerf from `at` up."),
    children: z.array(z.lazy(() => tree)).optional(),
    piece: z.string().optional(),
    offcut: z.literal(true).optional(),
  })
  .meta({ id: "cut-tree" });

export const offcut = z.object(rectangle);

export const placed = { ...rectangle, turned: z.boolean() };

export const reason = z.enum(["no-stock", "too-large", "no-match", "stock-used-up"]);

/** What a plan costs, what no plan can cost less than, and how that is known. */
export const claim = {
  cost: z.number(),
  bound: z.number(),
  gap: z.number().describe("(cost − bound) / cost"),
  proof: z
    .enum(["none", "total", "large-pieces", "dual-feasible", "pattern-lp", "guillotine-lp"])
    .describe("How the bound was reached."),
  proven: z.boolean().describe("No plan costs less."),
};

export const searched = { iterations: z.number().int(), seed: z.number().int() };

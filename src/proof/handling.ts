/** P016: pieces too heavy for one person. */
import { type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import type { FaceContext } from "./context.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

export function handling({ zones, demands }: FaceContext): Finding[] {
  const limit = demands.onePersonKg;
  return zones.flatMap((view) => {
    const heaviest = greatest(view.pieces, ({ massKg }) => massKg);
    if (!heaviest) return [];
    const heavy = view.pieces.filter(({ massKg }) => !holds("at most", { demand: massKg, limit }));
    const light = heavy.length === 0;
    return [
      finding({
        code: "P016",
        outcome: light ? "pass" : "attention",
        where: { marks: light ? [heaviest.mark] : heavy.map(({ mark }) => mark), ...view.where },
        says: message(light ? "proof.handling.light" : "proof.handling.heavy", {
          mass: heaviest.massKg,
          mark: heaviest.mark,
          count: heavy.length,
          limit,
        }),
        ...(light ? {} : { hint: message("proof.handling.two") }),
        ...compared("at most", { demand: heaviest.massKg, limit, unit: "kg" }),
        working: {
          formula: "m ≤ m_1",
          inputs: [
            input("m", { meaning: "piece-mass", value: heaviest.massKg, unit: "kg", basis: "typical" }),
            input("m_1", { meaning: "one-person", value: limit, unit: "kg", basis: "typical" }),
          ],
          substituted: `${written(heaviest.massKg)} ${light ? "≤" : ">"} ${limit}`,
        },
        source: { kind: "common practice" },
      }),
    ];
  });
}

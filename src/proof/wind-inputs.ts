/** P054: what is missing before anything can be judged in wind, one finding a field. */
import { type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import type { ProofContext } from "./context.ts";

export function windInputs({ demands: { structure } }: ProofContext): Finding[] {
  const lacks = structure.known ? (structure.wind.known ? [] : structure.wind.lacks) : structure.lacks;
  return lacks.map(({ path, key }) =>
    finding({
      code: "P054",
      outcome: "cannot evaluate",
      where: { path: path.replace(/\/$/, "") },
      says: message(key),
      hint: message("structure.wind.rests"),
      source: { kind: "your project" },
    }),
  );
}

/** P040: ends and edges that a saw opens drink water, and are sealed as they are cut. */
import { type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import type { ProofContext } from "./context.ts";

export function cutEnds({ project }: ProofContext): Finding[] {
  return project.claddings.map((cladding, index) => {
    const boards = cladding.kind === "boards";
    const done = boards ? cladding.cutEnds : cladding.cutEdges;
    const kind = boards ? "boards" : "sheets";
    const key = done === undefined ? "unknown" : done === "bare" ? "bare" : "sealed";
    return finding({
      code: "P040",
      outcome: key === "unknown" ? "cannot evaluate" : key === "bare" ? "attention" : "pass",
      where: { path: `/claddings/${index}/${boards ? "cutEnds" : "cutEdges"}` },
      says: message(`proof.ends.${kind}-${key}`),
      ...(key === "sealed" ? {} : { hint: message("proof.ends.seal") }),
      source: boards ? { kind: "common practice" } : { kind: "your data sheet" },
    });
  });
}

/** P010: painted boards in the pile. Old paint may hold lead; dust and fumes from it poison. */
import { type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import type { ProofContext } from "./context.ts";

/** What people write of a painted face, in the two languages of the project file. */
const PAINTED = /\b(re)?paint|\bpeint/i;

export function oldPaint({ project }: ProofContext): Finding[] {
  const { pile } = project;
  if (!pile) return [];
  const drawnOn = new Set(
    project.claddings.flatMap((one) => (one.kind === "boards" ? (one.lots ?? []) : [])),
  );
  return pile.lots.flatMap((lot, index) => {
    if (!drawnOn.has(lot.id)) return [];
    const boards = pile.boards.filter(({ lot: of }) => of === lot.id);
    const painted = boards.filter(({ face }) => face !== undefined && PAINTED.test(face));
    if (painted.length === 0) return [];
    return [
      finding({
        code: "P010",
        outcome: "attention",
        where: { path: `/pile/lots/${index}`, marks: painted.map(({ id }) => id) },
        says: message("proof.paint.old", { lot: lot.id, count: painted.length, of: boards.length }),
        hint: message("proof.paint.test"),
        source: { kind: "common practice" },
      }),
    ];
  });
}

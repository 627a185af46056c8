/** P007: the span of boards and sheets between the battens that hold them. */
import { type Basis, type Finding, finding, type Source } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { railsOf, widestSpan } from "./spans.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

export function battenSpacing(context: FaceContext): Finding[] {
  return context.zones.flatMap((view) => {
    const rails = railsOf(view);
    const spans = view.pieces.map((piece) => ({ mark: piece.mark, span: widestSpan(rails, piece) }));
    const governing = greatest(
      spans.flatMap(({ mark, span }) => (span === undefined ? [] : [{ mark, span }])),
      ({ span }) => span,
    );
    if (!governing) return [];
    return [judged(context, { view, ...governing })];
  });
}

interface Spanning {
  readonly view: ZoneView;
  readonly mark: string;
  readonly span: number;
}

function judged(context: FaceContext, { view, mark, span }: Spanning): Finding {
  const { most, better, basis, source } = limitsOf(context, view);
  const close = holds("at most", { demand: span, limit: most });
  const good = holds("at most", { demand: span, limit: better });
  const outcome = good ? "pass" : close ? "attention" : "fail";
  const key = { pass: "close", attention: "better-closer", fail: "wide" }[outcome];
  const limit = outcome === "attention" ? better : most;
  return finding({
    code: "P007",
    outcome,
    where: { path: view.claddingPath, marks: [mark], ...view.where },
    says: message(`proof.battens.${key}`, { spacing: span, most, better }),
    ...(outcome === "pass" ? {} : { hint: message("proof.battens.add") }),
    ...compared("at most", { demand: span, limit, unit: "mm" }),
    working: {
      formula: "s ≤ s_max",
      inputs: [
        input("s", { meaning: "batten-spacing", value: span, unit: "mm", basis: "derived" }),
        input("s_max", { meaning: "largest-batten-spacing", value: limit, unit: "mm", basis }),
      ],
      substituted: `${written(span)} ${span <= limit ? "≤" : ">"} ${limit}`,
    },
    source,
  });
}

interface SpanLimits {
  readonly most: number;
  readonly better: number;
  readonly basis: Basis;
  readonly source: Source;
}

function limitsOf({ demands }: FaceContext, { cladding }: ZoneView): SpanLimits {
  const board = demands.boards[cladding.id]?.battenCentresMm;
  if (board) return { most: board.most, better: board.better, basis: "given", source: board.source };
  const sheet = demands.sheets[cladding.id];
  const most = sheet?.battenCentresMm ?? 0;
  return { most, better: most, basis: sheet?.basis ?? "typical", source: { kind: "your data sheet" } };
}

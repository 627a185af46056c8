import type { CutPlan } from "../../cutting/facade/plan.ts";
import { countsOf, countsSaid } from "../../cutting/facade/spoiled.ts";
import { takeSpoiledBack } from "../../project/editing/spoiled.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Spoiled } from "../../project/schema/spoiled.ts";
import { type Message, message } from "../../text/message.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";

/** What is spoiled, each to be taken back in one press, and what was sawn before and is sawn now. */
export function SpoiledStock({
  project,
  plan,
  stale,
  onEdit,
}: {
  project: Project;
  plan: CutPlan | undefined;
  /** The plan is that of an earlier state of the file. */
  stale: boolean;
  onEdit(edit: Edit): void;
}) {
  const { w, s } = useWords();
  const list = project.cutting?.spoiled ?? [];
  const before = stale ? undefined : plan?.spoiled?.before;
  const { currency } = project.stock;
  return (
    <section className="spoiled-stock" aria-live="polite">
      {list.length > 0 && <h3>{w("page.spoiled", { count: list.length })}</h3>}
      {before && plan && (
        <p className="sub">
          {w("page.spoiled.counts", {
            before: countsSaid(before, currency),
            after: countsSaid(countsOf(plan), currency),
          })}
        </p>
      )}
      <ul>
        {list.map((one, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two alike differ by nothing but their place
          <li key={at}>
            <span>{s(nameOf(one))}</span>{" "}
            <button
              type="button"
              className="spoil"
              aria-label={w("page.spoiled.back-this", { stock: s(nameOf(one)) })}
              onClick={() => {
                const change = takeSpoiledBack(project, at);
                if (change) onEdit(change);
              }}
            >
              {w("page.spoiled.back")}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function nameOf(one: Spoiled): Message {
  if (one.kind === "board") return message("page.spoiled.board", { board: one.board });
  const { stock, pieces } = one;
  return one.kind === "sheet"
    ? message("page.spoiled.sheet", { stock, pieces })
    : message("page.spoiled.length", { stock, length: one.length, pieces });
}

import type { Design } from "../../design.ts";
import { setEffort } from "../../project/editing/cutting.ts";
import { message } from "../../text/message.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { Closing } from "./Closing.tsx";
import { useSearchOn } from "./use-search-on.ts";

/** Searches on for cheaper cuts while the reader looks at those there are, and writes the effort of the best into the file. */
export function SearchOn({
  design,
  document,
  waits,
  onEdit,
}: {
  design: Design;
  document: unknown;
  /** The cuts themselves are still searched for: a search that goes on from them waits, and one that runs goes on. */
  waits: boolean;
  onEdit(edit: Edit): void;
}) {
  const { w, s } = useWords();
  const { state, tries, start, stop } = useSearchOn(design);
  if (waits && state === "idle") return null;
  const best = tries.findLast((one) => one.best);
  const last = tries.at(-1);
  const { currency } = design.project.stock;
  const amount = (value: number) =>
    message(`schedule.amount.${best?.costIn ?? "money"}`, { value, currency });
  const own = design.project.cutting?.effort ?? 1;
  const better = best !== undefined && best.effort !== own;
  const keep = (): void => {
    stop();
    if (better) onEdit(setEffort({ project: design.project, document }, best.effort));
  };
  return (
    <section className="search-on">
      {best && last && (
        <>
          <Closing tries={tries} />
          <p className="sub" aria-live="polite">
            {s(
              message(last.proven ? "page.search.proven" : "page.search.so-far", {
                cost: amount(best.cost),
                bound: amount(last.bound),
                effort: String(last.effort),
              }),
            )}
          </p>
        </>
      )}
      {state === "broken" && <p className="sub">{w("page.cutting.broken")}</p>}
      {state === "ended" && !better && <p className="sub">{w("page.search.none")}</p>}
      {state === "running" || (state === "ended" && better) ? (
        <button type="button" onClick={keep}>
          {w(state === "running" ? "page.search.stop" : "page.search.keep")}
        </button>
      ) : (
        <button type="button" onClick={start}>
          {w("page.search.on")}
        </button>
      )}
    </section>
  );
}

import type { Tried } from "../../cutting/facade/search-on.ts";
import type { Design } from "../../design.ts";
import { setEffort } from "../../project/editing/cutting.ts";
import { message } from "../../text/message.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { useSearchOn } from "./use-search-on.ts";

/** Pixels of the plot. */
const WIDE = 260;
const HIGH = 72;
const EDGE = 6;

/** Searches on for cheaper cuts while the reader looks at those there are, and writes the effort of the best into the file. */
export function SearchOn({
  design,
  document,
  onEdit,
}: {
  design: Design;
  document: unknown;
  onEdit(edit: Edit): void;
}) {
  const { w, s } = useWords();
  const { state, tries, start, stop } = useSearchOn(design);
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

/** What the best cuts cost and what they must cost at least, from try to try. */
function Closing({ tries }: { tries: readonly Tried[] }) {
  const { w } = useWords();
  const costs = tries.map(({ cost }, i) => Math.min(cost, ...tries.slice(0, i).map((one) => one.cost)));
  const bounds = tries.map(({ bound }) => bound);
  const most = Math.max(...costs);
  const span = most - Math.min(...bounds) || 1;
  const x = (i: number): number =>
    EDGE + (tries.length > 1 ? (i / (tries.length - 1)) * (WIDE - 2 * EDGE) : 0);
  const y = (value: number): number => EDGE + ((most - value) / span) * (HIGH - 2 * EDGE);
  const line = (values: readonly number[]): string =>
    `M${values.map((value, i) => `${x(i)} ${y(value)}`).join("L")}${values.length > 1 ? "" : `h${WIDE - 2 * EDGE}`}`;
  return (
    <svg className="closing" viewBox={`0 0 ${WIDE} ${HIGH}`} role="img" aria-label={w("page.search.plot")}>
      <path className="closing-cost" d={line(costs)} />
      <path className="closing-bound" d={line(bounds)} />
    </svg>
  );
}

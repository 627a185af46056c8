import type { Closeness } from "../../cutting/facade/closeness.ts";
import { useWords } from "../words.ts";

/** Pixels of the plot. */
const WIDE = 260;
const HIGH = 72;
const EDGE = 6;

/** What the best cuts cost and what they must cost at least, from try to try. */
export function Closing({ tries }: { tries: readonly Closeness[] }) {
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

import type { ReactNode } from "react";
import { message } from "../../text/message.ts";
import { useWords } from "../words.ts";
import type { Cutting } from "./use-cutting.ts";

/** Whether what is shown is cut as the facade now stands, and what it costs so far while better is searched for. */
export function CuttingState({
  cutting: { stale, broken, closing },
  currency,
  children,
}: {
  cutting: Cutting;
  currency: string;
  /** Said once the last plan is here. */
  children: ReactNode;
}) {
  const { w, s } = useWords();
  const now = closing?.at(-1);
  const amount = (value: number) => message(`schedule.amount.${now?.costIn ?? "money"}`, { value, currency });
  const says = (): ReactNode => {
    if (broken) return w("page.cutting.broken");
    if (stale) return w("page.cutting.busy");
    return now
      ? s(message("page.cutting.so-far", { cost: amount(now.cost), bound: amount(now.bound) }))
      : children;
  };
  return (
    <p className="sub" aria-live="polite">
      {says()}
    </p>
  );
}

/** What the second thread of the cutting does: it takes searches to their end in turn, tells how far each has come, and can be stopped. */
import { type CutProblem, type CutSearch, type CutState, searchFor } from "../../cutting/facade/search.ts";

/** A search's number is its own for as long as the first thread lives: one that was stopped goes on under it. */
export type SecondAsk =
  | { readonly kind: "search"; readonly id: number; readonly problem: CutProblem }
  | { readonly kind: "stop" };

export type SecondPost =
  | { readonly kind: "state"; readonly id: number; readonly state: CutState }
  | { readonly kind: "broken" };

/** Milliseconds of search from one look at what is asked to the next. */
const BREATH = 40;
/** Milliseconds from one state on the way to the next. */
const STATES_APART = 120;

/** @returns hears what the first thread asks */
export function secondThread(post: (said: SecondPost) => void): (ask: SecondAsk) => void {
  let waiting = new Map<number, CutSearch>();
  /** Until the next stop. */
  let stopped = new Map<number, CutSearch>();
  let working = false;

  const work = async (): Promise<void> => {
    let breathDue = performance.now() + BREATH;
    for (let next = first(waiting); next; next = first(waiting)) {
      const [id, search] = next;
      let told = search.state().found;
      let due = performance.now() + STATES_APART;
      while (!search.state().ended && waiting.has(id)) {
        search.advance();
        const now = performance.now();
        const state = search.state();
        if (!state.ended && state.found !== told && now >= due) {
          told = state.found;
          due = now + STATES_APART;
          post({ kind: "state", id, state });
        }
        if (now < breathDue) continue;
        await new Promise((heard) => setTimeout(heard));
        breathDue = performance.now() + BREATH;
      }
      if (!search.state().ended) continue;
      post({ kind: "state", id, state: search.state() });
      waiting.delete(id);
    }
  };

  return (ask) => {
    if (ask.kind === "stop") {
      stopped = waiting;
      waiting = new Map();
      return;
    }
    const { id, problem } = ask;
    waiting.set(id, stopped.get(id) ?? searchFor(problem));
    if (working) return;
    working = true;
    work()
      .catch(() => post({ kind: "broken" }))
      .finally(() => {
        working = false;
      });
  };
}

function first<Key, Value>(map: ReadonlyMap<Key, Value>): [Key, Value] | undefined {
  for (const entry of map) return entry;
  return undefined;
}

/**
 * Keeps what was drawn by everything that it was drawn from, so that after an edit only that is drawn again of which something
 * changed. What draws is given its inputs and nothing else, and they are its key: laid-out faces and finished scenes by
 * themselves, since a memo of faces hands out the same one for as long as nothing of it changed; the rest as its whole text, never a
 * hash. What is remembered is therefore always right.
 */

export interface DrawMemo {
  /** Told before a set is drawn: what none of the latest few sets asked for is let go. */
  nextSet(): void;
  /** Tells these apart by themselves, not by their text; they must not change after. */
  byThemselves(things: Iterable<object>): void;
  /** What `draw` makes of these inputs, made now where it is not remembered. `draw` is the same function at every call. */
  recall<From extends object, Made>(draw: (from: From) => Made, from: From): Made;
  /** Made so far, what was remembered not counted. */
  readonly made: number;
}

/** Sets that something stays for after it was last asked for: a step back, and a part drawn between two whole sets. */
const SETS_KEPT = 3;

interface Kept {
  readonly made: unknown;
  set: number;
}

export function createDrawMemo(): DrawMemo {
  const kept = new Map<unknown, Map<string, Kept>>();
  const names = new WeakMap<object, string>();
  let named = 0;
  let set = 0;
  let made = 0;
  const text = (from: object): string =>
    JSON.stringify(from, (_, value: unknown) => {
      if (typeof value === "number") return Number.isFinite(value) ? value : String(value);
      if (typeof value === "function") throw new Error("a drawing's inputs are plain values");
      if (typeof value !== "object" || value === null) return value;
      // Their text would be that of an empty thing.
      if (value instanceof Map || value instanceof Set)
        throw new Error("a drawing's inputs are plain values");
      return names.get(value) ?? value;
    });
  return {
    get made() {
      return made;
    },
    nextSet() {
      set += 1;
      for (const own of kept.values()) {
        for (const [key, one] of own) if (one.set < set - SETS_KEPT) own.delete(key);
      }
    },
    byThemselves(things) {
      for (const thing of things) {
        if (names.has(thing)) continue;
        named += 1;
        names.set(thing, `\u0000${named}`);
      }
    },
    recall<From extends object, Made>(draw: (from: From) => Made, from: From): Made {
      const own = kept.get(draw) ?? new Map<string, Kept>();
      kept.set(draw, own);
      const key = text(from);
      const known = own.get(key);
      if (known) {
        known.set = set;
        return known.made as Made;
      }
      const result = draw(from);
      made += 1;
      own.set(key, { made: result, set });
      return result;
    },
  };
}

/** Remembers nothing: for a set that is drawn once. */
export const NO_MEMO: DrawMemo = {
  made: 0,
  nextSet: () => undefined,
  byThemselves: () => undefined,
  recall: (draw, from) => draw(from),
};

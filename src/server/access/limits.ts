/** How often someone may ask: a bucket that fills by and by, so that a burst is fine and a flood is not. */

export interface Rate {
  /** As many at once. */
  readonly burst: number;
  /** Refilled in a minute. */
  readonly perMinute: number;
}

/** More askers than this are not told apart for long: the oldest are forgotten, so that nobody fills the memory. */
const MOST_ASKERS = 10_000;

export interface Limit {
  /** Whether one more is allowed now. */
  has(asker: string): boolean;
  /** Counts one more; false where it was not allowed. */
  take(asker: string): boolean;
}

export function limitOf({ burst, perMinute }: Rate, now: () => Date): Limit {
  const buckets = new Map<string, { left: number; at: number }>();
  const leftOf = (asker: string, at: number): number => {
    const held = buckets.get(asker) ?? { left: burst, at };
    return Math.min(burst, held.left + (Math.max(0, at - held.at) / 60_000) * perMinute);
  };
  return {
    has: (asker) => leftOf(asker, now().getTime()) >= 1,
    take: (asker) => {
      const at = now().getTime();
      const left = leftOf(asker, at);
      buckets.delete(asker);
      const oldest = buckets.size >= MOST_ASKERS ? buckets.keys().next().value : undefined;
      if (oldest !== undefined) buckets.delete(oldest);
      const allowed = left >= 1;
      buckets.set(asker, { left: allowed ? left - 1 : left, at });
      return allowed;
    },
  };
}

/** How often someone may ask: a bucket that fills by and by, so that a burst is fine and a flood is not. */

export interface Rate {
  /** As many at once. */
  readonly burst: number;
  /** Refilled in a minute. */
  readonly perMinute: number;
}

/** More askers than this are not told apart for long: the oldest are forgotten, so that nobody fills the memory. */
const MOST_ASKERS = 10_000;

/** True where one more is allowed now. */
export type Limit = (asker: string) => boolean;

export function limitOf({ burst, perMinute }: Rate, now: () => Date): Limit {
  const buckets = new Map<string, { left: number; at: number }>();
  return (asker) => {
    const at = now().getTime();
    const held = buckets.get(asker) ?? { left: burst, at };
    const left = Math.min(burst, held.left + (Math.max(0, at - held.at) / 60_000) * perMinute);
    buckets.delete(asker);
    const oldest = buckets.size >= MOST_ASKERS ? buckets.keys().next().value : undefined;
    if (oldest !== undefined) buckets.delete(oldest);
    const allowed = left >= 1;
    buckets.set(asker, { left: allowed ? left - 1 : left, at });
    return allowed;
  };
}

/** The ids that a fold was given. Devices count up, so all that one told is a run of numbers, or a few where some are on their way. */

/** First and last number of each run, by device; runs neither touch nor overlap, and rise. */
export type SeenRuns = Readonly<Record<string, readonly (readonly [first: number, last: number])[]>>;

export function partsOf(id: string): { readonly device: string; readonly count: number } {
  const hyphen = id.indexOf("-");
  return { device: id.slice(0, hyphen), count: Number(id.slice(hyphen + 1)) };
}

export function createSeen(from: SeenRuns = {}) {
  const byDevice = new Map<string, [number, number][]>(
    Object.entries(from).map(([device, runs]) => [device, runs.map(([first, last]) => [first, last])]),
  );
  return {
    has: (id: string): boolean => {
      const { device, count } = partsOf(id);
      return byDevice.get(device)?.some(([first, last]) => first <= count && count <= last) ?? false;
    },

    /** False where it was there already. */
    add: (id: string): boolean => {
      const { device, count } = partsOf(id);
      const runs = byDevice.get(device) ?? [];
      byDevice.set(device, runs);
      // Nearly always what comes is the device's latest.
      const at = runs.findLastIndex(([first]) => first <= count);
      const [before, after] = [runs[at], runs[at + 1]];
      if (before && count <= before[1]) return false;
      const joinsBefore = before?.[1] === count - 1;
      const joinsAfter = after?.[0] === count + 1;
      if (joinsBefore && joinsAfter) {
        before[1] = after[1];
        runs.splice(at + 1, 1);
      } else if (joinsBefore) before[1] = count;
      else if (joinsAfter) after[0] = count;
      else runs.splice(at + 1, 0, [count, count]);
      return true;
    },

    runs: (): SeenRuns =>
      Object.fromEntries(
        [...byDevice].map(([device, runs]) => [device, runs.map((run) => [...run] as const)]),
      ),
  };
}

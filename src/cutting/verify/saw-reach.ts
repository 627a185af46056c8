/** What the steps of the saw ask of it and of those at it, against what they can do. Shares no code with the solvers. */
import { atMost } from "./problem.ts";

/** What a saw and those at it can do; what is absent is not asked. */
export interface SawReach {
  /** Largest part that lies held up, either way round, mm. */
  readonly table?: { readonly length: number; readonly width: number } | undefined;
  /** Furthest off the nearer edge, mm. */
  readonly fence?: number | undefined;
  /** Heaviest part, kg. */
  readonly lift?: number | undefined;
}

export type SawLimit = keyof SawReach;

/** A cut and what it goes through. */
export interface SawStep {
  readonly cut: number;
  /** The part that lies on the saw, either way round, mm. */
  readonly part: { readonly width: number; readonly height: number };
  /** How far off an edge the fence is set, mm; absent: the cut is not made against it. */
  readonly off?: number;
  readonly kg: number;
}

/** A step beyond a limit: what it asks for and what there is, in mm or kg. */
export interface BeyondReach {
  readonly limit: SawLimit;
  readonly cut: number;
  readonly asks: number;
  readonly has: number;
}

export function beyondReach(steps: readonly SawStep[], { table, fence, lift }: SawReach): BeyondReach[] {
  return steps.flatMap(({ cut, part, off, kg }): BeyondReach[] => {
    const long = Math.max(part.width, part.height);
    const short = Math.min(part.width, part.height);
    const found: BeyondReach[] = [];
    const judge = (limit: SawLimit, asks: number, has: number | undefined): void => {
      if (has !== undefined && !atMost(asks, has)) found.push({ limit, cut, asks, has });
    };
    if (table !== undefined) {
      const most = { long: Math.max(table.length, table.width), short: Math.min(table.length, table.width) };
      if (atMost(short, most.short)) judge("table", long, most.long);
      else judge("table", short, most.short);
    }
    if (off !== undefined) judge("fence", off, fence);
    judge("lift", kg, lift);
    return found;
  });
}

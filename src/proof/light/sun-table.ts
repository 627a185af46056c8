/**
 * The sun of a place through a year, as short steps of beam: from which direction to which, and how much. Made once a
 * place; every face and slot reads it.
 */
import type { SunDirection } from "../../equations/light/sun-direction.ts";
import type { Months } from "./model.ts";

export interface SunTable {
  readonly steps: number;
  /** Unit vectors to the sun at the start and end of each step, both over the horizon: east, north, up in turn. */
  readonly from: Float64Array;
  readonly to: Float64Array;
  /** Beam across itself (Wh/m²) and month, 0 for January. */
  readonly beam: Float64Array;
  readonly month: Uint8Array;
  /** From the sky on level ground, and beam and sky together there (Wh/m²). */
  readonly sky: Months;
  readonly level: Months;
}

/** Gathers steps into a table. */
export class SunTableMaker {
  private steps = 0;
  private readonly from: Float64Array;
  private readonly to: Float64Array;
  private readonly beam: Float64Array;
  private readonly month: Uint8Array;
  private readonly sky: number[] = new Array<number>(12).fill(0);
  private readonly level: number[] = new Array<number>(12).fill(0);

  constructor(most: number) {
    this.from = new Float64Array(3 * most);
    this.to = new Float64Array(3 * most);
    this.beam = new Float64Array(most);
    this.month = new Uint8Array(most);
  }

  /** @param beam across itself, Wh/m², with the sun over the horizon from start to end */
  addBeam(
    { month, beam }: { readonly month: number; readonly beam: number },
    { start, end }: { readonly start: SunDirection; readonly end: SunDirection },
  ): void {
    const at = 3 * this.steps;
    this.from[at] = start.east;
    this.from[at + 1] = start.north;
    this.from[at + 2] = start.up;
    this.to[at] = end.east;
    this.to[at + 1] = end.north;
    this.to[at + 2] = end.up;
    this.beam[this.steps] = beam;
    this.month[this.steps] = month;
    this.steps += 1;
  }

  /** Wh/m² on level ground. */
  addEven(month: number, light: { readonly sky: number; readonly level: number }): void {
    this.sky[month] = (this.sky[month] ?? 0) + light.sky;
    this.level[month] = (this.level[month] ?? 0) + light.level;
  }

  done(): SunTable {
    const { steps, from, to, beam, month, sky, level } = this;
    return { steps, from, to, beam, month, sky, level };
  }
}

/** A direction part of the way from one to another that is near it. */
export function between(start: SunDirection, end: SunDirection, part: number): SunDirection {
  return {
    east: start.east + part * (end.east - start.east),
    north: start.north + part * (end.north - start.north),
    up: start.up + part * (end.up - start.up),
  };
}

/** The part of a step with the sun over the horizon; undefined where there is none. */
export function overHorizon(
  start: SunDirection,
  end: SunDirection,
): { readonly start: SunDirection; readonly end: SunDirection; readonly part: number } | undefined {
  if (start.up <= 0 && end.up <= 0) return undefined;
  if (start.up >= 0 && end.up >= 0) return { start, end, part: 1 };
  const rise = start.up / (start.up - end.up);
  const horizon = between(start, end, rise);
  return start.up < 0 ? { start: horizon, end, part: 1 - rise } : { start, end: horizon, part: rise };
}

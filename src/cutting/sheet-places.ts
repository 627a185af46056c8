/**
 * Where waiting pieces may be laid: the leftovers that any of them fits into, how many each fits into, and which is the best for a
 * piece. A search goes through this more than through anything else, so leftovers of no use to any piece are passed over once.
 */
import type { PieceType, Region, Sheet, SheetJob, Way } from "./sheet-nodes.ts";
import { keepsFirstCuts, turnsToFree } from "./sheet-nodes.ts";
import { worthOf } from "./sheet-pursuit.ts";

/** A leftover, by its place on the list, and how a piece would lie in it. */
export interface Place {
  readonly at: number;
  readonly way: Way;
}

const axes = ["x", "y"] as const;

export class OpenPlaces {
  private readonly job: SheetJob;
  /** By type, as it lies. */
  private readonly widths: Float64Array;
  private readonly heights: Float64Array;
  private readonly turnable: Uint8Array;
  /** By type: leftovers that it would fit into. */
  private readonly counts: Int32Array;
  private readonly open: Region[] = [];
  /** The place of each one's sheet. */
  private readonly sheets: number[] = [];

  constructor(job: SheetJob) {
    this.job = job;
    this.widths = Float64Array.from(job.types, ({ width }) => width);
    this.heights = Float64Array.from(job.types, ({ height }) => height);
    this.turnable = Uint8Array.from(job.types, ({ turnable }) => (turnable ? 1 : 0));
    this.counts = new Int32Array(job.types.length);
  }

  /** Lists the places for what waits, by type, anew. */
  find(waiting: readonly number[], sheets: readonly Sheet[]): void {
    this.open.length = 0;
    this.sheets.length = 0;
    let narrowest = Number.POSITIVE_INFINITY;
    let lowest = Number.POSITIVE_INFINITY;
    for (const type of waiting) {
      this.counts[type] = 0;
      const across = this.widths[type] as number;
      const up = this.heights[type] as number;
      const least = this.turnable[type] === 1 ? Math.min(across, up) : Number.POSITIVE_INFINITY;
      narrowest = Math.min(narrowest, across, least);
      lowest = Math.min(lowest, up, least);
    }
    for (let place = 0; place < sheets.length; place++) {
      const sheet = sheets[place] as Sheet;
      for (let at = 0; at < sheet.leftovers.length; at++) {
        const region = sheet.leftovers[at] as Region;
        if (region.width >= narrowest && region.height >= lowest) this.add(waiting, place, sheet, region);
      }
    }
  }

  /** A leftover of the sheet at a place, where it is of use for what waits. */
  add(waiting: readonly number[], place: number, sheet: Sheet, region: Region): void {
    if (!this.count(waiting, sheet, region, 1)) return;
    this.open.push(region);
    this.sheets.push(place);
  }

  /** Place of the sheet of a leftover on the list. */
  sheetOf(at: number): number {
    return this.sheets[at] as number;
  }

  /** Takes a leftover off the list; `own` is its sheet, or else a copy that has come into the sheet's place. */
  take(waiting: readonly number[], at: number, { own, isCopy }: { own: Sheet; isCopy: boolean }): Region {
    const { open, sheets } = this;
    const place = sheets[at] as number;
    // A copy's leftovers stand where those of its sheet stood, whose places were noted for it.
    if (isCopy) {
      for (let one = 0; one < open.length; one++) {
        if (sheets[one] === place) open[one] = own.leftovers[(open[one] as Region).place] as Region;
      }
    }
    const region = open[at] as Region;
    open[at] = open[open.length - 1] as Region;
    sheets[at] = sheets[sheets.length - 1] as number;
    open.length -= 1;
    sheets.length -= 1;
    this.count(waiting, own, region, -1);
    return region;
  }

  /** Place in `waiting` of the type with fewest places, the largest of equals. */
  hardest(waiting: readonly number[]): number {
    let best = 0;
    let fewest = Number.POSITIVE_INFINITY;
    let largest = 0;
    for (let at = 0; at < waiting.length; at++) {
      const type = waiting[at] as number;
      const places = this.counts[type] as number;
      if (places > fewest) continue;
      const area = (this.widths[type] as number) * (this.heights[type] as number);
      if (places < fewest || area > largest) {
        best = at;
        fewest = places;
        largest = area;
      }
    }
    return best;
  }

  /** The place that costs least of what leftovers are worth; each is passed over as often as `blink` says. */
  best(
    random: () => number,
    index: number,
    sheets: readonly Sheet[],
    { blink, onlyNewest = false }: { blink: number; onlyNewest?: boolean },
  ): Place | undefined {
    if (this.counts[index] === 0) return undefined;
    let place = -1;
    let isTurned = false;
    let firstAxis: Way["first"] = "x";
    let least = Number.POSITIVE_INFINITY;
    const { stages, firstCuts } = this.job;
    const isFree = stages === Number.POSITIVE_INFINITY && firstCuts === Number.POSITIVE_INFINITY;
    const type = this.job.types[index] as PieceType;
    const mayTurn = type.turnable && type.width !== type.height;
    const { open } = this;
    for (let at = onlyNewest ? open.length - 1 : 0; at < open.length; at++) {
      const region = open[at] as Region;
      const turns = mayTurn && (sheets[this.sheets[at] as number] as Sheet).panel.turnable;
      for (let turned = 0; turned < (turns ? 2 : 1); turned++) {
        const width = turned === 0 ? type.width : type.height;
        const height = turned === 0 ? type.height : type.width;
        const spareX = region.width - width;
        const spareY = region.height - height;
        if (spareX < 0 || spareY < 0) continue;
        const whole = worthOf(region.width, region.height);
        for (const first of axes) {
          // Where one cut or none is needed, the order of cuts makes no difference.
          if (first === "y" && (spareX === 0 || spareY === 0)) break;
          const rest =
            first === "x"
              ? worthOf(spareX, region.height) + worthOf(width, spareY)
              : worthOf(region.width, spareY) + worthOf(spareX, height);
          if (whole - rest >= least || (blink > 0 && random() < blink)) continue;
          if (!isFree) {
            const way = { piece: index, turned: turned === 1, width, height, first };
            if (turnsToFree(region, way) > stages || !keepsFirstCuts(region, way, firstCuts)) continue;
          }
          least = whole - rest;
          place = at;
          isTurned = turned === 1;
          firstAxis = first;
        }
      }
    }
    if (place < 0) return undefined;
    const [width, height] = isTurned ? [type.height, type.width] : [type.width, type.height];
    return { at: place, way: { piece: index, turned: isTurned, width, height, first: firstAxis } };
  }

  /** Adds a leftover to the counts of the types that fit into it; true where any does. */
  private count(waiting: readonly number[], sheet: Sheet, { width, height }: Region, by: 1 | -1): boolean {
    const { widths, heights, counts } = this;
    const turns = sheet.panel.turnable;
    let any = false;
    for (let at = 0; at < waiting.length; at++) {
      const type = waiting[at] as number;
      const across = widths[type] as number;
      const up = heights[type] as number;
      if (
        (across <= width && up <= height) ||
        (turns && up <= width && across <= height && this.turnable[type] === 1)
      ) {
        counts[type] = (counts[type] as number) + by;
        any = true;
      }
    }
    return any;
  }
}

/**
 * What a facade comes to: schedules of its pieces, quantities and the order. Lengths are exact (mm, on the grid): whoever
 * prints them rounds them. Sums of money are in the stock's currency, rounded to hundredths line by line.
 */
import type { PieceKind } from "../setout/facade.ts";
import type { Message } from "../text/message.ts";

/** One piece to be made. `length` is along the grain or upright, before shaping. */
export interface PieceLine {
  readonly mark: string;
  readonly kind: PieceKind;
  readonly face: string;
  readonly zone?: string;
  readonly course?: number;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly material: string;
  readonly massKg: number;
  /** Lot of the pile that the cut plan takes it from. */
  readonly lot?: string;
  /** As the project words it. */
  readonly finish?: string;
}

/** A batten, rail or backing piece, with what is screwed and packed behind it. */
export interface BattenLine extends Omit<PieceLine, "course" | "lot" | "finish"> {
  /** Id of the batten in the stock. */
  readonly stock?: string;
  /** True where it is narrower than what it is cut from. */
  readonly ripped: boolean;
  readonly screws: readonly { readonly screw: string; readonly count: number }[];
  readonly packers: readonly { readonly thickness: number; readonly count: number }[];
}

export interface ScrewCount {
  readonly screw: string;
  readonly count: number;
  /** Of `count`, those at each kind of point. */
  readonly fixed: number;
  readonly sliding: number;
  readonly plain: number;
}

/** Areas of a zone (m²). */
export interface ZoneArea {
  readonly face: string;
  readonly zone: string;
  readonly cladding: string;
  /** The zone's whole region, round its corners. */
  readonly gross: number;
  /** Gross less openings. */
  readonly net: number;
  /** Cladding pieces, seen from outside. */
  readonly pieces: number;
  /** Joints over joints and pieces (%); strips beside openings are behind reveals and do not count. */
  readonly openSharePercent: number;
}

export interface MassLine {
  readonly kind: PieceKind;
  readonly material: string;
  readonly count: number;
  readonly massKg: number;
}

export interface StripLine {
  readonly material: string;
  readonly width: number;
  readonly thickness: number;
  readonly metres: number;
}

/** Sleeves, or boxes and blocks, of one size (mm). */
export interface SleeveLine {
  readonly material: string;
  readonly diameter: number;
  readonly length: number;
  readonly count: number;
}

/** A layer that is rolled out or laid in boards: net of openings, laps not counted in `areaM2`. */
export interface LayerArea {
  readonly kind: "membrane" | "insulation";
  readonly material?: string;
  readonly thickness: number;
  readonly areaM2: number;
  /** A membrane in strips: the roll that they take, laps, turned corners and what is cut off included. */
  readonly roll?: { readonly width: number; readonly areaM2: number };
}

/** Finish of one cladding's boards, on four sides and both ends. */
export interface FinishLine {
  readonly cladding: string;
  readonly finish: string;
  readonly areaM2: number;
  /** Coats as the finish words them; undefined where they name none. */
  readonly coats?: number;
  /** By the catalogue's coverage of an oil or stain; undefined where coats or coverage are not known. */
  readonly litres?: { readonly least: number; readonly most: number };
  /** Until the last coat is dry, at a day a coat (common practice, at 20 °C; the tin's own sheet goes before it). */
  readonly dryingDays?: number;
  /** Square metres that a litre covers in one coat, with the key of its source. */
  readonly coverage?: { readonly least: number; readonly most: number; readonly source: string };
}

export type OrderUnit = "sheet" | "length" | "pack" | "piece" | "m" | "m2" | "L";

export interface OrderLine {
  readonly item: Message;
  /** Id in the project's stock. */
  readonly id?: string;
  readonly unit: OrderUnit;
  /** What the facade takes, in `unit`; may be a fraction of how it is sold. */
  readonly needed: number;
  /** What is ordered: needed and spare, rounded up to how it is sold. */
  readonly ordered: number;
  /** Undefined where the project gives no price. */
  readonly unitPrice?: number;
  readonly amount?: number;
}

export interface Order {
  readonly currency: string;
  readonly lines: readonly OrderLine[];
  /** What the work uses up: blades, bits, tape, sealer. The project has no price for it. */
  readonly consumables: readonly OrderLine[];
  /** Of the lines that have a price. */
  readonly sum: number;
  /** How many lines have none. */
  readonly withoutPrice: number;
}

export interface Takeoff {
  readonly pieces: readonly PieceLine[];
  readonly battens: readonly BattenLine[];
  readonly screws: readonly ScrewCount[];
  readonly areas: readonly ZoneArea[];
  readonly masses: readonly MassLine[];
  readonly massKg: number;
  readonly packers: readonly { readonly thickness: number; readonly count: number }[];
  readonly closures: readonly StripLine[];
  /** Bent metal by developed width. */
  readonly flashings: readonly StripLine[];
  readonly gaskets: readonly StripLine[];
  /** Sill pans by developed width. */
  readonly pans: readonly StripLine[];
  readonly sleeves: readonly SleeveLine[];
  readonly layers: readonly LayerArea[];
  readonly finishes: readonly FinishLine[];
  readonly order: Order;
}

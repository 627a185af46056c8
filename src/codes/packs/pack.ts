/** What every pack of a structural code answers, and in what plain values. */
import type { ByArea } from "../../equations/wind/wall-table.ts";
import type { Basis, Source, Working } from "../../findings/finding.ts";
import type { Project, SheetCladding } from "../../project/schema/project.ts";
import type { StructureCode } from "../../project/schema/wind.ts";
import type { FigureValue } from "../rule-value.ts";

/** A field that is missing, and the message that says how to get it. */
export interface Lack {
  /** JSON Pointer into the project file. */
  readonly path: string;
  readonly key: string;
}

/** A strip of a wall, measured from each of its ends. */
export interface Strip {
  readonly id: "end" | "beside" | "field";
  /** Where it ends (mm); the last one has no end. */
  readonly toMm?: number;
  readonly pull: ByArea;
}

export interface WindDemand {
  /** At the building, before coefficients (Pa). */
  readonly pressurePa: number;
  /** From the end of a wall inward. */
  readonly strips: readonly Strip[];
  readonly push: ByArea;
  readonly areasM2: readonly [small: number, large: number];
  /** Coefficients inside, gusts included: sucking and pushing. */
  readonly inside: readonly [least: number, most: number];
  /** Never less than this net, either way (Pa). */
  readonly leastPa: FigureValue | undefined;
  /** On the net pressure, for strength and for sag. */
  readonly strength: FigureValue;
  readonly sag: FigureValue;
  /** On dead load beside wind. */
  readonly dead: FigureValue;
  /** The weakest of what the pressure rests on. */
  readonly basis: Basis;
  readonly working: Working;
  readonly source: Source;
}

export interface TimberDemand {
  /** From what a code's tables give to what is compared with loads. */
  readonly bending: FigureValue;
  readonly fastening: FigureValue;
  /** From characteristic to design; absent where the code knows no such step. */
  readonly characteristic: FigureValue | undefined;
  /** A grade that is not named (MPa). */
  readonly lowest: { readonly bending: FigureValue; readonly modulus: FigureValue };
  /** Wood that is not named or not known. */
  readonly unnamed: Wood;
  /** Withdrawal by the Canadian standard. */
  readonly withdrawal: FigureValue | undefined;
}

export type WindAnswer =
  | { readonly known: true; readonly wind: WindDemand }
  | { readonly known: false; readonly lacks: readonly Lack[] };

/** A wood as the fastening equations know it. */
export interface Wood {
  readonly gravity: number;
  /** Characteristic (kg/m³). */
  readonly densityKgPerM3: number;
  readonly basis: Basis;
}

/** A screw with what it goes through and into. */
export interface ScrewAsked {
  readonly screw: Project["stock"]["screws"][number];
  /** Root of the thread beside its outer diameter, where it is not declared. */
  readonly coreShare: FigureValue;
  /** Length in the timber that holds it (mm). */
  readonly biteMm: number;
  readonly holder: Wood;
  /** What lies under the head: wood of a thickness (mm), or a sheet with its data sheet. */
  readonly under:
    | { readonly kind: "wood"; readonly wood: Wood; readonly thicknessMm: number }
    | { readonly kind: "sheet"; readonly sheet: SheetCladding };
}

/** What a screw holds (N), with its line of arithmetic. */
export interface Held {
  readonly known: true;
  readonly newton: number;
  readonly basis: Basis;
  readonly formula: string;
  readonly substituted: string;
  readonly source: Source;
}

export type HeldAnswer = Held | { readonly known: false; readonly key: string };

export interface StructurePack {
  readonly codes: readonly StructureCode[];
  /** What of a wood its fastenings go by: a species’ specific gravity, or the density of a grade. */
  readonly woodBy: "gravity" | "density";
  readonly wind: (project: Project) => WindAnswer;
  readonly timber: (project: Project) => TimberDemand;
  readonly withdrawal: (asked: ScrewAsked, timber: TimberDemand) => HeldAnswer;
  /** Of the head through wood; a sheet's is its data sheet's. */
  readonly headThroughWood: (asked: ScrewAsked, timber: TimberDemand) => HeldAnswer;
  readonly shear: (asked: ScrewAsked, timber: TimberDemand) => HeldAnswer;
  readonly combined: (loads: {
    readonly pullN: number;
    readonly shearN: number;
    readonly pullHeldN: number;
    readonly shearHeldN: number;
  }) => number;
  /** A span over this is the most sag of a flexible skin; absent where the code prints none. */
  readonly sagSpanOver: (project: Project) => FigureValue | undefined;
}

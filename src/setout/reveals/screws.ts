/** A return's screws: along it as its data sheet or boards ask, each into the timber beside the opening. */
import type { Interval } from "../../geometry/interval.ts";
import type { Cladding, Project, Screw } from "../../project/schema/project.ts";
import { snap } from "../../units/length.ts";
import type { Fixing } from "../facade.ts";
import { boardHole, fixedHole, slidingHole } from "../fixings.ts";
import { SCREW_FROM_BATTEN_EDGE_MM } from "../sheets/screw-line.ts";
import type { Asked } from "./asked.ts";
import type { Carrier, Side } from "./carriers.ts";
import { depthIn, edgesOf, rowsOf } from "./rows.ts";

/** From a board's end, and apart along it, as for battens (common practice). */
const FROM_END_MM = 50;
const BOARD_SPACING_MM = 600;
/** A screw may move this far from its even place to meet timber. */
const MAY_MOVE_MM = 100;

export interface Place {
  readonly along: number;
  readonly z: number;
  readonly carrier: Carrier;
}

/** Places of the screws of one part; undefined where too few find timber to hold it flat. */
export function placesOf(
  along: Interval,
  asked: Pick<Asked, "cladding" | "z">,
  carriers: readonly Carrier[],
): Place[] | undefined {
  const spread = spreadOf(asked.cladding);
  const wished = evenly(along, spread);
  const rows = rowsOf(asked).map((row) => wished.flatMap((at) => nearest(at, row, { asked, carriers })));
  const held = rows.every((row) => isHeld(row, along, spread));
  return held && rowsApart(rows, asked.cladding) ? rows.flat() : undefined;
}

interface Spread {
  /** From the ends, and apart. */
  readonly inset: number;
  readonly least: number;
  readonly most: number;
  /** How far the ends may stand past their screw. */
  readonly overhang: number;
}

function spreadOf(cladding: Cladding): Spread {
  if (cladding.kind === "boards") {
    const inset = Math.max(FROM_END_MM, cladding.endDistance.value);
    return { inset, least: inset, most: BOARD_SPACING_MM, overhang: cladding.maxOverhang.value };
  }
  const { cornerDistance, edgeDistance, fixingSpacing } = cladding.dataSheet;
  const inset = Math.max(cornerDistance, edgeDistance[0]);
  return {
    inset,
    least: fixingSpacing[0],
    most: fixingSpacing[1],
    overhang: Math.max(inset, edgeDistance[1]),
  };
}

/** Even places from one inset to the other; none where two would stand too near one another. */
function evenly([from, to]: Interval, { inset, least, most }: Spread): number[] {
  const [first, last] = [from + inset, to - inset];
  if (last - first < least) return [];
  const gaps = Math.ceil((last - first) / most - 1e-9);
  return Array.from({ length: gaps + 1 }, (_, i) => snap(first + ((last - first) * i) / gaps));
}

function nearest(
  at: number,
  row: number,
  { asked, carriers }: { asked: Pick<Asked, "cladding" | "z">; carriers: readonly Carrier[] },
): Place[] {
  let best: { readonly place: Place; readonly off: number } | undefined;
  for (const carrier of carriers) {
    const z = depthIn(carrier, asked, row);
    const [from, to] = carrier.along;
    const inside: Interval = [from + SCREW_FROM_BATTEN_EDGE_MM, to - SCREW_FROM_BATTEN_EDGE_MM];
    if (z === undefined || inside[0] > inside[1]) continue;
    const along = snap(Math.min(Math.max(at, inside[0]), inside[1]));
    if (Math.abs(along - at) > MAY_MOVE_MM) continue;
    const off = Math.abs(along - at) + Math.abs(z - row);
    if (!best || off < best.off) best = { place: { along, z, carrier }, off };
  }
  return best ? [best.place] : [];
}

function isHeld(row: readonly Place[], [from, to]: Interval, { most, overhang }: Spread): boolean {
  const [first, last] = [row[0], row.at(-1)];
  if (!first || !last || row.length < 2) return false;
  const apart = row.slice(1).every(({ along }, i) => along - (row[i] as Place).along <= most + 1e-6);
  return apart && first.along - from <= overhang + 1e-6 && to - last.along <= overhang + 1e-6;
}

/** Two rows pushed onto one another hold no better than one. */
function rowsApart([first, second]: readonly (readonly Place[])[], cladding: Cladding): boolean {
  if (!second) return true;
  const [least] = edgesOf(cladding);
  return second.every(({ z }, i) => z - (first?.[i]?.z ?? z) >= least);
}

export function fixingsOf(
  places: readonly Place[],
  {
    project,
    cladding,
    side,
    across,
    movementMmPerM,
  }: {
    readonly project: Pick<Project, "stock">;
    readonly cladding: Cladding;
    readonly side: Side;
    /** Where the heads lie: x of a jamb's inner side, y of a head's underside. */
    readonly across: number;
    /** Of a sheet, by its data sheet and the place's temperatures (mm/m). */
    readonly movementMmPerM: number;
  },
): Fixing[] {
  const screw = project.stock.screws.find(({ id }) => id === cladding.screw);
  if (!screw) return [];
  const fixed = cladding.kind === "sheets" ? middleOf(places) : undefined;
  const through = [
    { what: cladding.kind === "sheets" ? "sheet" : "board", thickness: cladding.thickness },
  ] as const;
  return places.map((place): Fixing => {
    const { along, z, carrier } = place;
    const reach = fixed ? Math.hypot(along - fixed.along, z - fixed.z) : 0;
    return {
      x: side === "head" ? along : across,
      y: side === "head" ? across : along,
      kind: fixed ? (place === fixed ? "fixed" : "sliding") : "plain",
      screw: screw.id,
      hole: fixed
        ? place === fixed
          ? fixedHole(screw.diameter)
          : slidingHole(screw.diameter, movementMmPerM, reach)
        : boardHole(screw.diameter),
      into: carrier.id,
      through,
      bite: biteOf(screw, cladding, carrier),
      side: { z, towards: side === "head" ? "up" : side },
    };
  });
}

function biteOf(
  { length }: Pick<Screw, "length">,
  { thickness }: Pick<Cladding, "thickness">,
  carrier: Carrier,
): number {
  return snap(Math.max(0, Math.min(length - thickness, carrier.thickness)));
}

/** The screw nearest to the middle is a sheet's fixed point; ties go to the lower or left one. */
function middleOf(places: readonly Place[]): Place | undefined {
  const [first, last] = [places[0], places.at(-1)];
  if (!first || !last) return undefined;
  const middle = (first.along + last.along) / 2;
  return places.reduce((best, one) =>
    Math.abs(one.along - middle) < Math.abs(best.along - middle) - 1e-9 ? one : best,
  );
}

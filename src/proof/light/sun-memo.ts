/**
 * The sun of a place with what has been asked of it: faces by where they look, slots by their shape. Kept by everything
 * that they were made from, so that an edit of the wall makes nothing again but what it changes.
 */
import { type Brightest, brightest, type Lit, type SlotBefore } from "./behind-slot.ts";
import { clearYear } from "./clear-year.ts";
import { type Across, type FaceSun, faceSun } from "./face-sun.ts";
import type { LightSite, Shade } from "./model.ts";
import type { SunTable } from "./sun-table.ts";

/** The sun of one place. */
export interface PlaceSun {
  readonly site: LightSite;
  readonly table: SunTable;
  readonly on: (face: { readonly azimuthDeg: number; readonly across: Across; readonly shade: Shade }) => Lit;
  readonly brightest: (lit: Lit, slot: SlotBefore) => Brightest;
}

/** Slots and faces that a session asks for again and again; beyond these the oldest are made anew. */
const FACES = 64;
const SLOTS = 512;

export function placeSun(site: LightSite, table: SunTable): PlaceSun {
  const suns = new Map<string, FaceSun>();
  const points = new Map<string, Brightest>();
  return {
    site,
    table,
    on: ({ azimuthDeg, across, shade }) => {
      const key = `${azimuthDeg} ${across} ${shade.up} ${shade.left} ${shade.right}`;
      const sun = keep(suns, { key, most: FACES }, () => faceSun(table, { azimuthDeg, across, shade }));
      return { site, table, sun, key };
    },
    brightest: (lit, slot) => {
      const { gapMm, thicknessMm, bevelDeg, cavityMm, everyMm } = slot;
      const key = `${lit.key} ${gapMm} ${thicknessMm} ${bevelDeg} ${cavityMm} ${everyMm}`;
      return keep(points, { key, most: SLOTS }, () => brightest(lit, slot));
    },
  };
}

export interface SunMemo {
  readonly recall: (site: LightSite) => PlaceSun;
}

/** Remembers the latest places, up to `places` of them. */
export function createSunMemo({ places }: { readonly places: number }): SunMemo {
  const kept = new Map<string, PlaceSun>();
  return {
    recall: (site) =>
      keep(kept, { key: JSON.stringify(site), most: places }, () => placeSun(site, clearYear(site))),
  };
}

/**
 * What the process keeps: the sun of a place and year is the same for every wall that is proven there, and takes longer to make than
 * all other proof of a wall (decision 0009).
 */
export const SUNS: SunMemo = createSunMemo({ places: 4 });

/** What the key stands for, made now where it is not known; the oldest goes beyond the limit. */
function keep<Thing>(
  kept: Map<string, Thing>,
  { key, most }: { readonly key: string; readonly most: number },
  make: () => Thing,
): Thing {
  const thing = kept.get(key) ?? make();
  kept.delete(key);
  kept.set(key, thing);
  for (const oldest of kept.keys()) {
    if (kept.size <= most) break;
    kept.delete(oldest);
  }
  return thing;
}

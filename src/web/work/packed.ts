/**
 * What the worker's answers have in common with the one before them, named by its place there, so that an edit of one face
 * sends one face and what was found on it. Both sides see the same answers in the same order.
 */
import type { Facade, FaceLayout } from "../../setout/facade.ts";
import type { LaidFace } from "../../setout/face-layout.ts";
import type { KeptLayouts } from "../../setout/memo.ts";

export type PackedList<Item> = readonly (Item | number)[];

/** Findings follow when they are all known. */
export type PackedFacade = Omit<Facade, "faces" | "findings"> & { readonly faces: PackedList<FaceLayout> };

/** Laid-out faces, those that the page shows named by their place. */
export interface PackedLayouts extends Omit<KeptLayouts, "faces"> {
  readonly faces: readonly {
    readonly own: string;
    readonly findings: LaidFace["findings"];
    readonly layout: FaceLayout | number;
  }[];
}

const texts = new WeakMap<object, string>();

function textOf(item: object): string {
  const held = texts.get(item) ?? JSON.stringify(item);
  texts.set(item, held);
  return held;
}

/** The same list, with the items of the list before where they say the same: what was found anew is often what was known. */
export function asHeld<Item extends object>(list: readonly Item[], held: readonly Item[]): Item[] {
  const same = new Set(held);
  const alike = new Map(held.map((item) => [textOf(item), item]));
  return list.map((item) => (same.has(item) ? item : (alike.get(textOf(item)) ?? item)));
}

/** @param held the list before, whose items are named by their places */
export function packedList<Item extends object>(
  list: readonly Item[],
  held: readonly Item[],
): PackedList<Item> {
  const places = new Map(held.map((item, place) => [item, place]));
  return list.map((item) => places.get(item) ?? item);
}

export function unpackedList<Item extends object>(list: PackedList<Item>, held: readonly Item[]): Item[] {
  return list.map((item) => {
    const whole = typeof item === "number" ? held[item] : item;
    if (!whole) throw new Error(`the list before had nothing in place ${item}`);
    return whole;
  });
}

/** @param held the faces of the facade before */
export function packed({ findings: _, ...facade }: Facade, held: readonly FaceLayout[]): PackedFacade {
  return { ...facade, faces: packedList(facade.faces, held) };
}

export function unpacked(facade: PackedFacade, held: readonly FaceLayout[]): Facade {
  return { ...facade, faces: unpackedList(facade.faces, held), findings: [] };
}

/** @param held the faces that the page shows */
export function packedLayouts({ faces, ...kept }: KeptLayouts, held: readonly FaceLayout[]): PackedLayouts {
  const layouts = packedList(
    faces.map(({ face }) => face.layout),
    held,
  );
  return {
    ...kept,
    faces: faces.map(({ own, face: { findings } }, i) => ({
      own,
      findings,
      layout: layouts[i] as FaceLayout | number,
    })),
  };
}

/** The faces that the page shows keep their identity: by it the page knows what it has drawn. */
export function unpackedLayouts({ faces, ...kept }: PackedLayouts, held: readonly FaceLayout[]): KeptLayouts {
  const layouts = unpackedList(
    faces.map(({ layout }) => layout),
    held,
  );
  return {
    ...kept,
    faces: faces.map(({ own, findings }, i) => ({
      own,
      face: { findings, layout: layouts[i] as FaceLayout },
    })),
  };
}

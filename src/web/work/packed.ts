/**
 * A facade on its way from the worker: faces that the page has from the one before are named by their place there, so that
 * an edit of one face sends one face. Both sides see the same facades in the same order.
 */
import type { Facade, FaceLayout } from "../../setout/facade.ts";

/** Findings follow when they are all known. */
export type PackedFacade = Omit<Facade, "faces" | "findings"> & {
  readonly faces: readonly (FaceLayout | number)[];
};

/** @param held the faces of the facade before */
export function packed({ findings: _, ...facade }: Facade, held: readonly FaceLayout[]): PackedFacade {
  const places = new Map(held.map((face, place) => [face, place]));
  return { ...facade, faces: facade.faces.map((face) => places.get(face) ?? face) };
}

export function unpacked(facade: PackedFacade, held: readonly FaceLayout[]): Facade {
  const faces = facade.faces.map((face) => {
    const whole = typeof face === "number" ? held[face] : face;
    if (!whole) throw new Error(`the facade before had no face ${face}`);
    return whole;
  });
  return { ...facade, faces, findings: [] };
}

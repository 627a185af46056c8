/**
 * A design on its way from the worker: faces that the page has from the answer before are named by their place there, so
 * that an edit of one face sends one face. Both sides see the same answers in the same order.
 */
import type { FileDesign } from "../../design.ts";
import type { FaceLayout } from "../../setout/facade.ts";

type Designed = Extract<FileDesign, { kind: "designed" }>;
type Facade = Designed["design"]["facade"];

export interface PackedDesign extends Omit<Designed, "design"> {
  readonly design: Omit<Designed["design"], "facade"> & {
    readonly facade: Omit<Facade, "faces"> & { readonly faces: readonly (FaceLayout | number)[] };
  };
}

/** @param held the faces of the answer before */
export function packed(answer: Designed, held: readonly FaceLayout[]): PackedDesign {
  const places = new Map(held.map((face, place) => [face, place]));
  return withFaces(answer, (faces) => faces.map((face) => places.get(face) ?? face));
}

export function unpacked(answer: PackedDesign, held: readonly FaceLayout[]): Designed {
  const { design } = answer;
  const faces = design.facade.faces.map((face) => {
    const whole = typeof face === "number" ? held[face] : face;
    if (!whole) throw new Error(`the answer before had no face ${face}`);
    return whole;
  });
  return { ...answer, design: { ...design, facade: { ...design.facade, faces } } };
}

function withFaces(
  answer: Designed,
  change: (faces: readonly FaceLayout[]) => readonly (FaceLayout | number)[],
): PackedDesign {
  const { design } = answer;
  return {
    ...answer,
    design: { ...design, facade: { ...design.facade, faces: change(design.facade.faces) } },
  };
}

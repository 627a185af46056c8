/** The faces of a design in the scene: those that an edit did not touch are kept, the others are built anew. */
import { Group } from "three";
import type { Design } from "../../design.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import { createFaceModel, type FaceModel } from "./face-model.ts";
import type { Materials } from "./materials.ts";
import { turnsOf, unfolding, type Vector } from "./placing.ts";
import { spotsInPlane } from "./plane.ts";
import { headsOn, shapesOn } from "./shapes.ts";

export interface Building {
  readonly group: Group;
  build(design: Design): void;
  models(): FaceModel[];
  modelOf(face: string): FaceModel | undefined;
  /** @param part 0: as the faces stand; 1: in one plane */
  place(part: number): void;
  dispose(): void;
}

interface Built {
  readonly key: string;
  readonly face: FaceLayout;
  readonly model: FaceModel;
  readonly turn: number;
  readonly to: Vector;
}

export function createBuilding(materials: Materials): Building {
  const group = new Group();
  let built: Built[] = [];
  return {
    group,
    build(design) {
      const { faces } = design.facade;
      const turns = turnsOf(faces);
      const spots = spotsInPlane(design.facade);
      const before = built;
      built = faces.map((face, i) => {
        const key = keyOf(face, design);
        const kept = before.find((one) => one.face === face && one.key === key);
        const model =
          kept?.model ?? createFaceModel({ shapes: shapesOn(face, design), heads: headsOn(face) }, materials);
        group.add(model.group);
        return { key, face, model, turn: turns[i] ?? 0, to: spots[i] ?? [0, 0, 0] };
      });
      const held = new Set(built.map(({ model }) => model));
      for (const { model } of before) if (!held.has(model)) model.dispose();
    },
    models: () => built.map(({ model }) => model),
    modelOf: (id) => built.find(({ face }) => face.id === id)?.model,
    place(part) {
      for (const { face, model, turn, to } of built) model.place(unfolding(face.frame, { turn, to, part }));
    },
    dispose() {
      for (const { model } of built) model.dispose();
      built = [];
    },
  };
}

/** What the shapes of a face are made from beside its layout. */
function keyOf({ id }: FaceLayout, { facade, project }: Design): string {
  const planes = facade.planes.filter(({ face }) => face === id);
  const given = project.faces.find((face) => face.id === id);
  return JSON.stringify([
    id,
    planes.map(({ zone, layers }) => [zone, layers]),
    project.structure.sheathingThickness,
    given?.frameProjection,
    given?.openings.map(({ id: opening, frameProjection }) => [opening, frameProjection]),
  ]);
}

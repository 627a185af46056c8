/** The battens, backing, packers and closures of each face. */
import type { Face } from "../../../project/schema/project.ts";
import { battenElevation } from "../../../scene/views/batten-elevation.ts";
import { withClouds } from "../../../scene/views/revision-cloud.ts";
import type { FaceLayout, PieceKind } from "../../../setout/facade.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { oneByOne } from "../grouped.ts";
import { changedOn, ownFace } from "../of-face.ts";

const SHOWN: readonly PieceKind[] = ["batten", "counter-batten", "rail", "backing", "packer", "closure"];

export function battenSheets(facts: KindFacts): Iterable<Drawing> {
  return oneByOne(facts.design.facade.faces, (face) =>
    facts.memo.recall(battensOf, { face, own: ownFace(facts, face), changed: changedOn(facts, face) }),
  );
}

interface From {
  readonly face: FaceLayout;
  readonly own: Face | undefined;
  readonly changed: readonly string[];
}

function battensOf({ face, own, changed }: From): Drawing[] {
  const scene = battenElevation({ faces: [face] }, { faces: own ? [own] : [] }, face.id);
  if (!scene) return [];
  return [
    {
      name: `battens-${face.id}`,
      type: message("drawing.document-type.battens"),
      scenes: [withClouds(scene, face, { changed: new Set(changed), kinds: SHOWN })],
      face: face.id,
    },
  ];
}

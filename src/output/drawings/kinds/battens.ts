/** The battens, backing, packers and closures of each face. */
import { battenElevation } from "../../../scene/views/batten-elevation.ts";
import { withClouds } from "../../../scene/views/revision-cloud.ts";
import type { PieceKind } from "../../../setout/facade.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { sheetState } from "../revision.ts";

const SHOWN: readonly PieceKind[] = ["batten", "counter-batten", "rail", "backing", "packer", "closure"];

export function battenSheets({ design }: KindFacts): Drawing[] {
  const { project, facade } = design;
  const changed = new Set(sheetState(design).changed);
  const type = message("drawing.document-type.battens");
  return facade.faces.flatMap((face): Drawing[] => {
    const { id } = face;
    const scene = battenElevation(facade, project, id);
    return scene
      ? [
          {
            name: `battens-${id}`,
            type,
            scenes: [withClouds(scene, face, { changed, kinds: SHOWN })],
            face: id,
          },
        ]
      : [];
  });
}

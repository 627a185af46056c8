/** The battens, backing, packers and closures of each face. */
import { battenElevation } from "../../../scene/views/batten-elevation.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";

export function battenSheets({ design: { project, facade } }: KindFacts): Drawing[] {
  const type = message("drawing.document-type.battens");
  return facade.faces.flatMap(({ id }): Drawing[] => {
    const scene = battenElevation(facade, project, id);
    return scene ? [{ name: `battens-${id}`, type, scenes: [scene], face: id }] : [];
  });
}

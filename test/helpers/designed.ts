/** A project set out and proven, with the questions that tests ask of its pieces. */
import { design } from "../../src/design.ts";
import type { Project } from "../../src/project/schema/project.ts";

export function designed(project: Project) {
  const { facade, findings } = design(project);
  const pieces = facade.faces.flatMap((face) => face.pieces);
  return {
    project,
    facade,
    pieces,
    of: (mark: string) => pieces.find((piece) => piece.mark === mark),
    findings: (code: string) => findings.filter((one) => one.code === code),
  };
}

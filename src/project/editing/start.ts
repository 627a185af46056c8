/** A project to begin with: one rectangular wall, still without openings. */
import type { ProjectDocument } from "../schema/project.ts";
import { starterProject } from "../starter.ts";

export interface Wall {
  readonly title: string;
  /** Of the sheathing in plan, and of what is to be clad from its foot to its top (mm). */
  readonly width: number;
  readonly height: number;
  readonly display: Pick<ProjectDocument["display"], "units" | "language">;
}

/** The starter project with a wall of that size; its other figures are typical of their kind, and say so. */
export function startWall({ title, width, height, display }: Wall): ProjectDocument {
  const starter = starterProject();
  return {
    ...starter,
    title,
    display: { ...starter.display, ...display },
    faces: starter.faces.map((face) => {
      const foot = Number(face.outline[0]?.[1] ?? 0);
      const ground = Number(face.ground[0]?.[1] ?? foot);
      return {
        ...face,
        plan: { from: [0, 0], to: [width, 0] },
        outline: [
          [0, foot],
          [width, foot],
          [width, foot + height],
          [0, foot + height],
        ],
        ground: [
          [0, ground],
          [width, ground],
        ],
        openings: [],
      };
    }),
  };
}

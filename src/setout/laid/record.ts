/** How a face's cladding was laid again: the openings that it was set out on, and the edges that were moved since. */
import type { LaidPiece, LaidRecord } from "../../project/schema/as-built.ts";
import type { Face, Project } from "../../project/schema/project.ts";

export function laidRecord({ asBuilt }: Pick<Project, "asBuilt">, face: string): LaidRecord | undefined {
  return asBuilt?.laid?.find((one) => one.face === face);
}

/** The face as its cladding was set out: with the openings that were drawn then. */
export function asSetOut(face: Face, record: LaidRecord): Face {
  const openings = face.openings.map((opening) => {
    const drawn = record.drawn.find((one) => one.opening === opening.id);
    return drawn ? { ...opening, x: drawn.x, y: drawn.y } : opening;
  });
  return { ...face, openings };
}

export function movesOf(record: LaidRecord | undefined): ReadonlyMap<string, LaidPiece> {
  return new Map(record?.pieces.map((one) => [one.mark, one]));
}

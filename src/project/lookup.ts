/**
 * Things of a project by their ids. In a project that was read, every id inside it points somewhere; undefined comes
 * only of an id from elsewhere.
 */
import type {
  BattenStock,
  BuildUp,
  Cladding,
  Corner,
  Face,
  Opening,
  Project,
  RodSpec,
  Screw,
  Zone,
} from "./schema/project.ts";

/** A zone by its face and its own id. */
export interface ZoneRef {
  readonly face: string;
  readonly zone: string;
}

function byId<Thing extends { readonly id: string }>(
  list: readonly Thing[] | undefined,
  id: string | undefined,
): Thing | undefined {
  return list?.find((thing) => thing.id === id);
}

export function faceById(project: Project, id: string): Face | undefined {
  return byId(project.faces, id);
}

export function zoneByRef(project: Project, { face, zone }: ZoneRef): Zone | undefined {
  return byId(faceById(project, face)?.zones, zone);
}

export function claddingOf(project: Project, zone: Zone): Cladding | undefined {
  return byId(project.claddings, zone.cladding);
}

export function buildUpOf(project: Project, zone: Zone): BuildUp | undefined {
  return byId(project.buildUps, zone.buildUp);
}

export function screwById(project: Project, id: string): Screw | undefined {
  return byId(project.stock.screws, id);
}

export function battenById(project: Project, id: string): BattenStock | undefined {
  return byId(project.stock.battens, id);
}

export function sheetById(project: Project, id: string): Project["stock"]["sheets"][number] | undefined {
  return byId(project.stock.sheets, id);
}

/** The corner at a face's end, left or right seen from outside; none at a free end. */
export function cornerAt(
  project: Project,
  { face, end }: { face: string; end: "left" | "right" },
): Corner | undefined {
  // A corner's left face meets it with its right end.
  return project.corners?.find((corner) => (end === "right" ? corner.left : corner.right) === face);
}

/** The rod that a zone of boards hangs on. */
export function rodOf(project: Project, { face, zone }: ZoneRef): RodSpec | undefined {
  return project.rods?.find((rod) => rod.zones.some((one) => one.face === face && one.zone === zone));
}

/** What starts the marks of a face's pieces. */
export function faceCode({ id, code }: Pick<Face, "id" | "code">): string {
  return code ?? id.toUpperCase();
}

/** What starts the marks of a soffit's pieces. */
export function soffitCode(face: Pick<Face, "id" | "code">, { id, soffit }: Opening): string {
  return soffit?.code ?? `${faceCode(face)}${id.toUpperCase()}`;
}

/** A recess by the face that it opens from. */
export interface Recess {
  readonly parent: Face;
  readonly opening: Opening;
}

const recesses = new WeakMap<Project["faces"], ReadonlyMap<string, Recess>>();

/** The recess that a face lines; undefined for a face that lines none. */
export function recessLinedBy({ faces }: Project, face: string): Recess | undefined {
  const known = recesses.get(faces) ?? recessesOf(faces);
  recesses.set(faces, known);
  return known.get(face);
}

function recessesOf(faces: Project["faces"]): ReadonlyMap<string, Recess> {
  const byLining = new Map<string, Recess>();
  for (const parent of faces)
    for (const opening of parent.openings)
      for (const face of opening.linedBy ?? [])
        if (!byLining.has(face)) byLining.set(face, { parent, opening });
  return byLining;
}

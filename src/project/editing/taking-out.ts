/** Taking faces, openings, penetrations and lines out, with all that speaks of them; their ids are kept from being given again. */
import type { PatchOperation } from "../../findings/finding.ts";
import { faceById } from "../lookup.ts";
import type { Face, Opening } from "../schema/project.ts";
import { faceAt, type Ref, type Source } from "./change.ts";
import { unhang } from "./rods.ts";

export interface Gone {
  readonly faces?: readonly string[];
  readonly openings?: readonly Ref[];
  readonly penetrations?: readonly Ref[];
  readonly lines?: readonly Ref[];
}

/** A recess takes what lines it along, and a face its recesses'; what lines another opening besides stays. */
export function takeOut(source: Source, gone: Gone): PatchOperation[] {
  const { corners = [], survey = [], crews = [], faces } = source.project;
  const isOut = (face: Face, { id }: Opening): boolean =>
    (gone.faces ?? []).includes(face.id) ||
    (gone.openings ?? []).some((ref) => ref.face === face.id && ref.id === id);
  const lining = (out: boolean): string[] =>
    faces.flatMap((face) =>
      face.openings.filter((one) => isOut(face, one) === out).flatMap(({ linedBy = [] }) => linedBy),
    );
  const kept = new Set(lining(false));
  const bare = new Set([...(gone.faces ?? []), ...lining(true).filter((id) => !kept.has(id))]);
  const openings = (gone.openings ?? []).filter(({ face }) => !bare.has(face));
  const penetrations = (gone.penetrations ?? []).filter(({ face }) => !bare.has(face));
  const lines = (gone.lines ?? []).filter(({ face }) => !bare.has(face));
  return [
    ...unlined(faces, bare),
    ...removed("/corners", corners, ({ left, right }) => bare.has(left) || bare.has(right)),
    ...removed("/survey", survey, ({ face }) => bare.has(face)),
    ...crews.flatMap(({ work }, i) => removed(`/crews/${i}/work`, work, ({ face }) => bare.has(face))),
    ...unhang(source, ({ face }) => bare.has(face)),
    ...fromFaces(source, openings, "openings"),
    ...fromFaces(source, penetrations, "penetrations"),
    ...fromFaces(source, lines, "lines"),
    ...removed("/faces", faces, ({ id }) => bare.has(id)),
    ...retired(source, [
      ...namesOf(source, bare),
      ...openings.map(({ id }) => id),
      ...[...penetrations, ...lines].map(({ id }) => id),
    ]),
  ];
}

/** From the last of the list, so that none stands elsewhere by the time it is taken out. */
function removed<T>(path: string, list: readonly T[], isGone: (one: T) => boolean): PatchOperation[] {
  return list
    .flatMap((one, i): PatchOperation[] => (isGone(one) ? [{ op: "remove", path: `${path}/${i}` }] : []))
    .reverse();
}

function fromFaces(
  source: Source,
  refs: readonly Ref[],
  kind: "openings" | "penetrations" | "lines",
): PatchOperation[] {
  return [...new Set(refs.map(({ face }) => face))].flatMap((id) => {
    const at = faceAt(source, id);
    const list: readonly { readonly id: string }[] = at?.face[kind] ?? [];
    const ids = refs.filter(({ face }) => face === id).map((ref) => ref.id);
    return removed(`${at?.path}/${kind}`, list, (one) => ids.includes(one.id));
  });
}

function unlined(faces: readonly Face[], bare: ReadonlySet<string>): PatchOperation[] {
  return faces.flatMap((face, i) =>
    face.openings.flatMap(({ linedBy = [] }, j): PatchOperation[] => {
      const value = linedBy.filter((id) => !bare.has(id));
      return value.length === linedBy.length
        ? []
        : [{ op: "replace", path: `/faces/${i}/openings/${j}/linedBy`, value }];
    }),
  );
}

function namesOf({ project }: Source, faces: ReadonlySet<string>): string[] {
  return [...faces].flatMap((id) => {
    const face = faceById(project, id);
    const on = [...(face?.openings ?? []), ...(face?.penetrations ?? []), ...(face?.lines ?? [])];
    return [id, ...on.map((one) => one.id)];
  });
}

function retired({ project }: Source, ids: readonly string[]): PatchOperation[] {
  const fresh = ids.filter((id) => !project.retired?.includes(id));
  if (!project.retired) return [{ op: "add", path: "/retired", value: fresh }];
  return fresh.map((value) => ({ op: "add", path: "/retired/-", value }));
}

/** Edits of the project file: what each does to the document, as RFC 6902 operations, and what it is called. */
import type { PatchOperation } from "../../findings/finding.ts";
import type { Message } from "../../text/message.ts";
import { parseLength, printLength } from "../../units/feet-inch.ts";
import type { Face, Project } from "../schema/project.ts";

/** A project as it was read, and the document that it was read from: their lists run alike. */
export interface Source {
  readonly project: Project;
  readonly document: unknown;
}

export interface Change {
  readonly operations: readonly PatchOperation[];
  readonly says: Message;
}

/** Something that a face holds. */
export interface Ref {
  readonly face: string;
  readonly id: string;
}

export interface Added extends Change {
  readonly added: Ref;
}

/** A face with its place in the file. */
export function faceAt(
  { project }: Source,
  id: string,
): { readonly face: Face; readonly path: string } | undefined {
  const i = project.faces.findIndex((face) => face.id === id);
  const face = project.faces[i];
  return face && { face, path: `/faces/${i}` };
}

/** A length as the file wrote the old one: what stands in feet and inches stays so, where that is exact. */
export function likeWritten(mm: number, old: unknown): number | string {
  if (typeof old !== "string") return mm;
  const text = printLength(mm, { display: "feet-inch", denominator: 32 });
  const again = parseLength(text, "in");
  return again.ok && again.value === mm ? text : mm;
}

/** Both ends of a span, each as it was written. */
export function spanLikeWritten(span: readonly [number, number], old: unknown): (number | string)[] {
  return span.map((mm, end) => likeWritten(mm, Array.isArray(old) ? old[end] : undefined));
}

/** The next name of a row, never one that was borne before: `W` gives W5 after W4, though W4 is taken out. */
export function nextId({ project }: Source, stem: string, taken: readonly string[]): string {
  const numbers = [...taken, ...(project.retired ?? [])].flatMap((id) => {
    const rest = id.startsWith(stem) ? id.slice(stem.length) : "";
    return /^\d{1,6}$/.test(rest) ? [Number(rest)] : [];
  });
  return `${stem}${Math.max(0, ...numbers) + 1}`;
}

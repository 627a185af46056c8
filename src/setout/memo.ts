/**
 * Keeps laid-out faces and solved rods by everything that they were made from, so that an edit on one face does not lay out
 * another, and a window moved along its wall solves no rod again. What two layouts share (stock, limits, structure, demands) is one key, what a face has of its own another: both are whole
 * texts, never hashes, so a remembered face is always the right one.
 */
import type { Demands } from "../codes/demands.ts";
import type { Project } from "../project/schema/project.ts";
import type { LaidFace } from "./face-layout.ts";
import type { RodOutcome, RodProblem } from "./rod/index.ts";

export interface FaceMemo {
  /** What the project asks, gathered now unless nothing but its faces and rods has changed since the last time. */
  demands(project: Project, gather: () => Demands): Demands;
  /** Told before the faces of a project are asked for: so many of them are kept whatever came before. */
  among(faces: number): void;
  /** The face made from these keys, made now where it is not remembered. */
  recall(shared: string, own: string, make: () => LaidFace): LaidFace;
  /** What the problem comes to, solved now where it is not remembered. */
  rod(problem: RodProblem, solve: (problem: RodProblem) => RodOutcome): RodOutcome;
  /** Faces laid out so far, remembered ones not counted. */
  readonly made: number;
  /** Rods solved so far, remembered ones not counted. */
  readonly solved: number;
  /** What another memo can begin with: the faces of the project at hand, and the rods. */
  kept(): KeptLayouts;
}

/** A memo's contents as plain data, which may cross to another thread. */
export interface KeptLayouts {
  /** What the faces share. */
  readonly shared: string;
  readonly faces: readonly { readonly own: string; readonly face: LaidFace }[];
  readonly rods: readonly { readonly key: string; readonly outcome: RodOutcome }[];
}

const texts = new WeakMap<object, string>();

/** A part of a key: the whole of a value as text, written once for each object, since an edit leaves most parts as they are. */
export function keyOf(part: object | undefined): string {
  if (!part) return "";
  const known = texts.get(part);
  if (known !== undefined) return known;
  const text = JSON.stringify(part);
  texts.set(part, text);
  return text;
}

/** Rods of the project at hand, each in the year and as given, and of a few edits back. */
const RODS = 64;

/**
 * Remembers the faces of the project at hand and `spare` more, of the latest few sets of shared input. Few are spared: what is
 * kept is looked through by every collection of garbage, and a drag through a hundred places would keep them all.
 */
export function createFaceMemo({
  spare,
  shareds,
  from,
}: {
  readonly spare: number;
  readonly shareds: number;
  /** What another memo had kept. */
  readonly from?: KeptLayouts;
}): FaceMemo {
  let faces = 0;
  let asked: { readonly by: Project; readonly demands: Demands } | undefined;
  const kept = new Map<string, Map<string, LaidFace>>();
  if (from) kept.set(from.shared, new Map(from.faces.map(({ own, face }) => [own, face])));
  const rods = new Map((from?.rods ?? []).map(({ key, outcome }) => [key, outcome]));
  let made = 0;
  let solved = 0;
  return {
    get made() {
      return made;
    },
    get solved() {
      return solved;
    },
    demands(project, gather) {
      if (!asked || !asksAlike(asked.by, project)) asked = { by: project, demands: gather() };
      return asked.demands;
    },
    among(count) {
      faces = count;
    },
    kept() {
      const [shared, latest] = [...kept].at(-1) ?? ["", new Map<string, LaidFace>()];
      return {
        shared,
        faces: [...latest].slice(-faces).map(([own, face]) => ({ own, face })),
        rods: [...rods].map(([key, outcome]) => ({ key, outcome })),
      };
    },
    rod(problem, solve) {
      const key = JSON.stringify(problem);
      const known = rods.get(key);
      const outcome = known ?? solve(problem);
      if (!known) solved += 1;
      freshen(rods, key, outcome, RODS);
      return outcome;
    },
    recall(shared, own, make) {
      const group = kept.get(shared) ?? new Map<string, LaidFace>();
      freshen(kept, shared, group, shareds);
      const known = group.get(own);
      const face = known ?? make();
      if (!known) made += 1;
      freshen(group, own, face, faces + spare);
      return face;
    },
  };
}

/** Whether all that demands are gathered from is the very same: an edit shares with the project before it whatever it leaves alone. */
function asksAlike(a: Project, b: Project): boolean {
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]) as Set<keyof Project>;
  return [...keys].every((key) => key === "faces" || key === "rods" || a[key] === b[key]);
}

/** Puts an entry last and lets the oldest go beyond the limit. */
function freshen<T>(map: Map<string, T>, key: string, value: T, limit: number): void {
  map.delete(key);
  map.set(key, value);
  for (const oldest of map.keys()) {
    if (map.size <= limit) break;
    map.delete(oldest);
  }
}

/** The level lines that openings and the project ask of a rod: those that end its segments, and those that its order of widths should meet. */
import type { RodSpec } from "../../project/schema/project.ts";
import type { KeepOut, ZoneGround } from "../ground-plan.ts";
import { MOST_SECONDARY_LINES } from "../rod/index.ts";

/** A zone that hangs on the rod. */
export interface RodZone {
  readonly ground: ZoneGround;
  /** Every opening of the face, whichever zone it lies in: lines run through both claddings. */
  readonly faceKeepOuts: readonly KeepOut[];
}

/** The edge of an opening that a line answers to. */
export interface OpeningEdge {
  readonly face: string;
  readonly opening: string;
  readonly edge: "sill" | "head";
}

/** What a line answers to; a line of the project's own stands for itself. */
export type Asker = OpeningEdge | { readonly face: string; readonly line: string; readonly edge: "own" };

export interface RodLine {
  readonly id: string;
  readonly at: number;
  readonly kind: Asker["edge"];
  /** Whether a leading face asks for it. */
  readonly leads: boolean;
  readonly askers: readonly Asker[];
}

/** An end of a segment. The lowest and the highest one belong to the zones and have no askers. */
export interface Border {
  readonly at: number;
  readonly askers: readonly Asker[];
}

export interface RodLines {
  /** From the base to the top; segment n lies between borders n − 1 and n. */
  readonly borders: readonly Border[];
  /** Upward. */
  readonly secondary: readonly RodLine[];
  /** Secondary lines beyond the number that the exact search takes on, the least important ones. */
  readonly leftOut: readonly RodLine[];
}

/**
 * Lines of the leading faces end segments; the others are met by order. A leading line nearer to its neighbour than the
 * narrowest board cannot hold a course and is met by order too.
 */
export function linesOf(at: {
  readonly spec: RodSpec;
  readonly zones: readonly RodZone[];
  readonly narrowest: number;
}): RodLines {
  const base = Math.min(...at.zones.map(({ ground }) => ground.bounds.y[0]));
  const top = Math.max(...at.zones.map(({ ground }) => ground.bounds.y[1]));
  const lines = askedLines(at.spec, at.zones)
    .filter(({ at: y }) => y > base && y < top)
    .sort((a, b) => a.at - b.at);
  const borders: Border[] = [{ at: base, askers: [] }];
  const secondary: RodLine[] = [];
  for (const line of lines.filter(({ leads }) => leads)) {
    const last = borders.at(-1)?.at ?? base;
    if (line.at - last < at.narrowest || top - line.at < at.narrowest) secondary.push(line);
    else borders.push({ at: line.at, askers: line.askers });
  }
  borders.push({ at: top, askers: [] });
  secondary.push(...lines.filter(({ leads }) => !leads));
  const ranked = [...secondary].sort(byRank);
  const upward = (a: RodLine, b: RodLine): number => a.at - b.at;
  return {
    borders,
    secondary: ranked.slice(0, MOST_SECONDARY_LINES).sort(upward),
    leftOut: ranked.slice(MOST_SECONDARY_LINES).sort(upward),
  };
}

/** One line a height, named after the first that asks for it, leading faces first. */
function askedLines(spec: RodSpec, zones: readonly RodZone[]): RodLine[] {
  const leading = zones.filter(({ ground }) => spec.leads.includes(ground.face.id));
  const following = zones.filter((zone) => !leading.includes(zone));
  const lines = new Map<number, RodLine>();
  const ask = (at: number, asker: Asker, leads: boolean): void => {
    const { face, edge } = asker;
    const known = lines.get(at);
    if (known === undefined)
      lines.set(at, { id: `${face} ${edge} ${nameOf(asker)}`, at, kind: edge, leads, askers: [asker] });
    // Only what leading faces ask for moves a border; two zones of one face ask but once.
    else if (known.leads === leads && !known.askers.some((one) => sameAsker(one, asker)))
      lines.set(at, { ...known, askers: [...known.askers, asker] });
  };
  for (const { ground, faceKeepOuts } of [...leading, ...following]) {
    const leads = spec.leads.includes(ground.face.id);
    for (const { of, sillLine, headLine, rect } of faceKeepOuts) {
      const touches = rect.x[0] < ground.bounds.x[1] && rect.x[1] > ground.bounds.x[0];
      if (!leads && !touches) continue;
      const asker = { face: ground.face.id, opening: of };
      if (sillLine !== undefined) ask(sillLine, { edge: "sill", ...asker }, leads);
      ask(headLine, { edge: "head", ...asker }, leads);
    }
    for (const { id, y } of ground.face.lines ?? [])
      ask(y, { face: ground.face.id, line: id, edge: "own" }, leads);
  }
  return [...lines.values()];
}

function nameOf(asker: Asker): string {
  return asker.edge === "own" ? asker.line : asker.opening;
}

function sameAsker(one: Asker, other: Asker): boolean {
  return one.face === other.face && one.edge === other.edge && nameOf(one) === nameOf(other);
}

/**
 * Which secondary lines matter most: those of leading faces, then those that more openings share, then heads before sills (the
 * eye follows the head line round the building), then the lower ones (common practice).
 */
function byRank(a: RodLine, b: RodLine): number {
  return (
    Number(b.leads) - Number(a.leads) ||
    b.askers.length - a.askers.length ||
    Number(b.kind === "head") - Number(a.kind === "head") ||
    a.at - b.at
  );
}

/** Which screw of the stock suits: it bites deep enough in the timber behind, and does not come out of its back. */
import type { ZoneRef } from "../../project/lookup.ts";
import type { Project, Screw } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { RuleSaid } from "./model.ts";

/** What a screw passes and what holds it, somewhere in the building. */
export interface Held {
  readonly zones: readonly ZoneRef[];
  readonly passes: number;
  /** Thickness of the timber that holds its point. */
  readonly holder: number;
  /** What to say of a point that comes out at the back of it; it fails unless told. */
  readonly comingOut?: "attention" | "nothing";
  /** The screw that is there already and is not judged anew, because nothing changes there. */
  readonly keeps?: string;
}

export interface ScrewWanted {
  readonly rule: "batten-screw" | "rail-screw" | "cladding-screw";
  readonly use: Screw["use"];
  readonly present: string;
  /** Least bite. */
  readonly limit: number;
  readonly held: readonly Held[];
}

/**
 * The present screw where it suits, else the shortest and then cheapest that does. Without one that suits, the one that
 * lacks least, with what it lacks.
 */
export function chosenScrew(
  { stock }: Project,
  wanted: ScrewWanted,
): { readonly screw: string; readonly said: readonly RuleSaid[] } {
  const screws = stock.screws
    .filter(({ use }) => use === wanted.use)
    .map((screw) => ({
      screw,
      fault: Math.max(0, ...wanted.held.map((one) => faultIn(screw, one, wanted))),
    }));
  const least = Math.min(...screws.map(({ fault }) => fault));
  const [best] = screws
    .filter(({ fault }) => fault === least)
    .map(({ screw }) => screw)
    .sort(
      (a, b) =>
        Number(b.id === wanted.present) - Number(a.id === wanted.present) ||
        a.length - b.length ||
        (a.price ?? 0) - (b.price ?? 0),
    );
  if (!best) throw new Error(`a project that was read has a screw for each use; none for ${wanted.use}`);
  const worst = least > 0 ? wanted.held.find((one) => faultIn(best, one, wanted) === least) : undefined;
  const out = wanted.held.find(
    (one) => one.comingOut === "attention" && best.length - one.passes > one.holder,
  );
  const said = worst
    ? [saidOf(best, worst, { ...wanted, outcome: "fail" })]
    : out
      ? [saidOf(best, out, { ...wanted, outcome: "attention" })]
      : [];
  return { screw: best.id, said };
}

/** What a screw lacks in bite, or comes out at the back, whichever is more; 0 where it suits. */
function faultIn(screw: Screw, at: Held, { limit }: ScrewWanted): number {
  if (at.keeps === screw.id) return 0;
  const within = snap(screw.length - at.passes);
  const short = snap(limit - Math.min(within, at.holder));
  return Math.max(0, short, at.comingOut ? 0 : snap(within - at.holder));
}

function saidOf(
  { id, length }: Screw,
  at: Held,
  { rule, limit, outcome }: ScrewWanted & Pick<RuleSaid, "outcome">,
): RuleSaid {
  const within = snap(length - at.passes);
  const bite = snap(Math.max(0, Math.min(within, at.holder)));
  const short = bite < limit;
  const key = !short ? "out" : at.holder < limit ? "thin" : "short";
  const values = {
    screw: id,
    bite,
    limit,
    passes: at.passes,
    holder: at.holder,
    out: snap(within - at.holder),
  };
  return {
    rule,
    outcome,
    zones: at.zones,
    demand: short ? bite : within,
    limit: short ? limit : at.holder,
    unit: "mm",
    says: message(`planes.${rule}.${key}`, values),
  };
}

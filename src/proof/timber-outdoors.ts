/** P009: woods whose heartwood does not resist decay, named by a board cladding or by a lot that it draws on. */
import type { WoodDemand } from "../codes/demands.ts";
import { speciesNamed } from "../codes/species-named.ts";
import { type Finding, finding, type Outcome } from "../findings/finding.ts";
import { type Message, message } from "../text/message.ts";
import type { ProofContext } from "./context.ts";

export function timberOutdoors({ project, demands }: ProofContext): Finding[] {
  return project.claddings.flatMap((cladding, index) =>
    (demands.boards[cladding.id]?.woods ?? []).map((wood) => judged(wood, `/claddings/${index}`)),
  );
}

function judged(wood: WoodDemand, path: string): Finding {
  const { outcome, key } = verdict(wood.resistance);
  const inLots = outcome === "attention" && wood.lots.length > 0;
  const judgedOn = finding({
    code: "P009",
    outcome,
    where: { path: wood.lots.length > 0 ? `${path}/lots` : `${path}/species` },
    says: message(`proof.timber.${key}${inLots ? "-lots" : ""}`, {
      // An id of the catalogue reads as words.
      wood: woodName(wood.name),
      lots: wood.lots,
    }),
    ...(outcome === "pass" ? {} : { hint: message(`proof.timber.${key}-hint`) }),
    source: wood.source,
  });
  // There is no arithmetic to carry the basis: resistance is a class of the wood, not of the board in hand, unless the project says so of its own.
  return outcome === "pass" ? { ...judgedOn, provisional: wood.basis !== "given" } : judgedOn;
}

function verdict(resistance: WoodDemand["resistance"]): { outcome: Outcome; key: string } {
  if (resistance === undefined) return { outcome: "cannot evaluate", key: "unknown" };
  if (resistance === "not resistant") return { outcome: "attention", key: "not-resistant" };
  return { outcome: "pass", key: "resistant" };
}

/** The wood in the reader's language where the catalogue knows it, and the project's own word where not. */
function woodName(words: string): string | Message {
  const known = speciesNamed(words);
  return known ? message(`catalogue.species.${known.id}`) : words;
}

/** What would settle an input that is typical or from memory: whose data sheet, which record, which agreement. */
import type { RuleCode } from "../../findings/codes.ts";
import { type Message, message } from "../../text/message.ts";

const SETTLED_BY = {
  boards: [
    "light.input.gap-widest",
    "light.input.joints-opened",
    "proof.input.growth-wettest",
    "proof.input.moisture-driest",
    "proof.input.moisture-wettest",
    "proof.input.opening-when-driest",
    "proof.input.shrinkage-driest",
  ],
  cladding: [
    "proof.input.expansion",
    "proof.input.hung-mass",
    "proof.input.largest-batten-spacing",
    "proof.input.moisture-movement",
    "proof.input.movement",
    "proof.input.piece-mass",
    "proof.input.bending-strength",
    "proof.input.modulus",
    "proof.input.sag-span-over",
    "proof.input.screw-weight",
    "proof.input.size-tolerance",
    "proof.input.warming",
    "setout.level-joint.cover",
  ],
  membrane: ["light.input.most", "setout.membrane.roll-width"],
  screws: [
    "proof.input.metal-class",
    "proof.input.screw-holds",
    "proof.input.screw-conductivity",
    "proof.input.screw-core",
    "setout.bite.limit",
  ],
  insulation: [
    "proof.input.insulation-resistance",
    "proof.input.upper-limit",
    "proof.input.lower-limit",
    "setout.squeeze.stress",
  ],
  weather: [
    "light.input.from-beam",
    "light.input.from-ground",
    "light.input.from-sky",
    "proof.input.cavity-speed",
    "proof.input.mean-wind",
    "proof.input.snow-depth",
    "proof.input.wind-from",
    "proof.input.year-rain",
  ],
  exposure: ["proof.input.place-factors", "proof.input.washing-factor"],
  code: [
    "proof.input.boundary-caution",
    "proof.input.net-wind",
    "proof.input.wind-factor",
    "structure.input.basic-speed",
    "structure.input.gust-speed",
    "structure.input.hourly-pressure",
    "structure.input.importance",
    "structure.input.inside",
    "structure.input.topography",
    "proof.input.fastener-factor",
    "proof.input.least-cavity",
    "proof.input.rain-moderate",
    "proof.input.widest-across-water",
    "proof.input.widest-opening",
  ],
  site: [
    "proof.input.least-open",
    "proof.input.one-person",
    "proof.input.place-tolerance",
    "setout.pan.back",
    "setout.pan.ends",
  ],
} as const;

/** Rules that judge by a typical property and show no working. */
const OF_RULES: Partial<Record<RuleCode, string>> = { P009: "wood", P039: "wood" };

const KINDS: ReadonlyMap<string, string> = new Map(
  Object.entries(SETTLED_BY).flatMap(([kind, meanings]) => meanings.map((meaning) => [meaning, kind])),
);

/** A sentence naming it; for an input not listed, the sheet of whatever it belongs to. */
export function settledBy(meaning: Message): Message {
  return message(`book.settled.${KINDS.get(meaning.key) ?? "other"}`);
}

/** The same for a provisional pass that shows no working. */
export function ruleSettledBy(code: RuleCode): Message {
  return message(`book.settled.${OF_RULES[code] ?? "other"}`);
}

/** A beam of up to four spans with an arm past each end, under an even load: its largest moment, reaction and sag. */
import { type EquationInput, equation } from "../equation.ts";
import { type Bent, continuousBeam } from "./continuous-beam.ts";

const SPANS = ["firstMm", "secondMm", "thirdMm", "fourthMm"] as const;

type Spans = Readonly<Record<(typeof SPANS)[number] | "leftArmMm" | "rightArmMm" | "loadNPerMm", number>>;

const INPUTS: readonly EquationInput<keyof Spans>[] = [
  { key: "firstMm", unit: "mm", range: [10, 20_000] },
  ...(["secondMm", "thirdMm", "fourthMm", "leftArmMm", "rightArmMm"] as const).map((key) => ({
    key,
    unit: "mm",
    range: [0, 20_000] as const,
  })),
  { key: "loadNPerMm", unit: "N/mm", range: [0, 1000] },
];

/** Spans of no length are left out. */
function bentOf(given: Spans): Bent {
  const supports = [0];
  for (const key of SPANS) {
    if (given[key] > 0) supports.push((supports.at(-1) as number) + given[key]);
  }
  const bent = continuousBeam({
    supports,
    from: -given.leftArmMm,
    to: (supports.at(-1) as number) + given.rightArmMm,
    load: given.loadNPerMm,
  });
  if (!bent) throw new Error("a first span has two supports");
  return bent;
}

const SOURCE = {
  document: "Slope-deflection equations of elastic beams on supports that do not give",
  clause: "tables of continuous beams agree, and the theorem of three moments",
} as const;

const FORMULA = "slope-deflection over firstMm, secondMm, thirdMm, fourthMm, leftArmMm, rightArmMm";

export const BEAM_MOMENT = equation({
  name: "beam-moment",
  formula: `largest of |M| · loadNPerMm: ${FORMULA}`,
  inputs: INPUTS,
  result: { unit: "N·mm" },
  source: SOURCE,
  work: (given) => bentOf(given).moment,
});

export const BEAM_REACTION = equation({
  name: "beam-reaction",
  formula: `largest of R · loadNPerMm: ${FORMULA}`,
  inputs: INPUTS,
  result: { unit: "N" },
  source: SOURCE,
  work: (given) => Math.max(...bentOf(given).reactions),
});

export const BEAM_SAG = equation({
  name: "beam-sag",
  formula: `largest of |y| · loadNPerMm / (modulusMPa · widthMm · thicknessMm³/12): ${FORMULA}`,
  inputs: [
    ...INPUTS,
    { key: "modulusMPa", unit: "MPa", range: [100, 300_000] },
    { key: "widthMm", unit: "mm", range: [1, 5000] },
    { key: "thicknessMm", unit: "mm", range: [1, 500] },
  ],
  result: { unit: "mm" },
  source: SOURCE,
  work: ({ modulusMPa, widthMm, thicknessMm, ...given }) =>
    Math.abs(bentOf(given).sag.stiff) / ((modulusMPa * widthMm * thicknessMm ** 3) / 12),
});

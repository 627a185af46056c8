/** The parts of the job, in the order of the job. */

export const PARTS = [
  "survey",
  "build-up",
  "setting-out",
  "proof",
  "cutting",
  "order",
  "sheets",
  "site",
  "upkeep",
] as const;

export type Part = (typeof PARTS)[number];

/** Parts that have their place on the sheet today; the others say what they will hold. */
export const LIVE_PARTS: readonly Part[] = [
  "survey",
  "build-up",
  "setting-out",
  "proof",
  "cutting",
  "order",
  "sheets",
  "upkeep",
];

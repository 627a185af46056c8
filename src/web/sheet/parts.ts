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

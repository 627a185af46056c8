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
export const LIVE_PARTS: readonly Part[] = ["build-up", "setting-out", "proof", "cutting", "order", "sheets"];

/** Words in the names of the written documents that belong to a part. */
const DOCUMENT_WORDS: Readonly<Record<Part, RegExp | undefined>> = {
  survey: undefined,
  "build-up": /section/i,
  "setting-out": /piece|schedule|set-?out/i,
  proof: /finding|proof/i,
  cutting: /cut|rip/i,
  order: /order|takeoff|quantit/i,
  sheets: /\.(?:svg|pdf|dxf)$/i,
  site: undefined,
  upkeep: undefined,
};

export function documentsOf<Named extends { readonly name: string }>(
  part: Part,
  documents: readonly Named[],
): readonly Named[] {
  const word = DOCUMENT_WORDS[part];
  return word ? documents.filter(({ name }) => word.test(name)) : [];
}

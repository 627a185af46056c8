/** A value of a zone month by month, as a plot shows it. */
import type { Message } from "../../text/message.ts";

export const YEAR_KINDS = ["gap", "light", "drying"] as const;

export type YearKind = (typeof YEAR_KINDS)[number];

export interface Year {
  /** Id of the zone that it is told of. */
  readonly zone: string;
  /** January first: from the least to the most in the zone, or in the month. */
  readonly months: readonly { readonly least: number; readonly most: number }[];
  /** Levels to compare with, and what they are called; between two lies the band to keep to. */
  readonly limits: readonly { readonly value: number; readonly name: Message }[];
  /** What it is of. */
  readonly about: Message;
  /** Its least and its most. */
  readonly range: Message;
  /** The plot in words, for who does not see it. */
  readonly says: Message;
}

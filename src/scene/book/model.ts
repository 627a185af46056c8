/** The calculation book: findings in the order in which a reader checks them, with what each one leans on. */
import type { RuleCode } from "../../findings/codes.ts";
import type { Finding, Outcome } from "../../findings/finding.ts";
import type { Message } from "../../text/message.ts";
import type { SceneText } from "../model.ts";

export const SUBJECTS = [
  "movement",
  "light",
  "air",
  "water",
  "heat",
  "durability",
  "fire",
  "screws",
  "structure",
  "handling",
  "site",
  "look",
  "setting-out",
  "cutting",
  "file",
] as const;

export type Subject = (typeof SUBJECTS)[number];

/** Who answers for a finding. */
export interface BookWaiver {
  readonly who: string;
  readonly when: string;
  readonly why: string;
}

/** What is typical or from memory, and what would put better in its place. */
export interface Unsettled {
  /** Of the input; absent where a rule judges by a property and shows no working. */
  readonly symbol?: string;
  readonly by: Message;
}

export interface BookEntry {
  /** Within the book: the rule's code and a count, `P002-3`. */
  readonly number: string;
  readonly finding: Finding;
  readonly place: SceneText;
  readonly waiver?: BookWaiver;
  /** Empty where nothing rests on a typical or remembered value. */
  readonly unsettled: readonly Unsettled[];
  /** Sources that ask for different things, a line each; empty where one speaks. */
  readonly sideBySide: readonly Message[];
}

export interface BookRule {
  readonly code: RuleCode;
  readonly name: Message;
  /** The governing place first. */
  readonly entries: readonly BookEntry[];
}

export interface BookChapter {
  readonly subject: Subject;
  readonly rules: readonly BookRule[];
  readonly counts: Readonly<Record<Outcome, number>>;
  /** Of the passes. */
  readonly provisional: number;
}

export interface Book {
  readonly title: string;
  readonly about?: string;
  readonly revision?: string;
  readonly place: string;
  readonly chapters: readonly BookChapter[];
  /** To be settled, in front of everything: waived ones among them. */
  readonly fails: readonly BookEntry[];
  readonly cannotEvaluate: readonly BookEntry[];
  readonly provisional: readonly BookEntry[];
  /** Where the work can hurt someone. */
  readonly cautions: readonly BookEntry[];
}

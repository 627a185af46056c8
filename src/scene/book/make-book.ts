/** Makes the calculation book of a project from what was found: the same objects that the page and the JSON show. */
import type { RuleCode } from "../../findings/codes.ts";
import { byWeight, type Finding, type Outcome } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import { type Message, type MessageValue, message } from "../../text/message.ts";
import {
  type Book,
  type BookChapter,
  type BookEntry,
  type BookRule,
  type BookWaiver,
  SUBJECTS,
  type Subject,
  type Unsettled,
} from "./model.ts";
import { placeOf } from "./place.ts";
import { ruleSettledBy, settledBy } from "./settled-by.ts";
import { subjectOf } from "./subjects.ts";

export interface BookFacts {
  readonly project: Project;
  readonly findings: readonly Finding[];
  readonly waiverOf: (finding: Finding) => BookWaiver | undefined;
}

export function makeBook({ project, findings, waiverOf }: BookFacts): Book {
  const chapters = SUBJECTS.flatMap((subject) => chapterOf(subject, { project, findings, waiverOf }));
  const entries = chapters.flatMap(({ rules }) => rules.flatMap((rule) => rule.entries));
  const of = (outcome: Outcome): BookEntry[] => entries.filter(({ finding }) => finding.outcome === outcome);
  const { title, about, revision, site } = project;
  return {
    title,
    ...(about !== undefined && { about }),
    ...(revision !== undefined && { revision }),
    place: site.place,
    chapters,
    fails: of("fail"),
    cannotEvaluate: of("cannot evaluate"),
    provisional: entries.filter(({ finding }) => finding.provisional),
    cautions: entries.filter(({ finding }) => CAUTIONS.includes(finding.code) && warns(finding)),
  };
}

/** Rules that warn of harm to people. */
const CAUTIONS: readonly RuleCode[] = ["P008", "P010", "P019"];

function warns({ outcome }: Finding): boolean {
  return outcome !== "pass" && outcome !== "not applicable";
}

function chapterOf(subject: Subject, { project, findings, waiverOf }: BookFacts): BookChapter[] {
  const own = findings.filter(({ code }) => subjectOf(code) === subject);
  if (own.length === 0) return [];
  const codes = [...new Set(own.map(({ code }) => code))].sort();
  const rules = codes.map((code): BookRule => {
    const entries = own.filter((finding) => finding.code === code).sort(byWeight);
    return {
      code,
      name: message(`page.rule.${code}`),
      entries: entries.map((finding, at) => ({
        number: `${code}-${at + 1}`,
        ...entryOf(finding, { project, waiver: waiverOf(finding) }),
      })),
    };
  });
  const count = (outcome: Outcome): number => own.filter((finding) => finding.outcome === outcome).length;
  return [
    {
      subject,
      rules,
      counts: {
        fail: count("fail"),
        "cannot evaluate": count("cannot evaluate"),
        attention: count("attention"),
        pass: count("pass"),
        "not applicable": count("not applicable"),
      },
      provisional: own.filter(({ provisional }) => provisional).length,
    },
  ];
}

function entryOf(
  finding: Finding,
  { project, waiver }: { readonly project: Project; readonly waiver: BookWaiver | undefined },
): Omit<BookEntry, "number"> {
  return {
    finding,
    place: placeOf(finding, project),
    ...(waiver && { waiver }),
    unsettled: unsettledOf(finding),
    sideBySide: sideBySide(finding.says),
  };
}

function unsettledOf({ code, provisional, working }: Finding): Unsettled[] {
  const shaky = (working?.inputs ?? []).filter(({ basis }) => basis === "typical" || basis === "memory");
  if (provisional && shaky.length === 0) return [{ by: ruleSettledBy(code) }];
  return shaky.map(({ symbol, meaning }) => ({ symbol, by: settledBy(meaning) }));
}

/** Where a sentence strings rules together, each of them; one alone has nothing to stand beside. */
function sideBySide({ values }: Message): Message[] {
  const rules = Object.values(values).flatMap((value) =>
    Array.isArray(value) ? (value as MessageValue[]).filter(namesRule) : [],
  );
  return rules.length > 1 ? rules : [];
}

function namesRule(value: MessageValue): value is Message {
  return typeof value === "object" && "values" in value && "rule" in value.values;
}

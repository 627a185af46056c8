/** Findings as text: each outcome by its mark and its word, what, where, by how much, and what would mend it. */
import { blocks, type Finding } from "../../findings/finding.ts";
import { OUTCOME_MARKS, outcomeMark } from "../../findings/outcome-mark.ts";
import { type Waiver, waiverOf } from "../../project/waivers.ts";
import { message } from "../../text/message.ts";
import { type Reader, say, sayLength, sayNumber } from "../../text/say.ts";

export interface FindingsText {
  readonly reader: Reader;
  readonly waivers?: readonly Waiver[] | undefined;
}

/** Every finding in full, each ending in a newline. */
export function printFindings(findings: readonly Finding[], options: FindingsText): string {
  return findings.map((finding) => printFinding(finding, options)).join("");
}

/** Those that are to be settled or looked at. */
export function unsettled(findings: readonly Finding[]): Finding[] {
  return findings.filter((finding) => blocks(finding) || finding.outcome === "attention");
}

/** One in full, ending in a newline. */
export function printFinding(finding: Finding, { reader, waivers }: FindingsText): string {
  const { code, says, hint, working, source } = finding;
  const waiver = waiverOf(finding, waivers);
  const lines = [
    `${outcomeMark(finding)} ${code} ${outcomeWord(finding, reader)}${place(finding)}`,
    `    ${say(says, reader)}`,
    ...figures(finding, reader),
    ...(working ? [`    ${working.formula}`, `    ${working.substituted}`] : []),
    ...(source.kind === "your project" ? [] : [`    ${say(sourceText(source), reader)}`]),
    ...(hint ? [`    → ${say(hint, reader)}`] : []),
    ...otherWays(finding, reader),
    ...(waiver
      ? [
          `    ${say(message("cli.finding.waived", { who: waiver.who, when: waiver.when, why: waiver.why }), reader)}`,
        ]
      : []),
  ];
  return `${lines.join("\n")}\n`;
}

/** The JSON tells the rest. */
const SHOWN_WAYS = 2;

/** What would mend it besides the hint, a line each. */
function otherWays({ hint, choices = [] }: Finding, reader: Reader): string[] {
  const first = hint && say(hint, reader);
  const others = choices.map(({ says }) => say(says, reader)).filter((way) => way !== first);
  const more = others.length - SHOWN_WAYS;
  return [
    ...others.slice(0, SHOWN_WAYS).map((way) => `      ${say(message("cli.finding.or", { way }), reader)}`),
    ...(more > 0 ? [`      ${say(message("cli.finding.more-ways", { count: more }), reader)}`] : []),
  ];
}

/** The outcome in the reader's language; a pass on a typical value says so. */
export function outcomeWord({ outcome, provisional }: Finding, reader: Reader): string {
  return say(provisional ? message("cli.finding.provisional") : message(`term.${outcome}`), reader);
}

/** Face, zone or opening, piece; else the path of the file. */
function place({ where }: Finding): string {
  const { face, zone, opening, marks = [], path } = where;
  const shown = marks.length > SHOWN_MARKS ? [...marks.slice(0, SHOWN_MARKS), "…"] : marks;
  const ids = [face, zone, opening].filter((id) => id !== undefined);
  const parts = [ids.join(" / "), shown.join(", ")].filter((part) => part !== "");
  if (parts.length > 0) return ` · ${parts.join(" · ")}`;
  return path === undefined || path === "" ? "" : ` · ${path}`;
}

const SHOWN_MARKS = 6;

function figures({ demand, limit, unit = "", ratio }: Finding, reader: Reader): string[] {
  if (demand === undefined || limit === undefined) return [];
  const inFeet = unit === "mm" && reader.units === "feet-inch";
  const figure = (value: number): string =>
    inFeet ? sayLength(value, reader) : sayNumber(Number(value.toFixed(3)), undefined, reader);
  const shownUnit = unit === "1" || inFeet ? "" : ` ${unit}`;
  const values = { demand: figure(demand), limit: `${figure(limit)}${shownUnit}` };
  const says =
    ratio === undefined || !Number.isFinite(ratio)
      ? message("cli.finding.against", values)
      : message("cli.finding.ratio", { ...values, ratio: sayNumber(ratio, 2, reader) });
  return [`    ${say(says, reader)}`];
}

function sourceText({ kind, document, clause }: Finding["source"]) {
  if (kind === "common practice") return message("cli.finding.common-practice");
  if (kind === "your data sheet") return message("cli.finding.data-sheet");
  return message("cli.finding.source", { source: [document, clause].filter((part) => part !== undefined) });
}

const COUNTED = ["fail", "cannot evaluate", "attention", "pass", "not applicable"] as const;

/** One line: how many of each outcome, each by its mark and word; waived ones apart. */
export function countLine(findings: readonly Finding[], { reader, waivers }: FindingsText): string {
  const waivedOnes = findings.filter((one) => blocks(one) && waiverOf(one, waivers) !== undefined);
  const open = findings.filter((one) => !waivedOnes.includes(one));
  const counts = COUNTED.map((outcome) => {
    const of = open.filter((one) => one.outcome === outcome);
    const provisional = of.filter((one) => one.provisional).length;
    const counted = say(message(`cli.count.${outcome}`, { count: of.length }), reader);
    const apart =
      provisional > 0 ? ` (◌ ${say(message("cli.count.provisional", { count: provisional }), reader)})` : "";
    return of.length === 0 && outcome !== "fail" ? "" : `${OUTCOME_MARKS[outcome]} ${counted}${apart}`;
  }).filter((part) => part !== "");
  const waivedCount =
    waivedOnes.length === 0 ? [] : [say(message("cli.count.waived", { count: waivedOnes.length }), reader)];
  return [...counts, ...waivedCount].join("   ");
}

/** One entry of the book: where, what, the working with its inputs, the comparison, the source, and what is open. */
import type { Finding, Outcome, Working } from "../../findings/finding.ts";
import { OUTCOME_MARKS, outcomeMark } from "../../findings/outcome-mark.ts";
import type { BookEntry } from "../../scene/book/model.ts";
import { sayText } from "../../scene/shapes.ts";
import { message } from "../../text/message.ts";
import { type Reader, say, sayArithmetic } from "../../text/say.ts";
import { figure, quantity } from "./figures.ts";
import { type Html, html } from "./markup.ts";

export function outcomeHtml({ outcome, provisional }: Finding, reader: Reader): Html {
  const word = say(provisional ? message("book.provisional") : message(`term.${outcome}`), reader);
  return html`<span class="outcome">${outcomeMark({ outcome, provisional })}\u00a0${word}</span>`;
}

export function countHtml(outcome: Outcome, reader: Reader): Html {
  return html`${OUTCOME_MARKS[outcome]}\u00a0${say(message(`term.${outcome}`), reader)}`;
}

export function entryHtml(entry: BookEntry, reader: Reader): Html {
  const { number, finding, place, waiver, unsettled, sideBySide } = entry;
  const { outcome, says, hint, working, where } = finding;
  const word = (key: string): string => say(message(key), reader);
  return html`<article class="entry ${CLASSES[outcome]}" id="${number}">
<header><span class="number">${number}</span>${outcomeHtml(finding, reader)}<span class="place">${sayText(place, reader)}</span></header>
<p class="says">${say(says, reader)}</p>
${hint && html`<p>→ ${say(hint, reader)}</p>`}
${outcome === "cannot evaluate" && where.path !== undefined ? html`<p><strong>${word("book.missing")}</strong> <span class="path">${where.path}</span></p>` : undefined}
${working && workingHtml(working, reader)}
${comparison(finding, reader)}
${sideBySide.length > 0 ? html`<p class="aside">${word("book.side-by-side")}</p><ul class="sides">${sideBySide.map((one) => html`<li>${say(one, reader)}</li>`)}</ul>` : undefined}
<p class="aside">${sourceText(finding, reader)}</p>
${unsettled.length > 0 ? html`<p class="aside">${word(finding.provisional ? "book.settles-pass" : "book.settles")}</p><ul class="sides">${unsettledLines(entry, reader)}</ul>` : undefined}
${waiver && html`<p><strong>${say(message("book.waived", { who: waiver.who, when: waiver.when, why: waiver.why }), reader)}</strong></p>`}
</article>
`;
}

const CLASSES: Readonly<Record<Outcome, string>> = {
  fail: "fail",
  "cannot evaluate": "cannot",
  attention: "attention",
  pass: "holds",
  "not applicable": "none",
};

function workingHtml({ formula, inputs, substituted }: Working, reader: Reader): Html {
  const head = ["symbol", "meaning", "value", "basis"].map((name) =>
    say(message(`book.head.${name}`), reader),
  );
  const rows = inputs.map(
    ({ symbol, meaning, value, unit, basis }) =>
      html`<tr><td class="math symbol">${symbol}</td><td>${say(meaning, reader)}</td><td class="num">${quantity(value, unit, reader)}</td><td${basis === "typical" || basis === "memory" ? html` class="shaky"` : undefined}>${say(message(`term.${basis}`), reader)}</td></tr>`,
  );
  return html`<div class="working"><dl><dt>${say(message("book.formula"), reader)}</dt><dd class="math">${sayArithmetic(formula, reader)}</dd></dl>
<div class="wide"><table><thead><tr><th>${head[0]}</th><th>${head[1]}</th><th class="num">${head[2]}</th><th>${head[3]}</th></tr></thead><tbody>${rows}</tbody></table></div>
<dl><dt>${say(message("book.with-numbers"), reader)}</dt><dd class="math">${sayArithmetic(substituted, reader)}</dd></dl></div>`;
}

/** What is asked against what is allowed; undefined where nothing is compared. */
export function comparedHtml(
  { demand, limit, unit = "1", ratio }: Finding,
  reader: Reader,
): Html | undefined {
  if (demand === undefined || limit === undefined) return undefined;
  const word = (key: string): string => say(message(key), reader);
  const share =
    ratio === undefined || !Number.isFinite(ratio)
      ? undefined
      : html` · ${word("book.ratio")} ${figure(ratio, reader)}`;
  return html`${word("book.result")} ${quantity(demand, unit, reader)} · ${word("book.limit")} ${quantity(limit, unit, reader)}${share}`;
}

function comparison(finding: Finding, reader: Reader): Html | undefined {
  const compared = comparedHtml(finding, reader);
  return compared && html`<p><strong>${compared}</strong></p>`;
}

function sourceText({ source: { kind, document, clause } }: Finding, reader: Reader): string {
  const named = [document, clause].filter((part) => part !== undefined);
  const parts = kind === "document" ? named : [say(message(`book.source.${kind}`), reader), ...named];
  return say(message("book.source", { source: parts }), reader);
}

/** A line for each thing that settles something, with the inputs that it settles. */
function unsettledLines({ unsettled }: BookEntry, reader: Reader): Html[] {
  const settled = new Map<string, string[]>();
  for (const { symbol, by } of unsettled) {
    const sentence = say(by, reader);
    settled.set(sentence, [...(settled.get(sentence) ?? []), ...(symbol === undefined ? [] : [symbol])]);
  }
  return [...settled].map(
    ([sentence, symbols]) =>
      html`<li>${symbols.length > 0 ? html`<span class="math">${symbols.join(", ")}</span> – ` : undefined}${sentence}</li>`,
  );
}

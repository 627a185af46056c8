/** The calculation book as one HTML file that needs nothing else: no script, no picture, no font of its own. */
import { OUTCOMES } from "../../findings/finding.ts";
import { likeEntries } from "../../scene/book/like.ts";
import type { Book, BookChapter, BookEntry } from "../../scene/book/model.ts";
import { sayText } from "../../scene/shapes.ts";
import { message } from "../../text/message.ts";
import { type Reader, say, sayNumber } from "../../text/say.ts";
import { mapped } from "../pieces.ts";
import { countHtml, outcomeHtml } from "./entry-html.ts";
import { likeHtml } from "./like-html.ts";
import { type Html, html } from "./markup.ts";
import { bookStyle } from "./style.ts";

/** Handed out in pieces, the opening first and then rule by rule. */
export function* bookHtml(book: Book, reader: Reader): Generator<string> {
  const word = (key: string): string => say(message(key), reader);
  const revision = book.revision ?? "–";
  const style = bookStyle({
    left: `${book.title} · ${word("book.title")}`,
    right: say(message("book.revision", { revision }), reader),
    foot: word("book.foot"),
    page: word("book.page"),
  });
  yield html`<!doctype html>
<html lang="${reader.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${book.title} · ${word("book.title")}</title>
<style>${{ html: style }}</style>
</head>
<body>
<section class="opening">
<h1>${word("book.title")}</h1>
<p class="says">${book.title}</p>
<p class="facts">${book.place} · ${say(message("book.revision", { revision }), reader)}</p>
${book.about === undefined ? undefined : html`<p>${book.about}</p>`}
<p class="governs"><strong>${word("drawing.caution.codes")}</strong></p>
<p>${word("book.how-to-read")} ${word("book.bases")}${reader.units === "feet-inch" ? ` ${word("book.feet-inch")}` : ""}</p>
${summary(book.chapters, reader)}
${openTable("book.fails", book.fails, reader)}
${openTable("book.cannot-evaluate", book.cannotEvaluate, reader)}
${book.cautions.length === 0 ? undefined : html`<h2>${word("book.cautions")}</h2><ul>${book.cautions.map((entry) => html`<li>${say(entry.finding.says, reader)} ${link(entry)}</li>`)}</ul>`}
${provisionalTable(book.provisional, reader)}
<h2>${word("book.contents")}</h2>
<ol class="contents">${book.chapters.flatMap((chapter, at) => contentsLines(chapter, at + 1, reader))}</ol>
</section>
`.html;
  for (const [at, chapter] of book.chapters.entries()) yield* chapterHtml(chapter, at + 1, reader);
  yield "\n</body>\n</html>\n";
}

function link({ number }: BookEntry): Html {
  return html`<a href="#${number}">${number}</a>`;
}

function subjectName({ subject }: BookChapter, reader: Reader): string {
  return say(message(`book.subject.${subject}`), reader);
}

/** How many of each outcome, a row a subject. */
function summary(chapters: readonly BookChapter[], reader: Reader): Html {
  const number = (count: number): Html => html`<td class="num">${sayNumber(count, undefined, reader)}</td>`;
  const head = OUTCOMES.map((outcome) => html`<th class="num">${countHtml(outcome, reader)}</th>`);
  const rows = chapters.map(
    (chapter, at) =>
      html`<tr><td><a href="#${chapter.subject}">${at + 1} ${subjectName(chapter, reader)}</a></td>${OUTCOMES.map((outcome) => number(chapter.counts[outcome]))}${number(chapter.provisional)}</tr>`,
  );
  const total = (counted: (chapter: BookChapter) => number): Html =>
    number(chapters.reduce((sum, chapter) => sum + counted(chapter), 0));
  return html`<div class="wide"><table><thead><tr><th>${say(message("book.head.subject"), reader)}</th>${head}<th class="num">◌\u00a0${say(message("book.of-them-provisional"), reader)}</th></tr></thead>
<tbody>${rows}<tr><td><strong>${say(message("book.total"), reader)}</strong></td>${OUTCOMES.map((outcome) => total(({ counts }) => counts[outcome]))}${total(({ provisional }) => provisional)}</tr></tbody></table></div>`;
}

/** What is to be settled: a row each, with who answers for it where someone does. */
function openTable(title: string, entries: readonly BookEntry[], reader: Reader): Html {
  const heading = html`<h2>${say(message(title), reader)}</h2>`;
  if (entries.length === 0) return html`${heading}<p>${say(message("book.none"), reader)}</p>`;
  const rows = entries.map(({ finding, waiver, ...entry }) => {
    const answered = waiver && say(message("book.waived", { ...waiver }), reader);
    return html`<tr><td class="num">${link({ finding, ...entry })}</td><td>${outcomeHtml(finding, reader)}</td><td>${sayText(entry.place, reader)}</td><td>${say(finding.says, reader)}${answered === undefined ? undefined : html` <strong>${answered}</strong>`}</td></tr>`;
  });
  return html`${heading}<div class="wide"><table><tbody>${rows}</tbody></table></div>`;
}

/** What rests on typical or remembered values, by what would settle it. */
function provisionalTable(entries: readonly BookEntry[], reader: Reader): Html {
  const heading = html`<h2>${say(message("book.provisionals"), reader)}</h2>`;
  if (entries.length === 0) return html`${heading}<p>${say(message("book.none"), reader)}</p>`;
  const settled = new Map<string, BookEntry[]>();
  for (const entry of entries) {
    for (const by of new Set(entry.unsettled.map((one) => say(one.by, reader)))) {
      const group = settled.get(by);
      if (group) group.push(entry);
      else settled.set(by, [entry]);
    }
  }
  const rows = [...settled].map(
    ([by, group]) =>
      html`<tr><td>${by}</td><td>${group.map((entry, at) => html`${at > 0 ? ", " : ""}${link(entry)}`)}</td></tr>`,
  );
  return html`${heading}<div class="wide"><table><thead><tr><th>${say(message("book.head.settled-by"), reader)}</th><th>${say(message("book.head.entries"), reader)}</th></tr></thead><tbody>${rows}</tbody></table></div>`;
}

function contentsLines(chapter: BookChapter, at: number, reader: Reader): Html[] {
  return [
    html`<li><strong><a href="#${chapter.subject}">${at} ${subjectName(chapter, reader)}</a></strong></li>`,
    ...chapter.rules.map(
      ({ code, name }) => html`<li><a href="#${code}">${code} ${say(name, reader)}</a></li>`,
    ),
  ];
}

function* chapterHtml(chapter: BookChapter, at: number, reader: Reader): Generator<string> {
  yield html`<section>
<h2 id="${chapter.subject}">${at} ${subjectName(chapter, reader)}</h2>
<div class="rules">`.html;
  for (const { code, name, entries } of chapter.rules) {
    yield html`<h3 id="${code}">${code} ${say(name, reader)}</h3>\n`.html;
    yield* mapped(likeEntries(entries), (group) => likeHtml(group, reader).html);
  }
  yield "</div>\n</section>\n";
}

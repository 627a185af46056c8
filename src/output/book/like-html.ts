/** What holds alike: the governing place in full, then a row a place with its own values, its result and the clause beside it. */
import { type LikeRow, likeRows } from "../../scene/book/like.ts";
import type { BookEntry } from "../../scene/book/model.ts";
import { sayText } from "../../scene/shapes.ts";
import { message } from "../../text/message.ts";
import { type Reader, say, sayArithmetic } from "../../text/say.ts";
import { comparedHtml, entryHtml } from "./entry-html.ts";
import { quantity } from "./figures.ts";
import { type Html, html } from "./markup.ts";

const HEADS = ["entry", "place", "values", "result", "clause"] as const;

export function likeHtml(group: readonly BookEntry[], reader: Reader): Html {
  const [first] = group;
  if (!first) return html``;
  const like = likeRows(group);
  if (!like) return entryHtml(first, reader);
  const heads = HEADS.map((name) => html`<th>${say(message(`book.head.${name}`), reader)}</th>`);
  return html`${entryHtml(first, reader)}<div class="like"><p class="aside">${say(like.heading, reader)}</p>
<div class="wide"><table><thead><tr>${heads}</tr></thead><tbody>${like.rows.map((one) => rowHtml(one, reader))}</tbody></table></div></div>
`;
}

/** Each place has its name for links, as an entry has. */
function rowHtml({ entry: { number, finding, place }, inputs }: LikeRow, reader: Reader): Html {
  const { says, working, source } = finding;
  const values = inputs.map(
    ({ symbol, value, unit }, at) =>
      html`${at > 0 ? ", " : ""}<span class="math">${symbol}</span>\u00a0=\u00a0${quantity(value, unit, reader)}`,
  );
  const told = inputs.length > 0 ? html`${values}` : html`${say(says, reader)}`;
  const worked =
    inputs.length > 0 && working
      ? html`<div class="math">${sayArithmetic(working.substituted, reader)}</div>`
      : undefined;
  return html`<tr id="${number}"><td class="number">${number}</td><td class="place">${sayText(place, reader)}</td><td>${told}${worked}</td><td>${comparedHtml(finding, reader)}</td><td class="aside">${source.clause ?? source.document}</td></tr>
`;
}

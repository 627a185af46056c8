/** Numbers of the book: as short as a reader can work with, each with its whole value behind it in a `data` element. */

import { message } from "../../text/message.ts";
import { type Reader, say, sayFigure, sayLength } from "../../text/say.ts";
import { type Html, html } from "./markup.ts";

export function figure(value: number, reader: Reader): Html {
  return html`<data value="${String(value)}">${sayFigure(value, reader)}</data>`;
}

/** The figure with its unit; a length in feet and inches first for who reads those, the millimetres worked with after it. */
export function quantity(value: number, unit: string, reader: Reader): Html {
  const shown = html`${figure(value, reader)}${unitText(unit, reader)}`;
  if (unit !== "mm" || reader.units === "mm") return shown;
  return html`${sayLength(value, reader)} <span class="also">(${shown})</span>`;
}

const WORDS: readonly string[] = ["class", "weeks"];

function unitText(unit: string, reader: Reader): string {
  if (unit === "1") return "";
  // A no-break space keeps a number and its unit on one line.
  return `\u00a0${WORDS.includes(unit) ? say(message(`book.unit.${unit}`), reader) : unit}`;
}

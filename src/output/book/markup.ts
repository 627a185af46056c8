/** Pieces of HTML in which every value is escaped unless it is a piece itself. */
import { escapeXml } from "../svg/markup.ts";

/** HTML that is safe to put into a page as it stands. */
export interface Html {
  readonly html: string;
}

type Put = string | number | Html | readonly Html[] | undefined;

/** The template's own text stands as written; what is put into it is escaped. */
export function html(texts: TemplateStringsArray, ...put: readonly Put[]): Html {
  return { html: texts.map((text, at) => text + (at < put.length ? plain(put[at]) : "")).join("") };
}

function plain(value: Put): string {
  if (value === undefined) return "";
  if (typeof value === "string" || typeof value === "number") return escapeXml(String(value));
  return "html" in value ? value.html : value.map((one) => one.html).join("");
}

/** Text between quotes in a style sheet: everything but plain letters and digits by its code point. */
export function cssText(text: string): string {
  const written = [...text].map((character) =>
    /[A-Za-z0-9 ]/.test(character) ? character : `\\${(character.codePointAt(0) ?? 0).toString(16)} `,
  );
  return `"${written.join("")}"`;
}

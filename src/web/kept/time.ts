import type { Reader } from "../../text/say.ts";

/** Day and time of the reader's clock, in the reader's language. */
export function sayTime(iso: string, { language }: Reader): string {
  return new Intl.DateTimeFormat(language, { dateStyle: "medium", timeStyle: "short" }).format(new Date(iso));
}

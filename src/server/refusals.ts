/** Answers that are not what was asked for: short, in the reader's language, and never a stack trace. */
import type { Language } from "../text/catalogue.ts";
import { message } from "../text/message.ts";
import { say } from "../text/say.ts";
import { policyHeaders } from "./policy.ts";

const STATUS = {
  "not-found": 404,
  "method-not-allowed": 405,
  "address-too-long": 414,
  "foreign-host": 421,
  "cannot-answer": 500,
  "no-project": 404,
  "no-page": 503,
} as const;

export type Refusal = keyof typeof STATUS;

/** A browser that opens an address gets a plain page; a program gets JSON: `{ error: { code, message } }`. */
export function refuse(code: Refusal, request: Request): Response {
  const language = languageOf(request);
  const text = say(message(`page.server.${code}`), { language, units: "mm", denominator: 16 });
  const asPage = request.headers.get("accept")?.includes("text/html") ?? false;
  const status = STATUS[code];
  const body = asPage
    ? `<!doctype html>\n<html lang="${language}">\n<title>Outerleaf</title>\n<p>${text}</p>\n</html>\n`
    : `${JSON.stringify({ error: { code, message: text } })}\n`;
  return new Response(request.method === "HEAD" ? null : body, {
    status,
    headers: {
      ...policyHeaders("page"),
      "Content-Type": asPage ? "text/html; charset=utf-8" : "application/json; charset=utf-8",
      "Cache-Control": "no-store",
      ...(code === "method-not-allowed" ? { Allow: "GET, HEAD" } : {}),
    },
  });
}

function languageOf(request: Request): Language {
  return /^\s*fr\b/i.test(request.headers.get("accept-language") ?? "") ? "fr" : "en";
}

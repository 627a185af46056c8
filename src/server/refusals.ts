/** Answers that are not what was asked for: short, in the reader's language, and never a stack trace. */
import type { Language } from "../text/catalogue.ts";
import { type Message, message } from "../text/message.ts";
import { say } from "../text/say.ts";
import { policyHeaders } from "./policy.ts";

const STATUS = {
  "not-found": 404,
  "method-not-allowed": 405,
  "method-not-here": 405,
  "address-too-long": 414,
  "foreign-host": 421,
  "foreign-page": 403,
  "cannot-answer": 500,
  "no-project": 404,
  "no-page": 503,
  "no-store": 503,
  "cannot-keep": 503,
  "not-kept": 404,
  "too-large": 413,
  "unread-body": 400,
  "unusable-project": 422,
  "no-condition": 428,
  "other-revision": 409,
  "no-revision": 409,
  "other-name": 409,
  "no-attachment": 404,
  "picture-too-large": 413,
  "picture-other-type": 415,
  "picture-other-hash": 422,
  "sign-in-needed": 401,
  "not-allowed": 403,
  "too-many": 429,
  "bad-invitation": 403,
  "no-phones": 409,
  "other-role": 409,
  "no-person": 404,
  "no-session": 404,
  "own-session": 409,
  "batch-too-large": 413,
  "bad-range": 400,
  "bad-set": 422,
  "unknown-state": 409,
} as const;

export type Refusal = keyof typeof STATUS;

export interface Besides {
  readonly values?: Message["values"];
  /** The methods that are allowed, where it is the method that is refused. */
  readonly allow?: string;
  /** What a program can go on with, beside code and message. */
  readonly more?: Readonly<Record<string, unknown>>;
}

/** A browser that opens an address gets a plain page; a program gets JSON: `{ error: { code, message } }`. */
export function refuse(code: Refusal, request: Request, { values, allow, more }: Besides = {}): Response {
  const language = languageOf(request);
  const text = say(message(`page.server.${code}`, values), { language, units: "mm", denominator: 16 });
  const asPage = request.headers.get("accept")?.includes("text/html") ?? false;
  const status = STATUS[code];
  const body = asPage
    ? `<!doctype html>\n<html lang="${language}">\n<title>Outerleaf</title>\n<p>${text}</p>\n</html>\n`
    : `${JSON.stringify({ error: { code, message: text, ...more } })}\n`;
  return new Response(request.method === "HEAD" ? null : body, {
    status,
    headers: {
      ...policyHeaders("page"),
      "Content-Type": asPage ? "text/html; charset=utf-8" : "application/json; charset=utf-8",
      "Cache-Control": "no-store",
      ...(code === "method-not-allowed" ? { Allow: "GET, HEAD" } : {}),
      ...(allow === undefined ? {} : { Allow: allow }),
      ...(code === "too-many" ? { "Retry-After": "60" } : {}),
    },
  });
}

export function languageOf(request: Request): Language {
  return /^\s*fr\b/i.test(request.headers.get("accept-language") ?? "") ? "fr" : "en";
}

/** Answers that are what was asked for. */
import { createHash } from "node:crypto";
import { mediaType, policyHeaders } from "./policy.ts";

export interface Sent {
  readonly request: Request;
  readonly type: string;
  readonly kind: "page" | "document";
  /** The name alone tells the content: a browser need not ask again. */
  readonly forever?: boolean;
  readonly headers?: Readonly<Record<string, string>>;
}

export function sha256(bytes: Uint8Array | string): string {
  return createHash("sha256").update(bytes).digest("hex");
}

export function json(
  value: unknown,
  request: Request,
  { status = 200, headers = {} }: { status?: 200 | 201; headers?: Readonly<Record<string, string>> } = {},
): Response {
  return sendAnswered(answered(value), request, { status, headers });
}

/** An answer's bytes and their tag, for answers that are large and given again. */
export interface Answered {
  readonly bytes: Uint8Array;
  readonly tag: string;
}

export function answered(value: unknown): Answered {
  return answeredBytes(new TextEncoder().encode(`${JSON.stringify(value)}\n`));
}

export function answeredBytes(bytes: Uint8Array): Answered {
  return { bytes, tag: tagOf(bytes) };
}

export function sendAnswered(
  { bytes, tag }: Answered,
  request: Request,
  { status = 200, headers = {} }: { status?: 200 | 201; headers?: Readonly<Record<string, string>> } = {},
): Response {
  const own = { ETag: tag, ...headers };
  return send(bytes, { request, type: mediaType("answer.json"), kind: "page", headers: own }, status);
}

function tagOf(bytes: Uint8Array): string {
  return `"${sha256(bytes).slice(0, 32)}"`;
}

export function send(
  bytes: Uint8Array,
  { request, type, kind, forever = false, headers: more = {} }: Sent,
  status: 200 | 201 = 200,
): Response {
  const etag = more.ETag ?? tagOf(bytes);
  const headers = {
    ...policyHeaders(kind),
    ETag: etag,
    "Cache-Control": forever ? "public, max-age=31536000, immutable" : "no-cache",
    ...more,
  };
  const held = request.headers.get("if-none-match")?.split(",") ?? [];
  if (held.some((one) => one.trim().replace(/^W\//, "") === etag)) {
    return new Response(null, { status: 304, headers });
  }
  // A copy, because a view into a shared buffer is no body.
  return new Response(request.method === "HEAD" ? null : new Uint8Array(bytes), {
    status,
    headers: { ...headers, "Content-Type": type, "Content-Length": String(bytes.byteLength) },
  });
}

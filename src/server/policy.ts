/** What browsers are told to refuse, and which hosts may ask. */

/** Everything of the page comes from this server; nothing inline, nothing framed, nothing sent anywhere. */
const PAGE_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join("; ");

/** A document stands alone: a drawing carries its own styles, and nothing in it may run. */
const DOCUMENT_POLICY = [
  "default-src 'none'",
  "style-src 'unsafe-inline'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "sandbox",
].join("; ");

const COMMON: Readonly<Record<string, string>> = {
  "X-Content-Type-Options": "nosniff",
  "X-Frame-Options": "DENY",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Permissions-Policy": "camera=(self), geolocation=(), microphone=()",
};

/** Headers of every answer, `document` for the written documents. */
export function policyHeaders(kind: "page" | "document"): Readonly<Record<string, string>> {
  return { ...COMMON, "Content-Security-Policy": kind === "page" ? PAGE_POLICY : DOCUMENT_POLICY };
}

const OWN_HOSTS: readonly string[] = ["127.0.0.1", "localhost", "[::1]"];

/**
 * Whether a Host header names this machine itself, by loopback or by one of `more`. A foreign name that resolves to loopback (DNS rebinding) does not,
 * so a page from elsewhere cannot read the project through a visitor's browser.
 */
export function isOwnHost(host: string | undefined, more: readonly string[] = []): boolean {
  if (host === undefined) return false;
  return [...OWN_HOSTS, ...more].includes(host.toLowerCase().replace(/:\d{1,5}$/, ""));
}

/**
 * Whether a request comes from a page of ours or from a program, and not from a page of another site: browsers name
 * theirs in `Origin` and `Sec-Fetch-Site` (Fetch standard; Fetch Metadata), and no page can leave them out.
 */
export function isOwnPage(request: Request): boolean {
  const origin = request.headers.get("origin");
  const site = request.headers.get("sec-fetch-site");
  const { protocol, host: asked } = new URL(request.url);
  const host = request.headers.get("host") ?? asked;
  return (
    (origin === null || origin === `${protocol}//${host}`) &&
    (site === null || /^(same-origin|none)$/.test(site))
  );
}

const TYPES: Readonly<Record<string, string>> = {
  html: "text/html; charset=utf-8",
  js: "text/javascript; charset=utf-8",
  css: "text/css; charset=utf-8",
  json: "application/json; charset=utf-8",
  webmanifest: "application/manifest+json; charset=utf-8",
  map: "application/json; charset=utf-8",
  svg: "image/svg+xml; charset=utf-8",
  csv: "text/csv; charset=utf-8",
  txt: "text/plain; charset=utf-8",
  md: "text/plain; charset=utf-8",
  woff2: "font/woff2",
  woff: "font/woff",
  wasm: "application/wasm",
  pdf: "application/pdf",
  dxf: "image/vnd.dxf",
  ifc: "application/x-step",
  glb: "model/gltf-binary",
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

/** The media type of a file by the end of its name. */
export function mediaType(name: string): string {
  const end = name.slice(name.lastIndexOf(".") + 1).toLowerCase();
  return TYPES[end] ?? "application/octet-stream";
}

/** What an attacker tries on the listener that phones reach: each try is refused in its own way, and nothing in the database changes. */
import { createHash } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { COOKIE } from "../../src/server/access/door.ts";
import { OPERATIONS } from "../../src/server/api/operations.ts";
import { LARGEST_PICTURE } from "../../src/store/attachments.ts";
import { type Asked, type Guarded, guardedServer } from "../helpers/guarded.ts";
import { told } from "../helpers/journal.ts";
import { JPEG, PNG } from "../helpers/pictures.ts";
import { describeWithStore, ID, nth } from "../helpers/store.ts";

const sha256 = (bytes: Uint8Array | string): string => createHash("sha256").update(bytes).digest("hex");
const text = (words: string): Uint8Array => new TextEncoder().encode(words);

let server: Guarded;
const cookies: Record<string, string> = {};
const links: Record<string, string> = {};

beforeAll(async () => {
  server = await guardedServer();
  const { store } = server;
  await store.put(ID, nth(1));
  links.old = await server.invite("Old", "office");
  cookies.ended = await server.signIn("Ended", "office");
  server.wait(91 * 86_400_000);
  cookies.office = await server.signIn("Office", "office");
  cookies.site = await server.signIn("Site", "site");
  cookies.reader = await server.signIn("Reader", "reader");
  cookies.left = await server.signIn("Left", "office");
  await server.ask({ method: "POST", path: "/api/sign-out", cookie: cookies.left });
  links.used = await server.invite("Site", "site");
  await server.ask({ method: "POST", path: "/api/sign-in", body: { secret: links.used } });
  cookies.out = await server.signIn("Out", "office");
  links.out = await server.invite("Out", "office");
  const people = await store.people.list({ time: server.now().toISOString() });
  const out = people.find(({ name }) => name === "Out");
  await store.people.revoke(out?.id ?? "", { time: server.now().toISOString() });
  links.fresh = await server.invite("Fresh", "office");
  await store.attachments.put(sha256(PNG), { content: PNG, time: server.now().toISOString() });
  const body = { entries: [told(1)] };
  await server.ask({ method: "POST", path: JOURNAL, cookie: cookies.site, body });
});
afterAll(() => server.place.clear());

const JOURNAL = `/api/projects/${ID}/journal`;
const PROJECT = `/api/projects/${ID}`;

type Try = readonly [what: string, code: string, asked: () => Asked];

/** An address of the operation that would be good. */
const filled = (path: string): string =>
  path
    .replace("people/{id}", `people/${"0".repeat(16)}`)
    .replace("{id}", ID)
    .replace("{session}", "0".repeat(16))
    .replace("{number}", "1")
    .replace("{sha256}", sha256(PNG))
    .replace("{name}", "porch.outerleaf.json");

const closed = OPERATIONS.filter(({ role }) => role !== "anyone");
const asked = ({ method, path }: (typeof OPERATIONS)[number], cookie?: string): Asked => ({
  method: method.toUpperCase(),
  path: filled(path),
  cookie,
  ...(method === "get" ? {} : { body: {} }),
});

const strangers = closed.map((one): Try => [`${one.name} by a stranger`, "sign-in-needed", () => asked(one)]);

const climbers = [
  ...closed
    .filter(({ role }) => role !== "reader")
    .map((one): Try => [`${one.name} by a reader`, "not-allowed", () => asked(one, cookies.reader)]),
  ...closed
    .filter(({ role }) => role === "office")
    .map((one): Try => [`${one.name} by the site`, "not-allowed", () => asked(one, cookies.site)]),
];

const signIn = (secret: unknown): Asked => ({ method: "POST", path: "/api/sign-in", body: { secret } });
const list = (cookie: string | undefined, headers: Record<string, string> = {}): Asked => ({
  path: "/api/projects",
  cookie,
  headers,
});

const stolen: readonly Try[] = [
  ["a link used before", "bad-invitation", () => signIn(links.used)],
  ["a link that is too old", "bad-invitation", () => signIn(links.old)],
  ["a link of someone shut out", "bad-invitation", () => signIn(links.out)],
  ["a guessed secret", "bad-invitation", () => signIn("A".repeat(43))],
  ["a session for an invitation", "bad-invitation", () => signIn(cookies.office)],
  ["the hash from a stolen database", "unread-body", () => signIn(sha256(links.fresh ?? ""))],
  ["half a secret", "unread-body", () => signIn(links.fresh?.slice(0, 20))],
  ["a secret and more", "unread-body", () => signIn(`${links.fresh}A`)],
  ["a pattern for a secret", "unread-body", () => signIn("%".repeat(43))],
  ["a list of secrets", "unread-body", () => signIn([links.fresh])],
  ["an object for a secret", "unread-body", () => signIn({ $ne: "" })],
  ["an invitation for a session", "sign-in-needed", () => list(links.fresh)],
  ["a session that was left", "sign-in-needed", () => list(cookies.left)],
  ["a session of someone shut out", "sign-in-needed", () => list(cookies.out)],
  ["a session that is too old", "sign-in-needed", () => list(cookies.ended)],
  ["the hash of a session", "sign-in-needed", () => list(sha256(cookies.office ?? ""))],
  [
    "a session under another name",
    "sign-in-needed",
    () => list(undefined, { cookie: `outerleaf=${cookies.office}` }),
  ],
  [
    "a session in a header",
    "sign-in-needed",
    () => list(undefined, { authorization: `Bearer ${cookies.office}` }),
  ],
  [
    "a session in the address",
    "sign-in-needed",
    () => ({ path: `/api/projects?${COOKIE}=${cookies.office}` }),
  ],
  [
    "a guessed session before a good one",
    "sign-in-needed",
    () => list(undefined, { cookie: `${COOKIE}=${"A".repeat(43)}; ${COOKIE}=${cookies.office}` }),
  ],
  ["no session at all", "sign-in-needed", () => list("")],
  [
    "an address that calls itself near",
    "sign-in-needed",
    () => list(undefined, { "x-forwarded-for": "127.0.0.1" }),
  ],
  [
    "a method told by a header",
    "sign-in-needed",
    () => list(undefined, { "x-http-method-override": "DELETE" }),
  ],
];

const entry = (headers: Record<string, string>): Asked => ({
  method: "POST",
  path: JOURNAL,
  cookie: cookies.site,
  headers,
  body: { entries: [told(9)] },
});
const foreign = (origin: string): readonly Try[] => [
  [`an entry from ${origin}`, "foreign-page", () => entry({ origin })],
  [
    `an invitation from ${origin}`,
    "foreign-page",
    () => ({
      ...{ method: "POST", path: "/api/people", cookie: cookies.office, headers: { origin } },
      body: { name: "Mallory", role: "office" },
    }),
  ],
];
const crossing: readonly Try[] = [
  ...[
    "https://example.org",
    "null",
    "http://192.0.2.7:4171",
    "https://192.0.2.7",
    "https://192.0.2.7.example.org:4171",
    "https://192.0.2.7:4172",
  ].flatMap(foreign),
  [
    "a picture from another site",
    "foreign-page",
    () => ({
      ...{ method: "PUT", path: `/api/attachments/${sha256(JPEG)}`, cookie: cookies.site, body: JPEG },
      headers: { origin: "https://example.org" },
    }),
  ],
  [
    "a sign-in from another site",
    "foreign-page",
    () => ({ ...signIn(links.fresh), headers: { origin: "https://example.org" } }),
  ],
  [
    "a sign-out from another site",
    "foreign-page",
    () => ({
      ...{ method: "POST", path: "/api/sign-out", cookie: cookies.site },
      headers: { origin: "https://example.org" },
    }),
  ],
  [
    "an entry from a page that a site framed",
    "foreign-page",
    () => entry({ "sec-fetch-site": "cross-site" }),
  ],
  ["an entry from a neighbour's name", "foreign-page", () => entry({ "sec-fetch-site": "same-site" })],
  [
    "a journal read by another site",
    "foreign-page",
    () => ({ path: JOURNAL, cookie: cookies.site, headers: { "sec-fetch-site": "cross-site" } }),
  ],
  [
    "a project by a name that was bent to here",
    "foreign-host",
    () => ({ path: PROJECT, cookie: cookies.office, headers: { host: "evil.example:4171" } }),
  ],
  [
    "a project by another address",
    "foreign-host",
    () => ({ path: PROJECT, cookie: cookies.office, headers: { host: "192.0.2.8" } }),
  ],
  [
    "an entry sent as a form",
    "unread-body",
    () => entry({ "content-type": "application/x-www-form-urlencoded" }),
  ],
  ["an entry sent as plain text", "unread-body", () => entry({ "content-type": "text/plain" })],
  [
    "an entry sent as a form of parts",
    "unread-body",
    () => entry({ "content-type": "multipart/form-data; boundary=x" }),
  ],
];

const office = (path: string, more: Partial<Asked> = {}): Asked => ({
  path,
  cookie: cookies.office,
  ...more,
});
const elsewhere: readonly Try[] = [
  ...[
    "/documents/..%2f..%2fpackage.json",
    "/documents/%2e%2e%2fpackage.json",
    "/documents/..%5cpackage.json",
    "/documents/%2fetc%2fpasswd",
    "/documents/porch.outerleaf.json%00.svg",
    "/documents/.git",
    `${PROJECT}/issued/1/files/..%2f..%2foutside`,
    `${PROJECT}/issued/1'%20OR%201=1/files/a`,
    `${PROJECT}/revisions/1%20OR%201=1`,
    `${PROJECT}/revisions/-1`,
    `${PROJECT}/revisions/1e9`,
    `${PROJECT}'%20OR%20'1'='1`,
    `${PROJECT};DROP%20TABLE%20journal`,
    "/api/projects/..%2f..%2fpeople",
    "/api/attachments/..%2f..%2foutside",
    "/api/attachments/%00",
    `/api/attachments/${sha256(PNG).toUpperCase()}`,
    "/api/nothing",
    "/api/people/1",
    "/outerleaf.sqlite",
    "/..%2foutside.sqlite",
    "/lan-key.pem",
  ].map((path): Try => [`GET ${path}`, "not-found|not-kept|method-not-allowed", () => office(path)]),
  ...[
    "after=1;DROP",
    "after=-1",
    "after=1e3",
    "before=%27",
    "limit=0",
    "limit=100000",
    "limit=1%20OR%201",
    "after=1&before=2",
    "after=NaN",
  ].map((query): Try => [`a journal where ${query}`, "bad-range", () => office(`${JOURNAL}?${query}`)]),
  ["an address without end", "address-too-long", () => office(`${PROJECT}?${"a".repeat(3000)}`)],
  [
    "a project put where people are",
    "method-not-allowed",
    () => office("/api/people", { method: "PUT", body: {} }),
  ],
  ["a trace", "method-not-here", () => office(JOURNAL, { method: "PROPFIND" })],
  ["a journal cleared", "method-not-here", () => office(JOURNAL, { method: "DELETE" })],
  ["an entry changed", "method-not-here", () => office(JOURNAL, { method: "PATCH", body: {} })],
  [
    "an issued set replaced",
    "method-not-here",
    () => office(`${PROJECT}/issued`, { method: "PUT", body: {} }),
  ],
  [
    "a picture removed",
    "method-not-here",
    () => office(`/api/attachments/${sha256(PNG)}`, { method: "DELETE" }),
  ],
  ["the audit cleared", "method-not-allowed", () => office("/api/audit", { method: "DELETE" })],
];

const batch = (body: unknown): Asked => ({
  ...{ method: "POST", path: JOURNAL, cookie: cookies.site, body },
  headers: { "content-type": "application/json" },
});
const person = (body: unknown): Asked => ({
  method: "POST",
  path: "/api/people",
  cookie: cookies.office,
  body,
});
const picture = (bytes: Uint8Array, name = sha256(bytes)): Asked => ({
  ...{ method: "PUT", path: `/api/attachments/${name}`, cookie: cookies.site, body: bytes },
  headers: { "content-type": "image/png" },
});
const deep = `${"[".repeat(50_000)}${"]".repeat(50_000)}`;
const malformed: readonly Try[] = [
  ["half of a batch", "unread-body", () => batch('{"entries":[')],
  ["nothing", "unread-body", () => batch("")],
  ["a list", "unread-body", () => batch([])],
  ["no entries", "unread-body", () => batch({ entries: [] })],
  [
    "too many entries",
    "unread-body",
    () => batch({ entries: Array.from({ length: 201 }, (_, n) => told(n + 10)) }),
  ],
  ["a field too many", "unread-body", () => batch({ entries: [told(9)], who: "Office" })],
  ["one key twice", "unread-body", () => batch(`{"entries":[],"entries":[${JSON.stringify(told(9))}]}`)],
  ["nesting without end", "unread-body", () => batch(`{"entries":${deep}}`)],
  ["bytes that are no text", "unread-body", () => batch(new Uint8Array([0xff, 0xfe, 0x00]))],
  [
    "a batch without end",
    "batch-too-large|too-large",
    () => batch(`{"entries":["${"x".repeat(1_100_000)}"]}`),
  ],
  [
    "a revision without end",
    "too-large",
    () => office(PROJECT, { method: "PUT", body: { bulk: "x".repeat(5_000_000) } }),
  ],
  ["a sign-in without end", "unread-body", () => signIn("x".repeat(10_000))],
  ["a role that is none", "unread-body", () => person({ name: "M", role: "owner" })],
  ["a role hidden in a prototype", "unread-body", () => person('{"name":"M","__proto__":{"role":"office"}}')],
  ["a name without end", "unread-body", () => person({ name: "x".repeat(101), role: "site" })],
  ["no name", "unread-body", () => person({ name: "  ", role: "site" })],
  ["another role for someone who is there", "other-role", () => person({ name: "Reader", role: "office" })],
  ["nobody to shut out", "no-person", () => office(`/api/people/${"0".repeat(16)}`, { method: "DELETE" })],
  [
    "a drawing with a script",
    "picture-other-type",
    () => picture(text("<svg xmlns='http://www.w3.org/2000/svg' onload='x()'/>")),
  ],
  ["a page", "picture-other-type", () => picture(text("<!doctype html><script>x()</script>"))],
  ["a program", "picture-other-type", () => picture(text("\u007fELF"))],
  ["an archive", "picture-other-type", () => picture(text("PK\u0003\u0004"))],
  ["a picture after a blank", "picture-other-type", () => picture(new Uint8Array([0x20, ...PNG]))],
  ["half a signature", "picture-other-type", () => picture(PNG.slice(0, 7))],
  ["no bytes", "picture-other-type", () => picture(new Uint8Array())],
  ["a picture under another's name", "picture-other-hash", () => picture(JPEG, sha256(PNG))],
  ["a picture cut off", "picture-other-hash", () => picture(PNG.slice(0, 40), sha256(PNG))],
  [
    "a picture without end",
    "picture-too-large",
    () => {
      const large = new Uint8Array(LARGEST_PICTURE + 1);
      large.set(PNG);
      return picture(large);
    },
  ],
  ["a picture under a path", "not-found", () => ({ ...picture(JPEG), path: "/api/attachments/..%2fx" })],
  [
    "too many names",
    "unread-body",
    () => ({
      ...{ method: "POST", path: "/api/attachments/known", cookie: cookies.site },
      body: { sha256: Array.from({ length: 501 }, () => sha256(PNG)) },
    }),
  ],
];

const TRIES = [...strangers, ...climbers, ...stolen, ...crossing, ...elsewhere, ...malformed];

describeWithStore("a hostile try", () => {
  it("is one of at least 120", () => {
    expect(TRIES.length).toBeGreaterThanOrEqual(120);
    expect(new Set(TRIES.map(([what]) => what)).size).toBe(TRIES.length);
  });

  it.each(TRIES)("by %s is refused as %s, and nothing changes", async (_, code, made) => {
    // Otherwise the limit on sign-ins would refuse the later tries, for another reason.
    server.wait(60_000);
    const before = server.dump();
    const answer = await server.ask(made());
    const { error } = (await answer.json()) as { error?: { code: string } };
    expect(code.split("|")).toContain(error?.code);
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.status).toBeLessThan(500);
    expect(server.dump()).toBe(before);
  });

  it("with entries that are wrong in themselves adds none of them", async () => {
    const before = server.dump();
    const bad = [
      { ...told(1), place: { piece: "F-S7" } },
      { ...told(9), id: `${"0a".repeat(8)}-9'; DROP TABLE journal` },
      { ...told(9), who: "Office" },
      { ...told(9), number: 1 },
      { ...told(9), kind: "photo", place: {}, body: { photo: "../../lan-key.pem" } },
      { ...told(9), told: "9999-99-99" },
    ];
    const answer = await server.ask(batch({ entries: bad }));
    const { answers } = (await answer.json()) as { answers: { kind: string }[] };
    expect(answers.map(({ kind }) => kind)).toEqual(["other", ...Array(5).fill("refused")]);
    expect(server.dump()).toBe(before);
  });

  it("leaves the good as able as before: the fresh link still lets in", async () => {
    server.wait(60_000);
    expect((await server.ask(signIn(links.fresh))).status).toBe(200);
  });
});

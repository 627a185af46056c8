/** Kept projects under requests that no page of ours makes, and with a database that fails. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import Sqlite from "better-sqlite3";
import type { Hono } from "hono";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { createApp } from "../../src/server/app.ts";
import { LARGEST_BODY } from "../../src/server/bodies.ts";
import { diskFiles } from "../../src/server/files.ts";
import { type Serving, serve } from "../../src/server/serve.ts";
import { checkout } from "../helpers/cli.ts";
import { describeWithStore, ID, type StoreFolder, storeFolder } from "../helpers/store.ts";

const document: unknown = JSON.parse(readFileSync(`${checkout}examples/porch.outerleaf.json`, "utf8"));
const says = { key: "page.edit.read", values: {} };
const good = { name: "porch.outerleaf.json", document, says };

let place: StoreFolder;
let app: Hono;
beforeEach(async () => {
  place = storeFolder();
  app = createApp({ ...places(), store: await place.open() });
});
afterEach(() => place.clear());

const places = () => ({
  files: diskFiles,
  projectFile: join(place.folder, "none.json"),
  documentsDir: place.folder,
  webDir: place.folder,
});

const JSON_TYPE = { "content-type": "application/json" };
const FIRST = { ...JSON_TYPE, "if-none-match": "*" };

const ask = (path: string, init: RequestInit = {}): Promise<Response> =>
  Promise.resolve(app.request(`http://127.0.0.1:4600/api/projects${path}`, init));
const put = (body: unknown, headers: Record<string, string> = FIRST): Promise<Response> =>
  ask(`/${ID}`, { method: "PUT", headers, body: typeof body === "string" ? body : JSON.stringify(body) });

async function code(answer: Response): Promise<[number, string]> {
  return [answer.status, ((await answer.json()) as { error: { code: string } }).error.code];
}

describeWithStore("what cannot be kept", () => {
  const deep = `${"[".repeat(2000)}${"]".repeat(2000)}`;
  it.each([
    ["no JSON", "{"],
    ["a list", []],
    ["no document", { name: "a", says }],
    ["no name", { ...good, name: "" }],
    ["a name without end", { ...good, name: "a".repeat(300) }],
    ["a document that is a text", { ...good, document: "{}" }],
    ["an edit without a key", { ...good, says: { values: {} } }],
    ["an edit that is a text", { ...good, says: "moved" }],
    ["a field too many", { ...good, time: "1970-01-01" }],
    ["values that nest without end", `{"name":"a","document":{},"says":{"key":"a","values":{"a":${deep}}}}`],
    ["one key twice", '{"name":"a","name":"b","document":{},"says":{"key":"a","values":{}}}'],
  ])("%s is refused, and nothing is written", async (_, body) => {
    expect(await code(await put(body))).toEqual([400, "unread-body"]);
    expect(await (await ask("")).json()).toEqual({ store: true, projects: [] });
  });

  it("a body that does not say that it is JSON is refused", async () => {
    expect(await code(await put(good, { ...FIRST, "content-type": "text/plain" }))).toEqual([
      400,
      "unread-body",
    ]);
  });

  it("a document that is no project is refused with everything that is to be mended", async () => {
    const answer = await put({ ...good, document: { title: 3, faces: [] } });
    expect(answer.status).toBe(422);
    const { error } = (await answer.json()) as {
      error: { code: string; findings: { where: { path: string } }[] };
    };
    expect(error.code).toBe("unusable-project");
    expect(error.findings.map(({ where }) => where.path)).toContain("/title");
  });

  it.each([{}, { "if-match": "*" }, { "if-match": "1.abc" }, { "if-none-match": '"1"' }])(
    "with %j it does not say what was seen last, and is refused",
    async (condition) => {
      expect(await code(await put(good, { ...JSON_TYPE, ...(condition as Record<string, string>) }))).toEqual(
        [428, "no-condition"],
      );
    },
  );

  it("a revision onto one that never was is refused", async () => {
    expect(await code(await put(good, { ...JSON_TYPE, "if-match": '"9.beef"' }))).toEqual([
      409,
      "no-revision",
    ]);
  });

  it("more than any project needs is refused before it is read, also where no length is given", async () => {
    const body = JSON.stringify({ ...good, document: { bulk: "x".repeat(LARGEST_BODY) } });
    expect(await code(await put(body))).toEqual([413, "too-large"]);
    const stream = new Blob([body]).stream();
    const init = { method: "PUT", headers: FIRST, body: stream, duplex: "half" } as RequestInit;
    expect(await code(await ask(`/${ID}`, init))).toEqual([413, "too-large"]);
  });
});

describeWithStore("addresses and methods", () => {
  it.each([
    "/x",
    "/0123456789ABCDEF01234567",
    `/${ID}0`,
    `/${ID}/revisions/0`,
    `/${ID}/revisions/-1`,
    `/${ID}/revisions/1e3`,
    `/${ID}/revisions/99999999999999999999`,
    `/${ID}/revisions/1'%20OR%201=1`,
    `/${ID}/other`,
  ])("%s is not found", async (path) => {
    await put(good);
    expect(await code(await ask(path))).toEqual([404, "not-found"]);
  });

  it.each([
    ["POST", "", "GET, HEAD"],
    ["DELETE", "", "GET, HEAD"],
    ["POST", `/${ID}`, "GET, HEAD, PUT, DELETE"],
    ["PATCH", `/${ID}`, "GET, HEAD, PUT, DELETE"],
    ["OPTIONS", `/${ID}`, "GET, HEAD, PUT, DELETE"],
    ["PUT", `/${ID}/revisions`, "GET, HEAD"],
    ["DELETE", `/${ID}/revisions/1`, "GET, HEAD"],
    ["GET", `/${ID}/revisions/1/restore`, "POST"],
  ])("%s %s is not allowed", async (method, path, allow) => {
    const answer = await ask(path, { method });
    expect(answer.headers.get("allow")).toBe(allow);
    expect(await code(answer)).toEqual([405, "method-not-here"]);
  });
});

describeWithStore("pages of other sites", () => {
  it.each([
    { origin: "https://example.org" },
    { origin: "null" },
    { origin: "http://127.0.0.1:4601" },
    { "sec-fetch-site": "cross-site" },
    { "sec-fetch-site": "same-site" },
  ])("with %j they read and write nothing", async (theirs) => {
    const headers = { ...FIRST, ...(theirs as Record<string, string>) };
    expect(await code(await put(good, headers))).toEqual([403, "foreign-page"]);
    expect(await code(await ask("", { headers }))).toEqual([403, "foreign-page"]);
    expect(await (await ask("")).json()).toEqual({ store: true, projects: [] });
  });

  it("our own page may", async () => {
    const headers = { ...FIRST, origin: "http://127.0.0.1:4600", "sec-fetch-site": "same-origin" };
    expect((await put(good, headers)).status).toBe(201);
  });

  it("a foreign host is refused before anything else", async () => {
    const answer = await app.request(`http://example.org/api/projects/${ID}`);
    expect(answer.status).toBe(421);
  });
});

describe("without a database", () => {
  it("the list and every address of kept projects say so, and the rest works", async () => {
    const bare = createApp(places());
    const list = await bare.request("http://localhost/api/projects");
    expect(await list.json()).toEqual({ store: false, projects: [] });
    for (const path of [`/${ID}`, `/${ID}/revisions`, "/x"]) {
      const answer = await bare.request(`http://localhost/api/projects${path}`);
      expect(await code(answer)).toEqual([503, "no-store"]);
    }
    expect((await bare.request("http://localhost/api/documents")).status).toBe(200);
  });
});

describeWithStore("a database that fails", () => {
  it("is told as one that can be tried again, without a trace of the program", async () => {
    await put(good);
    const holder = new Sqlite(join(place.folder, "outerleaf.sqlite"));
    holder.exec("BEGIN EXCLUSIVE");
    const tag = (await ask(`/${ID}`)).headers.get("etag") ?? "";
    const body = { ...good, document: { ...(document as object), title: "Other" } };
    const held = await put(body, { ...JSON_TYPE, "if-match": tag });
    expect(held.headers.get("content-type")).toContain("json");
    const text = await held.clone().text();
    expect(text).not.toMatch(/sqlite|\bat .+:\d+/i);
    expect(await code(held)).toEqual([503, "cannot-keep"]);
    holder.exec("ROLLBACK");
    holder.close();
    expect((await put(body, { ...JSON_TYPE, "if-match": tag })).status).toBe(201);
  });
});

describeWithStore("over a socket", () => {
  it("what is put over the network of this machine is kept", async () => {
    const store = await place.open();
    const serving = (await serve({ ...places(), store, port: 0 })) as Serving;
    const url = `${serving.url}api/projects/${ID}`;
    const answer = await fetch(url, { method: "PUT", headers: FIRST, body: JSON.stringify(good) });
    expect(answer.status).toBe(201);
    expect((await fetch(url, { headers: { origin: "https://example.org" } })).status).toBe(403);
    await serving.close();
  });
});

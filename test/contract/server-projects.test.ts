/** Kept projects over HTTP: the page's conversation with the server, and a program's. */
import { readFileSync } from "node:fs";
import type { Hono } from "hono";
import { afterEach, beforeEach, expect, it } from "vitest";
import { createApp } from "../../src/server/app.ts";
import { diskFiles } from "../../src/server/files.ts";
import { checkout } from "../helpers/cli.ts";
import { describeWithStore, ID, type StoreFolder, storeFolder } from "../helpers/store.ts";

const FILE = `${checkout}examples/porch.outerleaf.json`;
const TEXT = readFileSync(FILE, "utf8");
const TIME = "2026-03-01T10:00:00.000Z";

let place: StoreFolder;
let app: Hono;
beforeEach(async () => {
  place = storeFolder();
  app = createApp({
    files: diskFiles,
    projectFile: FILE,
    documentsDir: place.folder,
    webDir: place.folder,
    store: await place.open(),
    now: () => new Date(TIME),
  });
});
afterEach(() => place.clear());

const ask = (path: string, init: RequestInit = {}): Promise<Response> =>
  Promise.resolve(app.request(`http://127.0.0.1:4600/api/projects${path}`, init));

const documentTitled = (title: string): Record<string, unknown> => ({ ...JSON.parse(TEXT), title });

function put(title: string, tag?: string): Promise<Response> {
  const says = { key: "page.edit.mend", values: { rule: title } };
  return ask(`/${ID}`, {
    method: "PUT",
    headers: {
      "content-type": "application/json",
      ...(tag === undefined ? { "if-none-match": "*" } : { "if-match": tag }),
    },
    body: JSON.stringify({ name: "porch.outerleaf.json", document: documentTitled(title), says }),
  });
}

const etag = (answer: Response): string => answer.headers.get("etag") ?? "";

describeWithStore("kept projects", () => {
  it("are none at first, and the first put makes one", async () => {
    expect(await (await ask("")).json()).toEqual({ store: true, projects: [] });
    expect((await ask(`/${ID}`)).status).toBe(404);
    const made = await put("One");
    expect(made.status).toBe(201);
    expect(await made.json()).toMatchObject({ revision: { number: 1, parent: null, time: TIME } });
    expect(await (await ask("")).json()).toMatchObject({
      projects: [{ id: ID, name: "porch.outerleaf.json", title: "One", latest: { number: 1 } }],
    });
  });

  it("come back with their latest document and its tag, and say whether they know a file", async () => {
    const { revision: first } = (await (await put("One")).json()) as {
      revision: { hash: string; tag: string };
    };
    const second = await put("Two", `"${first.tag}"`);
    const answer = await ask(`/${ID}?file=${first.hash}`);
    expect(etag(answer)).toBe(etag(second));
    expect(await answer.json()).toMatchObject({
      title: "Two",
      knowsFile: true,
      revision: { number: 2, document: documentTitled("Two"), says: { values: { rule: "Two" } } },
    });
    expect(await (await ask(`/${ID}?file=${"0".repeat(64)}`)).json()).toMatchObject({ knowsFile: false });
    const held = await ask(`/${ID}`, { headers: { "if-none-match": etag(second) } });
    expect(held.status).toBe(304);
  });

  it("take a revision only onto the latest; who is late is told which one came between", async () => {
    const first = etag(await put("One"));
    expect((await put("Two", first)).status).toBe(201);
    const late = await put("Three", first);
    expect(late.status).toBe(409);
    expect(await late.json()).toMatchObject({
      error: {
        code: "other-revision",
        message: "Not kept: revision 2 came meanwhile.",
        latest: { number: 2, says: { key: "page.edit.mend", values: { rule: "Two" } }, time: TIME },
      },
    });
    expect((await put("Three")).status).toBe(409);
    expect(await (await ask(`/${ID}`)).json()).toMatchObject({ title: "Two" });
  });

  it("answer the same put again as they did, so that a lost answer does no harm", async () => {
    const first = etag(await put("One"));
    const second = await put("Two", first);
    const again = await put("Two", first);
    expect([second.status, again.status]).toEqual([201, 200]);
    expect(etag(again)).toBe(etag(second));
  });

  it("list their revisions, give each, and go back to one by a new one", async () => {
    const first = etag(await put("One"));
    const second = etag(await put("Two", first));
    const restore = (tag: string) =>
      ask(`/${ID}/revisions/1/restore`, { method: "POST", headers: { "if-match": tag } });
    expect((await restore(first)).status).toBe(409);
    const third = await restore(second);
    expect(third.status).toBe(201);
    expect(await third.json()).toMatchObject({
      revision: { number: 3, parent: 2, says: { key: "page.edit.back-to", values: { number: "1" } } },
    });
    const { revisions } = (await (await ask(`/${ID}/revisions`)).json()) as {
      revisions: { number: number }[];
    };
    expect(revisions.map(({ number }) => number)).toEqual([3, 2, 1]);
    const old = async (number: number) => (await ask(`/${ID}/revisions/${number}`)).json();
    expect(await old(2)).toMatchObject({ revision: { document: documentTitled("Two") } });
    expect(await old(3)).toMatchObject({ revision: { document: documentTitled("One") } });
  });

  it("are removed only with their name said", async () => {
    await put("One");
    const remove = (name: string) =>
      ask(`/${ID}`, {
        method: "DELETE",
        headers: { "content-type": "application/json" },
        body: JSON.stringify({ name }),
      });
    expect((await remove("porch")).status).toBe(409);
    expect((await ask(`/${ID}`)).status).toBe(200);
    expect((await remove("porch.outerleaf.json")).status).toBe(200);
    expect((await ask(`/${ID}`)).status).toBe(404);
    expect((await remove("porch.outerleaf.json")).status).toBe(404);
  });

  it("leave the file on disk as it is, and its id is made from where it lies", async () => {
    const { headers } = await app.request("http://127.0.0.1:4600/api/design");
    const id = headers.get("outerleaf-kept-as") ?? "";
    expect(id).toMatch(/^[0-9a-f]{24}$/);
    const elsewhere = createApp({
      files: diskFiles,
      projectFile: FILE,
      keptAs: `${FILE}2`,
      documentsDir: "",
      webDir: "",
    });
    const other = await elsewhere.request("http://127.0.0.1:4600/api/design");
    expect(other.headers.get("outerleaf-kept-as")).toMatch(/^[0-9a-f]{24}$/);
    expect(other.headers.get("outerleaf-kept-as")).not.toBe(id);
    await put("One");
    expect(readFileSync(FILE, "utf8")).toBe(TEXT);
  });
});

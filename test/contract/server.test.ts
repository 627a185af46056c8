/** What the server answers, asked as a program asks it: in process for the answers, over a socket for the listening. */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { designFile } from "../../src/design.ts";
import { createApp } from "../../src/server/app.ts";
import { diskFiles, type Files } from "../../src/server/files.ts";
import { serve } from "../../src/server/serve.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";

const TEXTS: Readonly<Record<string, string>> = {
  "/job/house.outerleaf.json": '{ "title": "é" }',
  "/out/front.svg": "<svg/>",
  "/out/cut-list.csv": "mark\r\n",
  "/web/index.html": "<!doctype html>",
  "/web/assets/page-1a2b.js": "1",
  "/web/assets/letters.woff2": "w",
};

const files: Files = {
  read: async (path) => (TEXTS[path] === undefined ? undefined : new TextEncoder().encode(TEXTS[path])),
  list: async (folder, deep = false) =>
    Object.entries(TEXTS)
      .filter(([path]) => path.startsWith(`${folder}/`))
      .map(([path, text]) => ({ name: path.slice(folder.length + 1), bytes: text.length }))
      .filter(({ name }) => deep || !name.includes("/")),
};
const places = { projectFile: "/job/house.outerleaf.json", documentsDir: "/out", webDir: "/web" };
const app = createApp({ files, ...places });

const ask = (path: string, init: RequestInit = {}): Promise<Response> =>
  Promise.resolve(app.request(`http://127.0.0.1:4600${path}`, init));

describe("the server's answers", () => {
  it.each([
    ["/", "text/html; charset=utf-8"],
    ["/assets/page-1a2b.js", "text/javascript; charset=utf-8"],
    ["/assets/letters.woff2", "font/woff2"],
    ["/api/project", "application/json; charset=utf-8"],
    ["/api/design", "application/json; charset=utf-8"],
    ["/api/documents", "application/json; charset=utf-8"],
    ["/documents/front.svg", "image/svg+xml; charset=utf-8"],
    ["/documents/cut-list.csv", "text/csv; charset=utf-8"],
  ])("%s is there as %s, under a policy that lets nothing else in", async (path, type) => {
    const answer = await ask(path);
    expect(answer.status).toBe(200);
    expect(answer.headers.get("content-type")).toBe(type);
    expect(answer.headers.get("x-content-type-options")).toBe("nosniff");
    expect(answer.headers.get("cross-origin-resource-policy")).toBe("same-origin");
    expect(answer.headers.get("access-control-allow-origin")).toBeNull();
    const policy = answer.headers.get("content-security-policy") ?? "";
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain("unsafe-eval");
    expect(policy.includes("unsafe-inline")).toBe(path.startsWith("/documents/"));
    expect(policy.includes("sandbox")).toBe(path.startsWith("/documents/"));
  });

  it("the project comes with its name and its text as it stands", async () => {
    expect(await (await ask("/api/project")).json()).toEqual({
      name: "house.outerleaf.json",
      text: TEXTS["/job/house.outerleaf.json"],
    });
  });

  it("the project comes designed, or with what refuses it", async () => {
    expect(await (await ask("/api/design")).json()).toMatchObject({
      kind: "refused",
      name: "house.outerleaf.json",
      findings: [{ outcome: "fail" }],
    });
  });

  it.each(["atelier-bouleau", "imperial", "porch"])(
    "%s comes as the same design that the page would make itself",
    async (name) => {
      const text = readFileSync(
        fileURLToPath(new URL(`../../examples/${name}.outerleaf.json`, import.meta.url)),
        "utf8",
      );
      const served = createApp({
        files: { ...files, read: async () => new TextEncoder().encode(text) },
        ...places,
      });
      const answer = await served.request("http://127.0.0.1:4600/api/design");
      expect(await answer.json()).toEqual(designFile({ name: "house.outerleaf.json", text }));
    },
  );

  it("the documents come with their sizes and hashes", async () => {
    const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");
    expect(await (await ask("/api/documents")).json()).toEqual({
      documents: [
        { name: "front.svg", bytes: 6, sha256: sha256("<svg/>") },
        { name: "cut-list.csv", bytes: 6, sha256: sha256("mark\r\n") },
      ],
    });
  });

  it("what a browser holds already is not sent again", async () => {
    const etag = (await ask("/api/project")).headers.get("etag") ?? "";
    expect(etag).toMatch(/^"[0-9a-f]{32}"$/);
    const again = await ask("/api/project", { headers: { "if-none-match": `"x", W/${etag}` } });
    expect(again.status).toBe(304);
    expect(await again.text()).toBe("");
    const other = await ask("/api/documents", { headers: { "if-none-match": etag } });
    expect(other.status).toBe(200);
  });

  it("only files with a hash in their name are kept without asking", async () => {
    const kept = async (path: string) => (await ask(path)).headers.get("cache-control");
    expect(await kept("/assets/page-1a2b.js")).toContain("immutable");
    expect(await kept("/")).toBe("no-cache");
    expect(await kept("/api/project")).toBe("no-cache");
    expect(await kept("/documents/front.svg")).toBe("no-cache");
  });

  it("HEAD answers as GET does, without the body", async () => {
    const head = await ask("/documents/front.svg", { method: "HEAD" });
    expect(head.status).toBe(200);
    expect(head.headers.get("content-length")).toBe("6");
    expect(await head.text()).toBe("");
  });

  it("a program is refused in JSON, a browser with a page in its language", async () => {
    const program = await ask("/nothing");
    expect(program.status).toBe(404);
    expect(await program.json()).toEqual({
      error: { code: "not-found", message: "There is nothing at this address." },
    });
    const browser = await ask("/nothing", {
      headers: { accept: "text/html,*/*", "accept-language": "fr-CA, en;q=0.5" },
    });
    expect(browser.headers.get("content-type")).toBe("text/html; charset=utf-8");
    expect(await browser.text()).toContain("Il n’y a rien à cette adresse.");
  });
});

describe("listening", () => {
  const options = { files, ...places };

  it("takes a free port and says where it is", async () => {
    const serving = await serve({ ...options, port: 0 });
    expect(serving?.says.map((message) => say(message, ENGLISH_MM))).toEqual([
      `The workbench is at http://127.0.0.1:${serving?.port}/`,
    ]);
    const answer = await fetch(`${serving?.url}api/project`);
    expect(answer.status).toBe(200);
    await serving?.close();
  });

  it("passes over a port that is taken, and says so", async () => {
    const other = createServer();
    const asked = await new Promise<number>((resolve) => {
      other.listen(0, "127.0.0.1", () => {
        const address = other.address();
        resolve(typeof address === "object" && address ? address.port : 0);
      });
    });
    const serving = await serve({ ...options, port: asked });
    expect(serving?.port).toBeGreaterThan(asked);
    expect(serving?.says[0] && say(serving.says[0], ENGLISH_MM)).toBe(
      `Port ${asked} is taken; using ${serving?.port}.`,
    );
    await serving?.close();
    await new Promise((resolve) => other.close(resolve));
  });
});

describe("the disk", () => {
  const here = fileURLToPath(new URL(".", import.meta.url));

  it("gives the bytes of a file, and nothing for what is no file", async () => {
    expect((await diskFiles.read(`${here}server.test.ts`))?.byteLength).toBeGreaterThan(1000);
    expect(await diskFiles.read(`${here}nothing-here`)).toBeUndefined();
    expect(await diskFiles.read(here)).toBeUndefined();
  });

  it("lists the plain files of a folder by name, and nothing where there is no folder", async () => {
    const names = (await diskFiles.list(here)).map(({ name }) => name);
    expect(names).toContain("server.test.ts");
    expect(names).toEqual([...names].sort());
    expect(await diskFiles.list(`${here}nothing-here`)).toEqual([]);
  });
});

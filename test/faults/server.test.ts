/** The server under requests that no page of ours makes: over real sockets, with a real folder beside its own. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { createApp } from "../../src/server/app.ts";
import { diskFiles } from "../../src/server/files.ts";
import { type Serving, serve } from "../../src/server/serve.ts";

const SECRET = "what lies outside";
let tree = "";
let serving: Serving | undefined;

beforeAll(async () => {
  tree = mkdtempSync(join(tmpdir(), "outerleaf-server-"));
  for (const folder of ["web/assets", "documents/inner"]) mkdirSync(join(tree, folder), { recursive: true });
  writeFileSync(join(tree, "secret.txt"), SECRET);
  writeFileSync(join(tree, "documents/inner/deep.csv"), SECRET);
  writeFileSync(join(tree, "documents/.hidden"), SECRET);
  writeFileSync(join(tree, "documents/a b.csv"), "plain");
  writeFileSync(join(tree, "web/index.html"), "<!doctype html>");
  writeFileSync(join(tree, "web/assets/a.js"), "1");
  symlinkSync(join(tree, "secret.txt"), join(tree, "documents/link.txt"));
  symlinkSync(tree, join(tree, "web/assets/up"));
  serving = await serve({
    files: diskFiles,
    projectFile: join(tree, "missing.outerleaf.json"),
    documentsDir: join(tree, "documents"),
    webDir: join(tree, "web"),
    port: 0,
  });
});
afterAll(async () => {
  await serving?.close();
  rmSync(tree, { recursive: true, force: true });
});

/** Sends a request as it stands: clients tidy paths up before they send them. */
function raw(path: string, { method = "GET", host = `127.0.0.1:${serving?.port}` } = {}): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(serving?.port ?? 0, "127.0.0.1");
    let answer = "";
    socket.setEncoding("utf8");
    socket.on("data", (text) => {
      answer += text;
    });
    socket.on("close", () => resolve(answer));
    socket.on("error", reject);
    socket.write(`${method} ${path} HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`);
  });
}

function status(answer: string): number {
  return Number(answer.split(" ")[1]);
}

describe("paths that lead elsewhere", () => {
  it.each([
    "/../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "/..%5csecret.txt",
    "/assets/../../secret.txt",
    "/assets/..%2f..%2fsecret.txt",
    "/assets/up/secret.txt",
    "//secret.txt",
    "/documents/../secret.txt",
    "/documents/..%2fsecret.txt",
    "/documents/%2e%2e%2fsecret.txt",
    "/documents/..%252fsecret.txt",
    "/documents/inner%2fdeep.csv",
    "/documents/inner/deep.csv",
    "/documents/.hidden",
    "/documents/link.txt",
    "/documents/a%00.csv",
    "/documents/%ff",
    "/%",
  ])("%s is not found", async (path) => {
    const answer = await raw(path);
    expect(answer).not.toContain(SECRET);
    expect([400, 404]).toContain(status(answer));
  });

  it.each(["/assets", "/assets/", "/documents", "/documents/", "/api", "/api/"])(
    "%s lists nothing",
    async (path) => {
      const answer = await raw(path);
      expect(status(answer)).toBe(404);
      expect(answer).not.toContain("a.js");
      expect(answer).not.toContain("a b.csv");
    },
  );

  it("a document whose name has a space is found", async () => {
    expect(status(await raw("/documents/a%20b.csv"))).toBe(200);
  });
});

describe("foreign hosts", () => {
  it.each([
    "example.org",
    "example.org:80",
    "127.0.0.1.example.org",
    "localhost.example.org",
    "10.0.0.7",
    "0.0.0.0",
  ])("%s is refused", async (host) => {
    for (const path of ["/", "/api/project", "/documents/a%20b.csv"]) {
      const answer = await raw(path, { host });
      expect(status(answer)).toBe(421);
      expect(answer).not.toContain("plain");
    }
  });

  it.each(["localhost", "LOCALHOST:9999", "127.0.0.1", "[::1]:80"])("%s is this machine", async (host) => {
    expect(status(await raw("/", { host }))).toBe(200);
  });

  it("a request without a host is refused", async () => {
    expect([400, 421]).toContain(status(await raw("/", { host: "" })));
  });
});

describe("methods and lengths", () => {
  it.each(["POST", "PUT", "DELETE", "PATCH", "OPTIONS", "PROPFIND"])("%s is not allowed", async (method) => {
    for (const path of ["/", "/api/project", "/documents/a%20b.csv", "/nothing"]) {
      const answer = await raw(path, { method });
      expect(status(answer)).toBe(405);
      expect(answer.toLowerCase()).toContain("allow: get, head");
    }
  });

  it("an address longer than any of ours is refused, and one that fills the head as well", async () => {
    expect(status(await raw(`/${"a".repeat(5000)}`))).toBe(414);
    expect([414, 431]).toContain(status(await raw(`/${"a".repeat(60_000)}`)));
    expect(status(await raw("/"))).toBe(200);
  });
});

describe("what is missing or breaks", () => {
  it("a project that is not there is a clear word", async () => {
    const answer = await fetch(`${serving?.url}api/project`);
    expect(answer.status).toBe(404);
    expect(await answer.json()).toEqual({
      error: { code: "no-project", message: "The project file cannot be read." },
    });
  });

  it("a page that is not built says how to build it", async () => {
    const app = createApp({
      files: diskFiles,
      projectFile: "",
      documentsDir: tree,
      webDir: join(tree, "none"),
    });
    const answer = await app.request("http://localhost/");
    expect(answer.status).toBe(503);
    expect(await answer.text()).toContain("npm run build");
  });

  it("a disk that fails in the middle shows no trace of the program", async () => {
    const files = { read: () => Promise.reject(new Error("disk gone")), list: diskFiles.list };
    const app = createApp({ files, projectFile: "x", documentsDir: tree, webDir: join(tree, "web") });
    for (const path of ["/", "/api/project", "/documents/secret.txt"]) {
      const answer = await app.request(`http://localhost${path}`);
      expect(answer.status).toBe(500);
      const text = await answer.text();
      expect(text).not.toContain("disk gone");
      expect(text).not.toMatch(/\bat .+:\d+/);
    }
  });
});

/** Pictures over HTTP: what comes back is what was put, and nothing but pictures is taken. */
import { createHash } from "node:crypto";
import type { Hono } from "hono";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { createApp } from "../../src/server/app.ts";
import { diskFiles } from "../../src/server/files.ts";
import { LARGEST_PICTURE } from "../../src/store/attachments.ts";
import { JPEG, PNG, WEBP } from "../helpers/pictures.ts";
import { describeWithStore, type StoreFolder, storeFolder } from "../helpers/store.ts";

let place: StoreFolder;
let app: Hono;
beforeEach(async () => {
  place = storeFolder();
  app = createApp({ ...places(), store: await place.open() });
});
afterEach(() => place.clear());

const places = () => ({
  files: diskFiles,
  projectFile: "",
  documentsDir: place.folder,
  webDir: place.folder,
});
const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const ask = (name: string, init: RequestInit = {}): Promise<Response> =>
  Promise.resolve(app.request(`http://127.0.0.1:4600/api/attachments/${name}`, init));
const put = (bytes: Uint8Array, name = sha256(bytes)): Promise<Response> =>
  ask(name, { method: "PUT", body: Uint8Array.from(bytes) });
const code = async (answer: Response): Promise<readonly [number, string]> => [
  answer.status,
  ((await answer.json()) as { error: { code: string } }).error.code,
];

describeWithStore("a picture", () => {
  it.each([
    ["image/jpeg", JPEG],
    ["image/png", PNG],
    ["image/webp", WEBP],
  ])("in %s comes back byte for byte, and is told to run nothing", async (type, bytes) => {
    const made = await put(bytes);
    expect([made.status, await made.json()]).toEqual([
      201,
      { sha256: sha256(bytes), type, bytes: bytes.byteLength },
    ]);
    expect((await put(bytes)).status).toBe(200);
    const held = await ask(sha256(bytes));
    expect(new Uint8Array(await held.arrayBuffer())).toEqual(bytes);
    expect(held.headers.get("content-type")).toBe(type);
    expect(held.headers.get("x-content-type-options")).toBe("nosniff");
    expect(held.headers.get("content-security-policy")).toContain("sandbox");
  });

  it.each([
    [
      "a drawing that runs",
      new TextEncoder().encode("<svg xmlns='http://www.w3.org/2000/svg' onload='x()'/>"),
    ],
    ["a page", new TextEncoder().encode("<!doctype html><script>x()</script>")],
    ["an animation of another kind", new TextEncoder().encode("GIF89a")],
    ["nothing", new Uint8Array()],
    ["sound in the same container", new TextEncoder().encode("RIFF1234WAVEfmt ")],
  ])("that is %s is refused", async (_, bytes) => {
    expect(await code(await put(bytes))).toEqual([415, "picture-other-type"]);
    expect(await code(await ask(sha256(bytes)))).toEqual([404, "no-attachment"]);
  });

  it("of other bytes than its name tells is refused", async () => {
    expect(await code(await put(PNG, sha256(JPEG)))).toEqual([422, "picture-other-hash"]);
    expect(await code(await ask(sha256(JPEG)))).toEqual([404, "no-attachment"]);
  });

  it("that is too large is refused, also where no length is given", async () => {
    const large = new Uint8Array(LARGEST_PICTURE + 1);
    large.set(JPEG);
    expect(await code(await put(large))).toEqual([413, "picture-too-large"]);
    const stream = { method: "PUT", body: new Blob([large]).stream(), duplex: "half" } as RequestInit;
    expect(await code(await ask(sha256(large), stream))).toEqual([413, "picture-too-large"]);
  });

  it("from a page of another site is refused", async () => {
    const headers = { origin: "https://example.org" };
    const answer = await ask(sha256(PNG), { method: "PUT", headers, body: Uint8Array.from(PNG) });
    expect(await code(answer)).toEqual([403, "foreign-page"]);
  });

  it.each(["x", "..%2f..%2fsecret", "A".repeat(64), "0".repeat(63)])(
    "under %s is not found",
    async (name) => {
      expect(await code(await ask(name))).toEqual([404, "not-found"]);
    },
  );
});

describe("without a database", () => {
  it("says so", async () => {
    const bare = createApp(places());
    const answer = await bare.request(`http://127.0.0.1/api/attachments/${sha256(PNG)}`);
    expect(await code(answer)).toEqual([503, "no-store"]);
  });
});

/** A process that writes is killed in the middle: what it had said to be kept is there, whole and in order. */
import { spawn } from "node:child_process";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { checkout } from "../helpers/cli.ts";
import { describeWithStore, ID, type StoreFolder, storeFolder } from "../helpers/store.ts";

const TSX = join(checkout, "node_modules/tsx/dist/loader.mjs");

/** Writes revisions without end, and says each number once it was told that it is kept. */
const WRITER = `
  const [folder, from] = process.argv.slice(-2);
  const { openStore } = await import(${JSON.stringify(new URL("../../src/store/open.ts", import.meta.url).href)});
  const { store } = await openStore(folder);
  const says = { key: "page.edit.read", values: {} };
  let onto = (await store.project("${ID}"))?.latest.tag;
  for (let n = Number(from); ; n++) {
    const document = { n, bulk: "x".repeat(20_000) };
    const answer = await store.put("${ID}", { name: "a", title: "a", document, says, time: "2026-03-01T10:00:00.000Z", onto });
    onto = answer.revision.tag;
    process.stdout.write(n + "\\n");
  }
`;

/** The last number that the writer said before it was killed, which happens once it has said \`enough\` of them. */
function killedAfter(folder: string, { from, enough }: { from: number; enough: number }): Promise<number> {
  return new Promise((done, fail) => {
    const child = spawn(
      process.execPath,
      ["--import", TSX, "--input-type=module", "--eval", WRITER, "--", folder, String(from)],
      { stdio: ["ignore", "pipe", "pipe"] },
    );
    let out = "";
    let err = "";
    child.stdout.on("data", (bytes: Buffer) => {
      out += bytes.toString();
      if (out.split("\n").length > enough) child.kill("SIGKILL");
    });
    child.stderr.on("data", (bytes: Buffer) => {
      err += bytes.toString();
    });
    child.on("close", (_, signal) => {
      if (signal === "SIGKILL" || process.platform === "win32")
        done(Number(out.trimEnd().split("\n").at(-1)));
      else fail(new Error(err));
    });
  });
}

let place: StoreFolder;
beforeEach(() => {
  place = storeFolder();
});
afterEach(() => place.clear());

describeWithStore("a killed writer", () => {
  it("leaves every revision that it was told is kept, and the next one goes on from there", async () => {
    let from = 1;
    for (const enough of [1, 7, 20, 33]) {
      const said = await killedAfter(place.folder, { from, enough });
      expect(said).toBeGreaterThanOrEqual(from + enough - 1);
      const store = await place.open();
      const latest = (await store.project(ID))?.latest.number ?? 0;
      // One more may be there: killed after it was written and before it was said.
      expect([said, said + 1]).toContain(latest);
      for (let number = 1; number <= latest; number++) {
        expect((await store.revision(ID, number))?.document).toMatchObject({ n: number });
      }
      store.close();
      from = latest + 1;
    }
  }, 60_000);
});

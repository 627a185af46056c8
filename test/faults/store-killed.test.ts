/** A process that writes is killed in the middle: what it had said to be kept is there, whole and in order. */
import { spawn } from "node:child_process";
import { join } from "node:path";
import Sqlite from "better-sqlite3";
import { afterEach, beforeEach, expect, it } from "vitest";
import { checkout } from "../helpers/cli.ts";
import { describeWithStore, ID, type StoreFolder, storeFolder } from "../helpers/store.ts";

const KILLS = process.env.OUTERLEAF_SOAK ? 1000 : 50;

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

/** Tells entries without end, some at once, and says the last number of each batch once it was told that it is kept. */
const TELLER = `
  const [folder, from] = process.argv.slice(-2);
  const { openStore } = await import(${JSON.stringify(new URL("../../src/store/open.ts", import.meta.url).href)});
  const { store } = await openStore(folder);
  for (let n = Number(from); ; n += 3) {
    const entries = [n, n + 1, n + 2].map((count) => ({ id: "${"ab".repeat(8)}-" + count, bulk: "x".repeat(500) }));
    const answers = await store.journal.append("${ID}", entries, { who: "Ben", time: "2026-03-01T10:00:00.000Z" });
    process.stdout.write(answers.at(-1).number + "\\n");
  }
`;

/** The last number that the writer said before it was killed, which happens once it has said \`enough\` of them. */
function killedAfter(
  folder: string,
  { from, enough, writer = WRITER }: { from: number; enough: number; writer?: string },
): Promise<number> {
  return new Promise((done, fail) => {
    const child = spawn(
      process.execPath,
      ["--import", TSX, "--input-type=module", "--eval", writer, "--", folder, String(from)],
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

  it(`leaves every entry of the journal that it was told is kept, through ${KILLS} kills`, async () => {
    let from = 1;
    for (let kill = 0; kill < KILLS; kill++) {
      const said = await killedAfter(place.folder, { from, enough: 1 + ((kill * 7) % 12), writer: TELLER });
      const database = new Sqlite(join(place.folder, "outerleaf.sqlite"));
      expect(database.pragma("integrity_check", { simple: true })).toBe("ok");
      const numbers = database.prepare("SELECT number FROM journal ORDER BY number").pluck().all();
      const counts = database.prepare("SELECT count FROM journal ORDER BY count").pluck().all();
      database.close();
      // A batch is there whole or not at all; the last one may be there and not yet said.
      expect([said, said + 3]).toContain(numbers.length);
      expect(numbers).toEqual(Array.from(numbers, (_, at) => at + 1));
      expect(counts).toEqual(numbers);
      from = numbers.length + 1;
    }
  }, 14_400_000);
});

/** A process that writes is killed in the middle: what it had said to be kept is there, whole and in order. */
import { spawn } from "node:child_process";
import { join } from "node:path";
import Sqlite from "better-sqlite3";
import { build } from "vite";
import { afterEach, beforeAll, beforeEach, expect, it } from "vitest";
import { seeded } from "../../src/cutting/random.ts";
import { checkout } from "../helpers/cli.ts";
import { describeWithStore, ID, type StoreFolder, storeFolder } from "../helpers/store.ts";

const KILLS = process.env.OUTERLEAF_SOAK ? 1000 : 50;

/** In the checkout, where the bundle finds its libraries. */
const BUNDLES = join(checkout, ".cache", "endless-writer");

interface Kill {
  readonly folder: string;
  readonly what: "revisions" | "journal";
  readonly from: number;
  /** Once it has said as many numbers … */
  readonly enough: number;
  /** … and this long after, milliseconds: in the middle of a write, or between two. */
  readonly after: number;
}

/** The last number that the writer said before it was killed. */
function killedAfter({ folder, what, from, enough, after }: Kill): Promise<number> {
  return new Promise((done, fail) => {
    const writer = [join(BUNDLES, "endless-writer.js"), folder, what, String(from)];
    const child = spawn(process.execPath, writer, { stdio: ["ignore", "pipe", "pipe"] });
    let out = "";
    let err = "";
    let aimed = false;
    child.stdout.on("data", (bytes: Buffer) => {
      out += bytes.toString();
      if (aimed || out.split("\n").length <= enough) return;
      aimed = true;
      setTimeout(() => child.kill("SIGKILL"), after);
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
  // Bundled once: a loader in each child took twenty times as long as what is tested.
  beforeAll(() =>
    build({
      configFile: join(checkout, "vite.cli.config.ts"),
      root: checkout,
      logLevel: "error",
      // Libraries of many small files are read faster as one.
      ssr: { noExternal: true, external: ["better-sqlite3"] },
      build: {
        ssr: "test/helpers/endless-writer.ts",
        outDir: BUNDLES,
        sourcemap: false,
        rolldownOptions: { output: { entryFileNames: "[name].js", codeSplitting: false } },
      },
    }),
  );

  it("leaves every revision that it was told is kept, and the next one goes on from there", async () => {
    const random = seeded(20_11);
    let from = 1;
    for (const enough of [1, 7, 20, 33]) {
      const said = await killedAfter({
        folder: place.folder,
        what: "revisions",
        from,
        enough,
        after: random() * 5,
      });
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
  });

  it(`leaves every entry of the journal that it was told is kept, through ${KILLS} kills`, async () => {
    const random = seeded(20_26);
    let from = 1;
    for (let kill = 0; kill < KILLS; kill++) {
      const enough = 1 + Math.floor(random() * 12);
      const after = random() * 8;
      const said = await killedAfter({ folder: place.folder, what: "journal", from, enough, after });
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

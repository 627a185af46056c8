/** Writing that cannot be done leaves things as they were: nothing half written, nothing of anybody else's replaced. */
import { chmodSync, mkdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { starterProject } from "../../src/project/starter.ts";
import { type Bench, bench } from "../helpers/cli.ts";

const FILE = "wall.json";
let desk: Bench;

beforeEach(() => {
  desk = bench();
  desk.write(FILE, starterProject());
});
afterEach(() => desk.clear());

async function refused(...argv: string[]): Promise<string> {
  const { exit, out, err } = await desk.run(...argv);
  expect({ exit, out }).toEqual({ exit: 2, out: "" });
  expect(err).not.toMatch(/\n\s+at /);
  return err;
}

describe("issue", () => {
  it("does not touch a folder that holds something else", async () => {
    mkdirSync(join(desk.folder, "photos"));
    writeFileSync(join(desk.folder, "photos", "wall.jpg"), "light");
    const before = desk.names();
    expect(await refused("issue", FILE, "--to", "photos")).toContain("holds something that no issue wrote");
    expect(desk.names("photos")).toEqual(["wall.jpg"]);
    expect(desk.names()).toEqual(before);
  });

  it("does not take another program's manifest for its own", async () => {
    mkdirSync(join(desk.folder, "app"));
    writeFileSync(join(desk.folder, "app", "manifest.json"), '{"name":"app","documents":[]}');
    expect(await refused("issue", FILE, "--to", "app")).toContain("holds something that no issue wrote");
    expect(desk.names("app")).toEqual(["manifest.json"]);
  });

  it("keeps what someone put beside its documents", async () => {
    await desk.run("issue", FILE, "--to", "job");
    writeFileSync(join(desk.folder, "job", "notes.txt"), "ask the roofer");
    const before = desk.names("job");
    expect(await refused("issue", FILE, "--to", "job")).toContain("also holds notes.txt");
    expect(desk.names("job")).toEqual(before);
    expect(desk.read("job/notes.txt")).toBe("ask the roofer");
  });

  it("replaces what an earlier issue wrote, documents that are no more included", async () => {
    desk.write("rename.json", [{ op: "replace", path: "/faces/0/id", value: "north" }]);
    await desk.run("issue", FILE, "--to", "job", "--edit", "rename.json");
    expect(desk.names("job")).toContain("face-north.svg");
    const before = desk.names();
    await desk.run("issue", FILE, "--to", "job");
    expect(desk.names("job")).not.toContain("face-north.svg");
    expect(desk.names("job")).toContain("face-front.svg");
    expect(desk.names()).toEqual(before);
  });

  it("draws again only what changed, and the folder is the same to the byte as one that is written afresh", async () => {
    await desk.run("issue", FILE, "--to", "again");
    const fileOf = (name: string): number => statSync(join(desk.folder, "again", name)).ino;
    const sheets = desk.names("again").filter((name) => name.endsWith(".svg"));
    const before = new Map(sheets.map((name) => [name, fileOf(name)]));
    await desk.run("issue", FILE, "--to", "again");
    expect(sheets.filter((name) => fileOf(name) !== before.get(name))).toEqual([]);
    // One sheet was changed by hand since: it is no longer what was drawn.
    const [first = ""] = sheets;
    desk.write(`again/${first}`, "spilled coffee");
    desk.write("feet.json", [{ op: "add", path: "/display/units", value: "feet-inch" }]);
    await desk.run("issue", FILE, "--to", "again");
    await desk.run("issue", FILE, "--to", "again", "--edit", "feet.json");
    await desk.run("issue", FILE, "--to", "afresh", "--edit", "feet.json");
    for (const name of desk.names("afresh"))
      expect({ name, same: desk.bytes(`again/${name}`).equals(desk.bytes(`afresh/${name}`)) }).toEqual({
        name,
        same: true,
      });
    expect(desk.names("again")).toEqual(desk.names("afresh"));
  });

  it("takes an empty folder, and makes those above it", async () => {
    mkdirSync(join(desk.folder, "empty"));
    for (const folder of ["empty", "a/b/c"]) {
      await desk.run("issue", FILE, "--to", folder);
      expect(desk.names(folder)).toContain("manifest.json");
    }
    expect(desk.names("a/b")).toEqual(["c"]);
  });

  it("says so where the target lies below a file, and leaves nothing behind", async () => {
    const before = desk.names();
    expect(await refused("issue", FILE, "--to", `${FILE}/job`)).toContain("was not written");
    expect(await refused("issue", FILE, "--to", FILE)).toContain("is no folder");
    expect(desk.names()).toEqual(before);
  });

  // The superuser may write anywhere, and Windows has other rights.
  it.skipIf(process.getuid?.() === 0 || process.platform === "win32")(
    "says so where the folder above may not be written, and leaves nothing behind",
    async () => {
      mkdirSync(join(desk.folder, "shut"));
      chmodSync(join(desk.folder, "shut"), 0o500);
      expect(await refused("issue", FILE, "--to", "shut/job")).toContain("the system does not allow it");
      chmodSync(join(desk.folder, "shut"), 0o700);
      expect(desk.names("shut")).toEqual([]);
    },
  );

  it("stopped midway leaves the earlier issue whole and nothing beside it", async () => {
    await desk.run("issue", FILE, "--to", "job");
    const before = { all: desk.names(), manifest: desk.read("job/manifest.json") };
    // Asked to stop as soon as the writing begins to listen.
    const stopping = bench({
      cwd: desk.folder,
      onStop: (stop) => {
        stop();
        return () => undefined;
      },
    });
    const { exit, err } = await stopping.run("issue", FILE, "--to", "job", "--language", "fr");
    stopping.clear();
    expect(exit).toBe(2);
    expect(err).toContain("Arrêté avant l’écriture de job");
    expect(desk.names()).toEqual(before.all);
    expect(desk.read("job/manifest.json")).toBe(before.manifest);
  });
});

it("start refuses a file that cannot be used, and writes nothing", async () => {
  const before = desk.names();
  expect(await refused("start", "nowhere.json", "--once")).toContain("nowhere.json cannot be read");
  expect(desk.names()).toEqual(before);
});

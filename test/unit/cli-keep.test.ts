/** People, copies and archives from the command line. What is checked is our own promise; no outside source. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { openStore } from "../../src/store/open.ts";
import { message } from "../../src/text/message.ts";
import { bench } from "../helpers/cli.ts";
import { told } from "../helpers/journal.ts";
import { describeWithStore, type StoreFolder, storeFolder } from "../helpers/store.ts";

describeWithStore("what is kept, from the command line", () => {
  const desk = bench();
  let place: StoreFolder;
  const id = "0123456789abcdef01234567";
  beforeAll(async () => {
    place = storeFolder();
    const store = await place.open();
    const document = JSON.parse(readFileSync("examples/porch.outerleaf.json", "utf8"));
    await store.put(id, {
      name: "porch.outerleaf.json",
      title: "Shed",
      document,
      says: message("page.edit.read", { file: "porch" }),
      time: "2027-05-04T07:30:00.000Z",
      onto: undefined,
    });
    await store.journal.append(id, [told(1)], { who: "Ada", time: "2027-05-04T07:31:00.000Z" });
    store.close();
  });
  afterAll(() => {
    place.clear();
    desk.clear();
  });
  const json = (out: string) => JSON.parse(out) as Record<string, unknown>;

  it("invites, lists and shuts out", async () => {
    const data = ["--data", place.folder];
    const { exit, out } = await desk.run("people", "invite", "Ada", "--role", "reader", ...data, "--json");
    expect(exit).toBe(0);
    const { link } = json(out) as { link: string };
    // The secret stands in the fragment, which no browser sends.
    expect(new URL(link)).toMatchObject({ pathname: "/join", search: "" });
    expect(new URL(link).hash.length).toBeGreaterThan(40);
    expect((await desk.run("people", "list", ...data)).out).toContain("Ada");
    expect((await desk.run("people", "invite", "Ada", "--role", "owner", ...data)).exit).toBe(2);
    expect((await desk.run("people", "revoke", "Nobody", ...data)).exit).toBe(2);
    expect((await desk.run("people", "revoke", "Ada", ...data)).exit).toBe(0);
    expect((await desk.run("people", "list", ...data)).out).toContain("shut out");
    const file = readFileSync(join(place.folder, "outerleaf.sqlite"));
    expect(file.includes(new URL(link).hash.slice(1))).toBe(false);
  });

  it("copies the database and puts the copy in place elsewhere, never over one", async () => {
    const copy = join(desk.folder, "copy.sqlite");
    expect((await desk.run("backup", copy, "--data", place.folder)).exit).toBe(0);
    expect((await desk.run("backup", copy, "--data", place.folder)).exit).toBe(2);
    const other = join(desk.folder, "other");
    expect((await desk.run("restore", copy, "--data", other)).exit).toBe(0);
    expect((await desk.run("people", "list", "--data", other)).out).toContain("Ada");
  });

  it("freezes the documents of a revision once, and hands them on with the archive", async () => {
    const data = ["--data", join(desk.folder, "frozen")];
    const issue = ["issue", "porch.outerleaf.json", "--revision", "A", "--note", "for the saw", ...data];
    const dated = [...issue, "--date", "2026-05-04", "--json"];
    expect(json((await desk.run(...dated, "--to", "a")).out)).toMatchObject({ frozen: 1 });
    expect(json((await desk.run(...dated, "--to", "a")).out)).toMatchObject({ frozen: 1 });
    const archive = join(desk.folder, "frozen.zip");
    expect((await desk.run("export", "porch.outerleaf.json", "--to", archive, ...data)).exit).toBe(0);
    const elsewhere = join(desk.folder, "fourth");
    expect((await desk.run("import", archive, "--data", elsewhere)).exit).toBe(0);
    const opened = await openStore(elsewhere);
    if (!opened.ok) throw new Error(opened.says.key);
    const { id: own } = json((await desk.run("import", archive, "--data", elsewhere, "--json")).out) as {
      id: string;
    };
    const [set, ...others] = await opened.store.issued.list(own);
    expect(others).toEqual([]);
    expect(set?.files.map(({ name }) => name)).toEqual(desk.names("a"));
    for (const { name } of set?.files ?? []) {
      const held = await opened.store.issued.file(own, 1, name);
      expect({ name, same: desk.bytes(join("a", name)).equals(held ?? new Uint8Array()) }).toEqual({
        name,
        same: true,
      });
    }
    opened.store.close();
  });

  it("packs a project with its journal into one archive, and takes it in elsewhere", async () => {
    const archive = join(desk.folder, "shed.zip");
    expect((await desk.run("export", id, "--to", archive, "--data", place.folder)).exit).toBe(0);
    expect(existsSync(archive)).toBe(true);
    const data = ["--data", join(desk.folder, "third")];
    const { exit, out } = await desk.run("import", archive, ...data, "--json");
    expect(exit).toBe(0);
    expect(json(out)).toMatchObject({ title: "Shed", revisions: 1, entries: 1 });
    const broken = join(desk.folder, "broken.zip");
    desk.write("broken.zip", "no archive");
    expect((await desk.run("import", broken, ...data)).exit).toBe(2);
  });
});

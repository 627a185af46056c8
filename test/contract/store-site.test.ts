/** What lies beside the revisions: journal, issued sets, copies while in use, and archives that go to another machine. */
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Sqlite from "better-sqlite3";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { afterEach, beforeEach, expect, it } from "vitest";
import { restoreFrom } from "../../src/store/database-file.ts";
import type { Store } from "../../src/store/store.ts";
import { told } from "../helpers/journal.ts";
import { PNG } from "../helpers/pictures.ts";
import { describeWithStore, ID, nth, type StoreFolder, storeFolder } from "../helpers/store.ts";

let place: StoreFolder;
let other: StoreFolder;
beforeEach(() => {
  place = storeFolder();
  other = storeFolder();
});
afterEach(() => {
  place.clear();
  other.clear();
});

const time = "2026-05-04T06:00:00.000Z";
const by = { who: "Ben", time };
const PHOTO = createHash("sha256").update(PNG).digest("hex");
const photo = told(3, { kind: "photo", place: {}, body: { photo: PHOTO } });

/** A project with one of everything. */
async function filled(store: Store): Promise<void> {
  await store.put(ID, nth(1));
  await store.attachments.put(PHOTO, { content: PNG, time });
  await store.journal.append(ID, [told(1), told(2), photo], by);
  const files = [{ name: "cuts.csv", content: strToU8("mark\n") }];
  await store.issued.freeze(ID, { revision: "A", note: "", who: "Ada", time, hash: "0".repeat(64), files });
}

const everything = async (store: Store) => ({
  revisions: await store.revisions(ID),
  journal: await store.journal.after(ID, { after: 0, limit: 1000 }),
  issued: await store.issued.list(ID),
  file: await store.issued.file(ID, 1, "cuts.csv"),
  picture: (await store.attachments.get(PHOTO))?.content,
});

describeWithStore("what is only added to", () => {
  it("can be neither changed nor deleted, by anyone who has the database open", async () => {
    await filled(await place.open());
    const database = new Sqlite(join(place.folder, "outerleaf.sqlite"));
    for (const table of ["journal", "issued", "issued_files", "contents"]) {
      expect(() => database.exec(`DELETE FROM ${table}`)).toThrow("only added to");
      expect(() => database.exec(`UPDATE ${table} SET rowid = rowid`)).toThrow("only added to");
    }
    database.close();
  });

  it("stays when its project is removed, and is there when that begins again", async () => {
    const store = await place.open();
    await filled(store);
    expect(await store.remove(ID, "house.outerleaf.json")).toBe("removed");
    expect((await store.journal.after(ID, { after: 0, limit: 9 })).latest).toBe(3);
    expect(await store.issued.list(ID)).toHaveLength(1);
  });
});

describeWithStore("an issued set", () => {
  it("issued again as it is has its number; with another file it is another set", async () => {
    const store = await place.open();
    await filled(store);
    const set = { revision: "A", note: "", who: "Ada", time, hash: "0".repeat(64) };
    const name = "cuts.csv";
    expect(await store.issued.freeze(ID, { ...set, files: [{ name, content: strToU8("mark\n") }] })).toBe(1);
    expect(await store.issued.freeze(ID, { ...set, files: [{ name, content: strToU8("m\n") }] })).toBe(2);
    expect(strFromU8((await store.issued.file(ID, 1, name)) ?? new Uint8Array())).toBe("mark\n");
  });
});

describeWithStore("a copy of the database", () => {
  it("is made while others write, and holds all that was there", async () => {
    const store = await place.open();
    await filled(store);
    const copy = join(other.folder, "copy.sqlite");
    store.backUp(copy);
    await store.journal.append(ID, [told(9)], by);
    const restored = await restoreFrom(copy, other.folder);
    expect(restored).toMatchObject({ ok: true });
    const again = await other.open();
    expect((await everything(again)).journal.latest).toBe(3);
    expect((await again.journal.append(ID, [told(9)], by))[0]?.number).toBe(4);
    expect(await everything(again)).toEqual(await everything(store));
  });

  it("put back keeps what was there under another name", async () => {
    const store = await place.open();
    await filled(store);
    const copy = join(place.folder, "copy.sqlite");
    store.backUp(copy);
    await store.journal.append(ID, [told(9)], by);
    store.close();
    const restored = await restoreFrom(copy, place.folder);
    expect(restored).toMatchObject({
      ok: true,
      before: join(place.folder, "outerleaf-before-restore-1.sqlite"),
    });
    expect((await (await place.open()).journal.after(ID, { after: 0, limit: 9 })).latest).toBe(3);
    const before = new Sqlite(join(place.folder, "outerleaf-before-restore-1.sqlite"), { readonly: true });
    expect(before.prepare("SELECT count(*) FROM journal").pluck().get()).toBe(4);
    before.close();
  });

  it("is not put under a workbench that runs, and neither is what is no copy", async () => {
    const store = await place.open();
    await filled(store);
    const copy = join(other.folder, "copy.sqlite");
    store.backUp(copy);
    const says = async (file: string) => {
      const answer = await restoreFrom(file, place.folder);
      return answer.ok ? undefined : answer.says.key;
    };
    expect(await says(copy)).toBe("store.in-use");
    expect(await says(join(other.folder, "none.sqlite"))).toBe("store.no-copy");
    const letter = join(other.folder, "letter.sqlite");
    writeFileSync(letter, "dear reader\n".repeat(200));
    expect(await says(letter)).toBe("store.damaged-copy");
    const theirs = join(other.folder, "theirs.sqlite");
    new Sqlite(theirs).exec("CREATE TABLE theirs (x)").close();
    expect(await says(theirs)).toBe("store.foreign-copy");
    const half = join(other.folder, "half.sqlite");
    writeFileSync(half, readFileSync(copy).subarray(0, 40_000));
    expect(await says(half)).toBe("store.damaged-copy");
    expect((await everything(store)).journal.latest).toBe(3);
    expect(existsSync(join(place.folder, "outerleaf-before-restore-1.sqlite"))).toBe(false);
  });
});

describeWithStore("a project's archive", () => {
  const all = () => true;

  it("brings everything to another machine, once", async () => {
    const store = await place.open();
    await filled(store);
    const bytes = (await store.archives.pack(ID)) ?? new Uint8Array();
    const there = await other.open();
    const counts = { revisions: 1, entries: 3, pictures: 1, issued: 1 };
    expect(await there.archives.unpack(bytes, all)).toMatchObject({ ok: true, taken: counts });
    expect(await everything(there)).toEqual(await everything(store));
    const none = { revisions: 0, entries: 0, pictures: 0, issued: 0 };
    expect(await there.archives.unpack(bytes, all)).toMatchObject({ ok: true, taken: none });
    expect(await store.archives.pack("f".repeat(24))).toBeUndefined();
  });

  it("joins two journals, and refuses two histories that parted, whole", async () => {
    const store = await place.open();
    await filled(store);
    const bytes = (await store.archives.pack(ID)) ?? new Uint8Array();
    const there = await other.open();
    await there.journal.append(ID, [told(1), told(1, {}, 1)], by);
    expect(await there.archives.unpack(bytes, all)).toMatchObject({ taken: { entries: 2 } });
    const parted = storeFolder();
    const third = await parted.open();
    await third.put(ID, nth(7));
    expect(await third.archives.unpack(bytes, all)).toMatchObject({ says: { key: "store.archive-other" } });
    expect((await third.journal.after(ID, { after: 0, limit: 9 })).latest).toBe(0);
    expect(await third.attachments.get(PHOTO)).toBeUndefined();
    parted.clear();
  });

  it("that was tampered with is refused by its part, and nothing is written", async () => {
    const store = await place.open();
    await filled(store);
    const parts = unzipSync((await store.archives.pack(ID)) ?? new Uint8Array());
    const description = JSON.parse(strFromU8(parts["project.json"] ?? new Uint8Array()));
    const there = await other.open();
    const part = async (changed: Record<string, Uint8Array>, isEntry = all) => {
      const answer = await there.archives.unpack(zipSync({ ...parts, ...changed }), isEntry);
      return answer.ok ? undefined : (answer.says.values.part ?? answer.says.key);
    };
    const told = (change: (one: typeof description) => void) => {
      const one = structuredClone(description);
      change(one);
      return part({ "project.json": strToU8(JSON.stringify(one)) });
    };
    expect(await part({ [`contents/${PHOTO}`]: strToU8("<script>") })).toBe(`contents/${PHOTO}`);
    expect(await told((one) => (one.revisions[0].document = "{}"))).toBe("revisions/1");
    expect(await told((one) => (one.journal[1].count = 7))).toMatch(/^journal\//);
    expect(await told((one) => (one.journal[1].number = 7))).toBe("number 7");
    expect(await told((one) => (one.files[0].name = "../x"))).toBe("project.json: files/0/name");
    expect(await told((one) => (one.more = 1))).toBe("project.json");
    expect(await part({ "project.json": strToU8("{") })).toBe("project.json");
    expect(await part({}, () => false)).toMatch(/^journal\//);
    expect(await there.archives.unpack(strToU8("no archive"), all)).toMatchObject({
      says: { key: "store.no-archive" },
    });
    expect(await there.list()).toEqual([]);
    expect((await there.journal.after(ID, { after: 0, limit: 9 })).latest).toBe(0);
  });
});

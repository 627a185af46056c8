/** The database of kept projects: what is put comes back, in order, under a lock, and a database not ours stays as it is. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Sqlite from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { dataFolder } from "../../src/store/data-folder.ts";
import { bringUp, DATABASE_VERSION } from "../../src/store/migrations.ts";
import { openStore } from "../../src/store/open.ts";
import type { PutAnswer } from "../../src/store/revision.ts";
import type { Store } from "../../src/store/store.ts";
import { WHOLE } from "../../src/store/thin-out.ts";
import { describeWithStore, ID, nth, type StoreFolder, storeFolder } from "../helpers/store.ts";

let place: StoreFolder;
beforeEach(() => {
  place = storeFolder();
});
afterEach(() => place.clear());

function tagOf(answer: PutAnswer): string {
  if (answer.kind !== "kept") throw new Error("not kept");
  return answer.revision.tag;
}

/** Puts revisions onto one another, each at its time. */
async function putAll(store: Store, times: readonly string[]): Promise<string> {
  let tag: string | undefined;
  for (const [at, time] of times.entries()) tag = tagOf(await store.put(ID, nth(at + 1, tag, { time })));
  return tag ?? "";
}

describeWithStore("revisions", () => {
  it("come back as they were put, also from a database opened again", async () => {
    const first = await place.open();
    const tag = tagOf(await first.put(ID, nth(1)));
    await first.put(ID, nth(2, tag, { time: "2026-03-01T10:05:00.000Z" }));
    first.close();
    const again = await place.open();
    expect(await again.project(ID)).toMatchObject({ id: ID, name: "house.outerleaf.json", title: "House" });
    expect(
      (await again.revisions(ID)).map(({ number, parent, says, time }) => [
        number,
        parent,
        says.values,
        time,
      ]),
    ).toEqual([
      [2, 1, { id: "W2" }, "2026-03-01T10:05:00.000Z"],
      [1, null, { id: "W1" }, "2026-03-01T10:00:00.000Z"],
    ]);
    expect((await again.revision(ID, 1))?.document).toEqual({ n: 1 });
    expect(await again.revision(ID, 3)).toBeUndefined();
  });

  it("keep their keys in order, for a file keeps its author's hand", async () => {
    const store = await place.open();
    await store.put(ID, nth(1, undefined, { document: { z: 1, a: { y: "é", b: 0.1 } } }));
    expect(JSON.stringify((await store.revision(ID, 1))?.document)).toBe('{"z":1,"a":{"y":"é","b":0.1}}');
  });

  it("are not stored twice in a row, and the same question asked again gets the same answer", async () => {
    const store = await place.open();
    const tag = tagOf(await store.put(ID, nth(1)));
    const second = await store.put(ID, nth(2, tag));
    expect(second).toMatchObject({ kind: "kept", fresh: true, revision: { number: 2 } });
    const again = await store.put(ID, nth(2, tag));
    expect(again).toMatchObject({ kind: "kept", fresh: false, revision: { number: 2 } });
    const back = await store.put(ID, nth(1, tagOf(second)));
    expect(back).toMatchObject({ kind: "kept", fresh: true, revision: { number: 3, parent: 2 } });
  });

  it("are refused where another came between, and the other is named", async () => {
    const store = await place.open();
    const tag = tagOf(await store.put(ID, nth(1)));
    await store.put(ID, nth(2, tag));
    for (const onto of [tag, undefined, "2.0000000000000000"]) {
      const answer = await store.put(ID, nth(3, onto));
      expect(answer).toMatchObject({
        kind: "conflict",
        latest: { number: 2, says: { values: { id: "W2" } } },
      });
    }
    expect(await store.revisions(ID)).toHaveLength(2);
  });

  it("of two writers at once one is kept and one is told, and so is one on another connection", async () => {
    const [one, other] = [await place.open(), await place.open()];
    const tag = tagOf(await one.put(ID, nth(1)));
    const answers = await Promise.all([one.put(ID, nth(2, tag)), one.put(ID, nth(3, tag))]);
    expect(answers.map(({ kind }) => kind)).toEqual(["kept", "conflict"]);
    expect(await other.put(ID, nth(4, tag))).toMatchObject({ kind: "conflict", latest: { number: 2 } });
    expect(await other.revisions(ID)).toHaveLength(2);
  });

  it("of a removed project are gone, and a writer who still holds one is told", async () => {
    const store = await place.open();
    const tag = tagOf(await store.put(ID, nth(1)));
    expect(await store.remove(ID, "other.json")).toBe("other-name");
    expect(await store.remove(ID, "house.outerleaf.json")).toBe("removed");
    expect(await store.remove(ID, "house.outerleaf.json")).toBe("missing");
    expect(await store.revisions(ID)).toEqual([]);
    expect(await store.put(ID, nth(2, tag))).toEqual({ kind: "conflict", latest: undefined });
    await store.put(ID, nth(5));
    expect(await store.put(ID, nth(2, tag))).toMatchObject({ kind: "conflict", latest: { number: 1 } });
  });

  it("older than the latest are thinned to the last of each day and the first, and stay known by their hash", async () => {
    const store = await place.open();
    const days = ["2026-03-01", "2026-03-01", "2026-03-01", "2026-03-02", "2026-03-02", "2026-03-03"];
    const times = [...days, ...Array.from({ length: WHOLE }, () => "2026-03-04")].map(
      (day) => `${day}T10:00:00.000Z`,
    );
    await putAll(store, times);
    const numbers = (await store.revisions(ID)).map(({ number }) => number).reverse();
    expect(numbers.slice(0, 5)).toEqual([1, 3, 5, 6, 7]);
    expect(numbers).toHaveLength(4 + WHOLE);
    const database = new Sqlite(join(place.folder, "outerleaf.sqlite"), { readonly: true });
    const hash = database.prepare("SELECT hash FROM revisions WHERE number = 2").pluck().get() as string;
    database.close();
    expect(await store.revision(ID, 2)).toBeUndefined();
    expect(await store.knows(ID, hash)).toBe(true);
    expect(await store.knows(ID, "0".repeat(64))).toBe(false);
  });
});

describeWithStore("the list", () => {
  it("holds each project beside its latest revision, the one written last in front", async () => {
    const store = await place.open();
    const other = ID.replace("0", "f");
    const tag = tagOf(await store.put(ID, nth(1)));
    await store.put(other, nth(1, undefined, { title: "Barn", time: "2026-03-01T11:00:00.000Z" }));
    const titles = async () => (await store.list()).map(({ title, latest }) => [title, latest.number]);
    expect(await titles()).toEqual([
      ["Barn", 1],
      ["House", 1],
    ]);
    await store.put(ID, nth(2, tag, { title: "House, wider", time: "2026-03-02T09:00:00.000Z" }));
    expect(await titles()).toEqual([
      ["House, wider", 2],
      ["Barn", 1],
    ]);
  });
});

describeWithStore("the database", () => {
  const file = (): string => join(place.folder, "outerleaf.sqlite");
  const refusal = async (folder = place.folder) => {
    const answer = await openStore(folder);
    if (answer.ok) answer.store.close();
    return answer.ok ? undefined : answer.says;
  };

  it("is made at the first start, in a folder made for it, with a write-ahead log", async () => {
    const folder = join(place.folder, "deep", "er");
    const answer = await openStore(folder);
    expect(answer.ok).toBe(true);
    const database = new Sqlite(join(folder, "outerleaf.sqlite"));
    expect(database.pragma("journal_mode", { simple: true })).toBe("wal");
    expect(database.pragma("user_version", { simple: true })).toBe(DATABASE_VERSION);
    expect(bringUp(database)).toBe("ready");
    database.close();
    if (answer.ok) answer.store.close();
  });

  it("of a newer program is refused and left as it is", async () => {
    (await place.open()).close();
    const database = new Sqlite(file());
    database.pragma(`user_version = ${DATABASE_VERSION + 1}`);
    database.close();
    const before = readFileSync(file());
    expect(await refusal()).toMatchObject({
      key: "store.newer",
      values: { file: file(), version: String(DATABASE_VERSION + 1), known: String(DATABASE_VERSION) },
    });
    expect(readFileSync(file()).equals(before)).toBe(true);
  });

  it("of another program is refused and left as it is", async () => {
    const database = new Sqlite(file());
    database.exec("CREATE TABLE theirs (x)");
    database.close();
    const before = readFileSync(file());
    expect((await refusal())?.key).toBe("store.foreign");
    expect(readFileSync(file()).equals(before)).toBe(true);
  });

  it("that is none, or damaged, is refused and left as it is", async () => {
    const text = "this is a letter and no database\n".repeat(100);
    writeFileSync(file(), text);
    expect((await refusal())?.key).toBe("store.damaged");
    expect(readFileSync(file(), "utf8")).toBe(text);
  });

  it("in a folder that cannot be made is refused with the folder and the reason", async () => {
    writeFileSync(join(place.folder, "plain"), "");
    const folder = join(place.folder, "plain", "below");
    expect(await refusal(folder)).toMatchObject({
      key: "store.no-folder",
      values: { folder, reason: "ENOTDIR" },
    });
    expect(existsSync(folder)).toBe(false);
  });
});

/** Source: XDG Base Directory Specification 0.8; the other two by common practice of their systems. */
describe("the user's data folder", () => {
  const home = "/home/ada";
  it.each([
    ["linux", {}, "/home/ada/.local/share/outerleaf"],
    ["linux", { XDG_DATA_HOME: "/data" }, "/data/outerleaf"],
    ["linux", { XDG_DATA_HOME: "" }, "/home/ada/.local/share/outerleaf"],
    ["linux", { XDG_DATA_HOME: "not/absolute" }, "/home/ada/.local/share/outerleaf"],
    ["darwin", { XDG_DATA_HOME: "/data" }, "/home/ada/Library/Application Support/outerleaf"],
    ["win32", { LOCALAPPDATA: "/local" }, "/local/outerleaf"],
    ["win32", {}, "/home/ada/AppData/Local/outerleaf"],
    ["linux", { OUTERLEAF_DATA: "/mine", XDG_DATA_HOME: "/data" }, "/mine"],
  ] as const)("on %s with %j is %s", (platform, env, folder) => {
    expect(dataFolder({ platform, env, home }).replaceAll("\\", "/")).toBe(folder);
  });
});

/** What holds wherever work is kept, in the database of the workbench and in the browser's: what was acknowledged is there, whole, once. */
import "fake-indexeddb/auto";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Telling } from "../../src/web/site/queue/model.ts";
import { browserPlace, embeddedPlace, type OpenedPlace, shaOf } from "../helpers/keeping-places.ts";
import { JPEG, PNG } from "../helpers/pictures.ts";
import { describeWithStore } from "../helpers/store.ts";

const tick = (nth: number): Telling =>
  ({ kind: "piece", place: { face: "front", piece: `F-S${nth}` }, body: { stage: "cut" } }) as Telling;
const marksOf = (entries: readonly { place: { piece?: string | undefined } }[]) =>
  entries.map(({ place }) => place.piece);
const upTo = (last: number): string[] => Array.from({ length: last }, (_, n) => `F-S${n + 1}`);

function suite(make: () => OpenedPlace): void {
  let place: OpenedPlace;
  beforeEach(() => {
    place = make();
  });
  afterEach(() => place.clear());

  describe("a document", () => {
    it("comes back as it was written, its keys in order, also where another program opens the place", async () => {
      const document = { z: 1, a: { y: 'é\u0000 "', b: 0.1 }, list: [null, [], {}, -0.001, "日本"] };
      const first = await place.open();
      expect(await first.write("Ada", document)).toBe("kept");
      for (const one of [first, await place.open()]) {
        expect(JSON.stringify(await one.documents())).toBe(JSON.stringify([document]));
      }
    });

    it("of one writer is never written over by another's unseen", async () => {
      const one = await place.open();
      await one.write("Ada", { n: 1 });
      const [ada, ben] = await Promise.all([one.write("Ada", { n: 2 }), one.write("Ben", { n: 3 })]);
      const held = (await (await place.open()).documents()).map((document) => JSON.stringify(document));
      expect(ada).toBe("kept");
      expect(held).toContain('{"n":2}');
      // Ben's is there beside Ada's, or Ben was told that another went on.
      expect(ben === "other" || held.includes('{"n":3}')).toBe(true);
    });

    it("that is written again is there once", async () => {
      const one = await place.open();
      for (let time = 0; time < 3; time++) expect(await one.write("Ada", { n: 1 })).toBe("kept");
      expect(await one.documents()).toEqual([{ n: 1 }]);
    });
  });

  describe("an entry", () => {
    it("is there once it was acknowledged, in the order told, also where another program opens the place", async () => {
      for (let nth = 1; nth <= 12; nth += 3) {
        const one = await place.open();
        for (const more of [0, 1, 2]) expect(await one.tell(tick(nth + more))).toBe(true);
        expect(marksOf(await one.entries())).toEqual(upTo(nth + 2));
      }
      expect(marksOf(await (await place.open()).entries())).toEqual(upTo(12));
    });

    it("told at once with others is not lost, and shares its name with none", async () => {
      const one = await place.open();
      await Promise.all(upTo(20).map((_, n) => one.tell(tick(n + 1))));
      const entries = await one.entries();
      expect(marksOf(entries).toSorted()).toEqual(upTo(20).toSorted());
      expect(new Set(entries.map(({ id }) => id)).size).toBe(20);
    });

    it("that comes again after a lost answer is there once", async () => {
      const one = await place.open();
      for (const nth of [1, 2, 3]) await one.tell(tick(nth));
      const entries = await one.entries();
      for (const entry of entries) await one.again(entry);
      expect(await (await place.open()).entries()).toEqual(entries);
    });

    it("that is none is not taken, and nothing is changed by it", async () => {
      const one = await place.open();
      await one.tell(tick(1));
      const before = await one.entries();
      const bad = { kind: "piece", place: {}, body: { stage: "painted" } } as unknown as Telling;
      expect(await one.tell(bad)).toBe(false);
      expect(await one.entries()).toEqual(before);
      await one.tell(tick(2));
      expect((await one.entries()).map(({ id }) => id.split("-")[1])).toEqual(["1", "2"]);
    });
  });

  describe("a picture", () => {
    it("comes back byte for byte under the sum of its bytes, and lies there once", async () => {
      const one = await place.open();
      for (const picture of [PNG, JPEG, PNG]) expect(await one.putPicture(picture)).toBe(true);
      for (const picture of [PNG, JPEG]) {
        const held = await (await place.open()).picture(shaOf(picture));
        expect(held && [...held]).toEqual([...picture]);
      }
      expect(await one.picture(shaOf(new Uint8Array([1])))).toBeUndefined();
    });
  });
}

describeWithStore("in the database of the workbench", () => suite(embeddedPlace));
describe("in the browser's database", () => suite(browserPlace));

/** The page's cutting and its worker, joined as a browser joins them: plans on the way, and what a newer question does to an older. */
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import type { Cut, CutPost, Cutter } from "../../src/web/work/cutter.ts";
import { example } from "../contract/cut-facade-examples.ts";

type Hear = (event: { readonly data: unknown }) => void;

/** What the worker posted, in order. */
const posted: CutPost[] = [];
let cutter: Cutter;

beforeAll(async () => {
  let [hearInWorker, hearOnPage]: (Hear | undefined)[] = [];
  const later = (hear: Hear | undefined, data: unknown): void => {
    const copy: unknown = structuredClone(data);
    setTimeout(() => hear?.({ data: copy }));
  };
  vi.stubGlobal("self", {
    addEventListener: (_: string, hear: Hear) => {
      hearInWorker = hear;
    },
    postMessage: (post: CutPost) => {
      posted.push(post);
      later(hearOnPage, post);
    },
  });
  vi.stubGlobal(
    "Worker",
    class {
      addEventListener(_: string, hear: Hear): void {
        hearOnPage = hear;
      }
      postMessage(ask: unknown): void {
        later(hearInWorker, ask);
      }
    },
  );
  await import("../../src/web/work/cut.worker.ts");
  cutter = (await import("../../src/web/work/cutter.ts")).createCutter();
});
afterAll(() => vi.unstubAllGlobals());

function document(name: string, change: object = {}): { name: string; document: unknown } {
  const text = readFileSync(new URL(`../../examples/${name}.outerleaf.json`, import.meta.url), "utf8");
  return { name, document: { ...JSON.parse(text), ...change } };
}

describe("the page's cutting", () => {
  it("tells of whole plans on the way, the first before any search, and answers with the plan of one without a stop", async () => {
    const told: Cut[] = [];
    const reply = await cutter.cut(document("two-storey"), (cut) => told.push(cut));
    expect(reply?.plan).toEqual(example("two-storey").cut.plan);
    expect(told.length).toBeGreaterThan(0);
    for (const { plan } of told) {
      expect(plan?.unplaced).toEqual(reply?.plan?.unplaced);
      expect(plan?.cost).toBeGreaterThanOrEqual(reply?.plan?.cost ?? Number.POSITIVE_INFINITY);
    }
    // A search of sheets may prove its first plan best before it takes a step; one of lengths takes steps.
    for (const { result } of told[0]?.plan?.boards.bought ?? []) expect(result.bound.how).toBe("none");
  });

  it("tells of none on the way to who does not ask for them", async () => {
    const before = posted.length;
    await cutter.cut(document("l-plan"));
    expect(posted.slice(before).map(({ last }) => last)).toEqual([true]);
  });

  it("leaves a long search for what is asked next, which answers both", async () => {
    const before = posted.length;
    let begun = (): void => undefined;
    const first = new Promise<void>((resolve) => {
      begun = resolve;
    });
    const long = cutter.cut(document("atelier-bouleau", { cutting: { effort: 64 } }), begun);
    await first;
    const short = cutter.cut(document("porch"));
    const [one, other] = await Promise.all([long, short]);
    expect(one?.plan).toEqual(example("porch").cut.plan);
    expect(other).toBe(one);
    const ids = new Set(posted.slice(before).map(({ id }) => id));
    expect(ids.size).toBe(2);
    // The long search came to no end.
    expect(posted.slice(before).filter(({ last }) => last)).toHaveLength(1);
  });

  it("answers with nothing where the file cannot be read, and cuts the next", async () => {
    expect(await cutter.cut({ name: "broken", document: { schema: 7 } })).toBeUndefined();
    expect((await cutter.cut(document("porch")))?.plan).toEqual(example("porch").cut.plan);
  });
});

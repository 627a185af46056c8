/** The page's cutting and its worker, joined as a browser joins them: plans on the way, and what a newer question does to an older. */
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { createCutMemo } from "../../src/cutting/facade/cut-memo.ts";
import type { Cut, CutPost, Cutter } from "../../src/web/work/cutter.ts";
import { type SecondAsk, type SecondPost, secondThread } from "../../src/web/work/second-thread.ts";
import { example } from "../contract/cut-facade-examples.ts";

type Hear = (event: { readonly data: unknown }) => void;

/** What the worker posted, in order. */
const posted: CutPost[] = [];
/** What the second worker was asked and what it said, in order. */
const second: (SecondAsk | SecondPost)[] = [];
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
  const hearFromSecond: Hear[] = [];
  const askSecond = secondThread((said) => {
    second.push(said);
    for (const hear of hearFromSecond) later(hear, said);
  });
  vi.stubGlobal("navigator", { hardwareConcurrency: 2 });
  vi.stubGlobal(
    "Worker",
    class {
      readonly #isSecond: boolean;
      constructor(url: URL) {
        this.#isSecond = url.pathname.endsWith("/second.worker.ts");
      }
      addEventListener(kind: string, hear: Hear): void {
        if (!this.#isSecond) hearOnPage = hear;
        else if (kind === "message") hearFromSecond.push(hear);
      }
      postMessage(ask: unknown): void {
        if (!this.#isSecond) {
          later(hearInWorker, ask);
          return;
        }
        second.push(ask as SecondAsk);
        later(({ data }) => askSecond(data as SecondAsk), ask);
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

  it("hands the pile to a second worker, and the last of the lengths where there is none, and stops it for what is asked next", async () => {
    const asked = (from: number) =>
      second.slice(from).flatMap((one) => (one.kind === "search" ? [one.problem.kind] : []));
    let from = second.length;
    const withPile = await cutter.cut(document("atelier-bouleau"));
    expect(JSON.stringify(withPile?.plan)).toBe(JSON.stringify(example("atelier-bouleau").cut.plan));
    expect(asked(from)[0]).toBe("pile");
    from = second.length;
    const { project, facade } = example("two-storey");
    const lengths = await cutter.cut(document("two-storey", { cutting: { effort: 2 } }));
    const { plan } = cutFacade({ ...project, cutting: { effort: 2 } }, facade);
    expect(JSON.stringify(lengths?.plan)).toBe(JSON.stringify(plan));
    expect(new Set(asked(from))).toEqual(new Set(["lengths"]));
    from = second.length;
    const left = cutter.cut(document("atelier-bouleau", { cutting: { effort: 32 } }));
    while (second.length === from) await new Promise((later) => setTimeout(later, 5));
    await Promise.all([cutter.cut(document("porch")), left]);
    expect(second.slice(from).map(({ kind }) => kind)).toContain("stop");
    const big = second.slice(from).flatMap((one) => (one.kind === "search" ? [one.id] : []))[0];
    expect(second.slice(from)).not.toContainEqual(
      expect.objectContaining({ kind: "state", id: big, state: expect.objectContaining({ ended: true }) }),
    );
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

describe("the second worker", () => {
  it("goes on with what it was stopped at", async () => {
    const { project, facade } = example("atelier-bouleau");
    const searches = createCutMemo().searchesFor({ ...project, cutting: { effort: 64 } });
    cutFacade(project, facade, searches.solvers);
    const pile = searches.asked().find(({ search }) => search.problem.kind === "pile")?.search;
    if (!pile) throw new Error("the example has no pile");
    const steps: number[] = [];
    let told = (): void => undefined;
    const ask = secondThread((said) => {
      if (said.kind === "state") steps.push(said.state.steps);
      told();
    });
    const next = () =>
      new Promise<void>((resolve) => {
        told = resolve;
      });
    for (let time = 0; time < 2; time++) {
      ask({ kind: "search", id: 1, problem: pile.problem });
      await next();
      ask({ kind: "stop" });
    }
    expect(steps[1]).toBeGreaterThan(steps[0] ?? Number.POSITIVE_INFINITY);
  });
});

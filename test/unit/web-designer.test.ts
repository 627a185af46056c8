/** The page's designer and its worker, each on its side of a channel that copies what is sent. */
import { readFileSync } from "node:fs";
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from "vitest";
import { designFile, type Laid } from "../../src/design.ts";
import { applyPatch } from "../../src/project/edit.ts";
import { createDesigner, type Designer } from "../../src/web/work/designer.ts";

type Hears = (event: { readonly data: unknown }) => void;

const name = "atelier-bouleau.outerleaf.json";
const text = readFileSync(`examples/${name}`, "utf8");

/** The demo's JSON with the window W2 so many millimetres along its wall. */
function moved(by: number): unknown {
  const value = [750 + by, 1650 + by];
  const patched = applyPatch(JSON.parse(text), [{ op: "replace", path: "/faces/1/openings/1/x", value }]);
  if (!patched.ok) throw new Error(JSON.stringify(patched.findings));
  return patched.document;
}

let designer: Designer;

/** A designer with a worker of its own, each of which remembers what it has told the other. */
async function opened(): Promise<Designer> {
  const toWorker: Hears[] = [];
  const toPage: Hears[] = [];
  const post = (ears: readonly Hears[]) => (data: unknown) => {
    const copy = structuredClone(data);
    setImmediate(() => {
      for (const hear of ears) hear({ data: copy });
    });
  };
  vi.stubGlobal("self", {
    postMessage: post(toPage),
    addEventListener: (_: string, hear: Hears) => toWorker.push(hear),
  });
  vi.stubGlobal(
    "Worker",
    class {
      postMessage = post(toWorker);
      addEventListener(_: string, hear: Hears): void {
        toPage.push(hear);
      }
    },
  );
  vi.stubGlobal("requestIdleCallback", (call: () => void) => Number(setTimeout(call)));
  vi.stubGlobal("cancelIdleCallback", (id: number) => clearTimeout(id));
  vi.resetModules();
  await import("../../src/web/work/design.worker.ts");
  return createDesigner();
}

beforeAll(async () => {
  designer = await opened();
});
afterAll(() => {
  vi.unstubAllGlobals();
});

it("designs a file as the program does", async () => {
  expect(await designer.design({ name, text })).toEqual(designFile({ name, text }));
});

it("of edits that follow one another draws each in turn, and proves the one that they rest at", async () => {
  const drawn: unknown[] = [];
  const answers = await Promise.all(
    [20, 40, 60].map((by) =>
      designer.pass({ name, document: moved(by) }, ({ project }: Laid) =>
        drawn.push(project.faces[1]?.openings[1]?.x),
      ),
    ),
  );
  expect(drawn).toEqual([
    [770, 1670],
    [790, 1690],
    [810, 1710],
  ]);
  expect(answers.map(({ kind }) => kind)).toEqual(["overtaken", "overtaken", "designed"]);
  expect(answers[2]).toEqual(designFile({ name, document: moved(60) }));
});

it("proves a file that is opened though an edit comes after it", async () => {
  const opened = designer.design({ name, text });
  const edited = designer.pass({ name, document: moved(80) }, () => undefined);
  expect(await opened).toEqual(designFile({ name, text }));
  expect(await edited).toEqual(designFile({ name, document: moved(80) }));
});

it("proves what is drawn though the edit after it was refused", async () => {
  const good = designer.pass({ name, document: moved(100) }, () => undefined);
  const bad = designer.pass({ name, document: { schemaVersion: 1 } }, () => undefined);
  expect((await bad).kind).toBe("refused");
  expect(await good).toEqual(designFile({ name, document: moved(100) }));
});

it("sends what was found on other faces only once", async () => {
  const first = await designer.design({ name, document: moved(120) });
  const second = await designer.design({ name, document: moved(140) });
  if (first.kind !== "designed" || second.kind !== "designed") throw new Error("the demo was refused");
  const before = new Set(first.design.findings);
  const west = second.design.findings.filter(({ where }) => where.face === "west");
  expect(west.length).toBeGreaterThan(20);
  expect(west.filter((finding) => before.has(finding))).toEqual(west);
});

describe("on the page's own thread", () => {
  /** A clock by which setting out takes so many milliseconds. */
  function paceOf(ms: number): void {
    let now = 0;
    vi.spyOn(performance, "now").mockImplementation(() => {
      now += ms;
      return now;
    });
  }
  afterEach(() => {
    vi.restoreAllMocks();
  });

  /** A designer that has practised so many edits. */
  async function practised(edits: number): Promise<Designer> {
    const own = await opened();
    await own.design({ name, text });
    await new Promise<void>((resolve) => {
      own.practise((nth) => {
        if (nth < edits) return { name, document: moved(nth + 1) };
        resolve();
        return undefined;
      });
    });
    return own;
  }

  it("sets out what is passed at once, and has it proven as the program does", async () => {
    paceOf(5);
    const own = await practised(3);
    const drawn: Laid[] = [];
    const answer = own.pass({ name, document: moved(33) }, (laid) => drawn.push(laid), true);
    expect(drawn).toHaveLength(1);
    const whole = designFile({ name, document: moved(33) });
    if (whole.kind !== "designed") throw new Error("the demo was refused");
    expect(drawn[0]?.facade.faces).toEqual(whole.design.facade.faces);
    expect(drawn[0]?.facade.rods).toEqual(whole.design.facade.rods);
    const given = await answer;
    expect(given).toEqual(whole);
    expect(given.kind === "designed" && given.design.facade.faces).toBe(drawn[0]?.facade.faces);
  });

  it("gives the findings of a place that a later one has overtaken, and no facade", async () => {
    paceOf(5);
    const own = await practised(3);
    const nothing = (): void => undefined;
    const first = own.pass({ name, document: moved(41) }, nothing, true);
    // Its proof has been asked for by then.
    await new Promise((resolve) => setTimeout(resolve, 5));
    const second = own.pass({ name, document: moved(42) }, nothing, true);
    const third = own.pass({ name, document: moved(43) }, nothing, true);
    expect((await first).kind).toBe("overtaken");
    expect(await second).toEqual({ kind: "overtaken" });
    expect(await third).toEqual(designFile({ name, document: moved(43) }));
  });

  it("tells at once why an edit is refused, and proves what stood before it", async () => {
    paceOf(5);
    const own = await practised(3);
    const good = own.pass({ name, document: moved(51) }, () => undefined, true);
    const bad = await own.pass({ name, document: { schemaVersion: 1 } }, () => undefined, true);
    expect(bad.kind).toBe("refused");
    expect(await good).toEqual(designFile({ name, document: moved(51) }));
  });

  it("leaves to the worker what no hand moves, and what comes after it until the page has caught up", async () => {
    paceOf(5);
    const own = await practised(3);
    const drawn: Laid[] = [];
    const typed = own.pass({ name, document: moved(71) }, (laid) => drawn.push(laid));
    expect(drawn).toHaveLength(0);
    expect(await typed).toEqual(designFile({ name, document: moved(71) }));
    const dragged = own.pass({ name, document: moved(72) }, (laid) => drawn.push(laid), true);
    expect(drawn).toHaveLength(1);
    expect(await dragged).toEqual(designFile({ name, document: moved(72) }));
    await new Promise<void>((resolve) => {
      own.practise((nth) => {
        if (nth === 0) return { name, document: moved(73) };
        resolve();
        return undefined;
      });
    });
    const again = own.pass({ name, document: moved(74) }, (laid) => drawn.push(laid), true);
    expect(drawn).toHaveLength(3);
    expect(await again).toEqual(designFile({ name, document: moved(74) }));
  });

  it("leaves to the worker what it could not do in a frame", async () => {
    paceOf(80);
    const own = await practised(3);
    const drawn: Laid[] = [];
    const answer = own.pass({ name, document: moved(61) }, (laid) => drawn.push(laid), true);
    expect(drawn).toHaveLength(0);
    expect(await answer).toEqual(designFile({ name, document: moved(61) }));
    expect(drawn).toHaveLength(1);
  });
});

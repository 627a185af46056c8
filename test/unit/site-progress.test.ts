/** Progress of the site: counts and areas, the order of the work, the membrane's weeks, and the forecast. */
import { describe, expect, it } from "vitest";
import { crewOfFace, giveFace } from "../../src/project/editing/crews.ts";
import { readProject } from "../../src/project/read.ts";
import type { Entry } from "../../src/site/journal/entry.ts";
import { foldJournal } from "../../src/site/journal/fold.ts";
import { bareMembranes } from "../../src/site/progress/bare-membrane.ts";
import { workByCrew } from "../../src/site/progress/by-crew.ts";
import { isSkin, progressOf } from "../../src/site/progress/counts.ts";
import { dateOf, dayOf } from "../../src/site/progress/days.ts";
import { forecastOf } from "../../src/site/progress/forecast.ts";
import { orderOfWork } from "../../src/site/progress/order-of-work.ts";
import { edited, exampleSource } from "../helpers/editing.ts";
import { PHOTO, told } from "../helpers/journal.ts";
import { solidDemo } from "../helpers/solid-demo.ts";

const { facade, project } = solidDemo;
const [face] = facade.faces;
const skin = face!.pieces.filter(isSkin);

const tick = (count: number, piece: string, stage: string, at = "2026-05-04T07:30:00Z"): Entry =>
  told(count, { told: at, place: { face: face!.id, piece }, body: { stage } });
const sign = (count: number, point: string, at = "2026-05-04T07:30:00Z"): Entry =>
  told(count, {
    told: at,
    kind: "hold-point",
    place: { face: face!.id },
    body: { point, signed: "Ada", seen: [], photos: [PHOTO] },
  });

describe("days", () => {
  // ISO 8601 and its calendar, as the language's own clock reads them (ECMA-262, Date).
  it("are those of the proleptic Gregorian calendar, there and back", () => {
    for (let day = Date.UTC(1899, 0, 1); day < Date.UTC(2101, 0, 1); day += 86_400_000 * 13.37) {
      const moment = new Date(Math.round(day));
      expect(dayOf(moment.toISOString())).toBeCloseTo(moment.getTime() / 86_400_000, 9);
      expect(dateOf(moment.getTime() / 86_400_000)).toBe(moment.toISOString().slice(0, 10));
    }
    for (const edge of ["2000-02-29", "1900-03-01", "2026-12-31", "2027-01-01"]) {
      expect(dateOf(dayOf(`${edge}T23:59:59Z`))).toBe(edge);
    }
  });

  it("of what is no time are no number", () => expect(dayOf("this morning")).toBeNaN());
});

describe("counts", () => {
  it("hold every stage below the furthest, and areas that another measure gives", () => {
    const [one, two] = skin;
    const state = foldJournal([tick(1, one!.mark, "fixed"), tick(2, two!.mark, "cut")]);
    const { faces, strays } = progressOf(facade, state);
    const { all, reached } = faces[0]!;
    expect([
      reached.cut.pieces,
      reached.finished.pieces,
      reached.delivered.pieces,
      reached.fixed.pieces,
    ]).toEqual([2, 1, 1, 1]);
    expect(all.pieces).toBe(skin.length);
    // Pieces that are whole rectangles: width by height.
    const boxes = skin.filter(({ outline, holes }) => outline.length === 4 && holes.length === 0);
    const sides = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
    const board = boxes.find(({ outline }) => new Set(outline.flat()).size <= 4)!;
    const tallied = progressOf(facade, foldJournal([tick(1, board.mark, "fixed")])).faces[0]!.reached.fixed;
    const width = sides(board.outline.map(([x]) => x));
    const height = sides(board.outline.map(([, y]) => y));
    expect(tallied.areaM2).toBeCloseTo((width * height) / 1e6, 9);
    expect(strays).toEqual([]);
  });

  it("name marks that no piece bears any more", () => {
    expect(progressOf(facade, foldJournal([tick(1, "Z-99", "cut")])).strays).toEqual(["Z-99"]);
  });
});

describe("the order of work", () => {
  const steps = (...entries: Entry[]) =>
    orderOfWork(facade, foldJournal(entries)).filter((step) => step.face === face!.id);

  it("opens the first step alone, and each after it waits for the hold point before it", () => {
    const [first, ...rest] = steps();
    expect(first).toMatchObject({ status: "can", hold: "H1" });
    for (const step of rest) expect(step).toMatchObject({ status: "waits", waitsFor: "H1" });
  });

  it("goes on when the hold point is signed, and not when pieces alone are ticked", () => {
    const marks = steps()[0]!.marks;
    const ticked = marks.map((mark, i) => tick(i + 1, mark, "fixed"));
    expect(steps(...ticked).map(({ status }) => status)).toEqual([
      "sign",
      ...steps()
        .slice(1)
        .map(() => "waits"),
    ]);
    const signed = steps(sign(900, "H1"));
    expect(signed[0]).toMatchObject({ status: "done", left: marks });
    expect(signed[1]!.status).toBe("can");
  });

  it("is done to the end when all is signed and fixed", () => {
    const all = [...face!.pieces.map(({ mark }, i) => tick(i + 1, mark, "fixed"))];
    const signed = ["H1", "H2", "H3", "H4", "H5"].map((point, i) => sign(90_000 + i, point));
    expect(new Set(steps(...all, ...signed).map(({ status }) => status))).toEqual(new Set(["done"]));
  });

  it("takes up each cladding piece in one lift, higher lifts later", () => {
    const cladding = steps().filter(({ step }) => step === "cladding");
    expect(cladding.flatMap(({ marks }) => marks).sort()).toEqual(skin.map(({ mark }) => mark).sort());
    expect(cladding.map(({ lift }) => lift)).toEqual(cladding.map((_, i) => i + 1));
  });
});

describe("the membrane", () => {
  const limit = (weeks: number | undefined) => ({
    facade,
    project: {
      ...project,
      limits: {
        ...project.limits,
        membrane: {
          ...project.limits.membrane,
          maxWeeksUncovered: weeks === undefined ? undefined : { value: weeks, basis: "given" },
        },
      },
    } as typeof project,
  });
  const of = (weeks: number | undefined, entries: readonly Entry[], now: string) =>
    bareMembranes(limit(weeks), foldJournal(entries), now).find((one) => one.face === face!.id);

  it("is bare from its signing on, and to be covered by the day that its data sheet gives", () => {
    const signed = [sign(1, "H1", "2026-05-04T00:00:00Z")];
    expect(of(12, signed, "2026-06-15T00:00:00Z")).toMatchObject({
      outcome: "pass",
      weeks: 6,
      coverBy: "2026-07-27",
    });
    expect(of(12, signed, "2026-07-27T00:00:00Z")?.outcome).toBe("pass");
    expect(of(12, signed, "2026-07-27T01:00:00Z")?.outcome).toBe("fail");
  });

  it("cannot be judged without a beginning or a limit, and never passes then", () => {
    expect(of(12, [], "2026-06-15T00:00:00Z")).toMatchObject({ outcome: "cannot evaluate" });
    expect(of(undefined, [sign(1, "H1")], "2030-01-01T00:00:00Z")).toMatchObject({
      outcome: "cannot evaluate",
    });
  });

  it("is covered when all the cladding is fixed", () => {
    const fixed = skin.map(({ mark }, i) => tick(i + 2, mark, "fixed"));
    const signed = sign(1, "H1", "2020-01-01T00:00:00Z");
    expect(of(12, [signed, ...fixed], "2026-06-15T00:00:00Z")).toBeUndefined();
    expect(of(12, [signed, ...fixed.slice(1)], "2026-06-15T00:00:00Z")?.outcome).toBe("fail");
  });
});

describe("the forecast", () => {
  const one = { ...facade, faces: [face!] };
  const days = ["2026-05-04", "2026-05-05", "2026-05-08"];
  const entries = days.map((day, i) => tick(i + 1, skin[i]!.mark, "fixed", `${day}T15:00:00Z`));

  it("is what is left by the plain average, rest days counted in", () => {
    const { faces } = progressOf(one, foldJournal(entries));
    const { all, reached } = faces[0]!;
    const found = forecastOf(one, foldJournal(entries), "2026-05-08T18:00:00Z");
    if (found.kind !== "forecast") throw new Error(found.kind);
    // Monday to Friday are five days, whatever was fixed on two of them.
    expect(found.perDayM2).toBeCloseTo(reached.fixed.areaM2 / 5, 12);
    expect(found.leftM2).toBeCloseTo(all.areaM2 - reached.fixed.areaM2, 9);
    const more = Math.ceil(found.leftM2 / found.perDayM2);
    expect(found.finish).toBe(new Date(Date.UTC(2026, 4, 8 + more)).toISOString().slice(0, 10));
  });

  it("slows down with every day on which nothing is fixed", () => {
    const soon = forecastOf(one, foldJournal(entries), "2026-05-08T18:00:00Z");
    const late = forecastOf(one, foldJournal(entries), "2026-05-29T18:00:00Z");
    expect(late.kind === "forecast" && soon.kind === "forecast" && late.perDayM2 < soon.perDayM2).toBe(true);
  });

  it("is not made from two days, nor from a clock that is ahead, nor from ticks that were taken back", () => {
    expect(forecastOf(one, foldJournal(entries.slice(0, 2)), "2026-05-08T18:00:00Z").kind).toBe(
      "cannot evaluate",
    );
    expect(forecastOf(one, foldJournal(entries), "2026-05-06T18:00:00Z").kind).toBe("cannot evaluate");
    const back = told(50, { kind: "undone", place: {}, body: {}, corrects: [entries[2]!.id] });
    expect(forecastOf(one, foldJournal([...entries, back]), "2026-05-08T18:00:00Z").kind).toBe(
      "cannot evaluate",
    );
  });

  it("says that it is done when nothing is left", () => {
    const all = skin.map(({ mark }, i) => tick(i + 1, mark, "fixed"));
    expect(forecastOf(one, foldJournal(all), "2026-05-08T18:00:00Z").kind).toBe("done");
  });
});

describe("the work as it is given out", () => {
  const steps = orderOfWork(facade, foldJournal([]));
  const [first, second] = facade.faces.map(({ id }) => id) as [string, string];
  const crews = [
    { name: "crew A", work: [{ face: first }, { face: second, steps: ["cladding" as const], lifts: [2] }] },
    { name: "crew B", work: [{ face: second, steps: ["timber" as const, "cladding" as const] }] },
    { name: "crew C", work: [{ face: first }] },
  ];
  const works = workByCrew(steps, crews);
  const of = (crew?: string) =>
    works.find((one) => one.crew === crew)?.lifts.flatMap((one) => one.steps) ?? [];

  it("holds every step once, whatever crews are given what", () => {
    const all = works.flatMap(({ lifts }) => lifts.flatMap((one) => one.steps));
    expect(all).toHaveLength(steps.length);
    expect(new Set(all)).toEqual(new Set(steps));
    expect(workByCrew(steps).map(({ crew }) => crew)).toEqual([undefined]);
  });

  it("gives a step to the first crew that has its face, its kind and its lift, and what none has to none", () => {
    expect(works.map(({ crew }) => crew)).toEqual(["crew A", "crew B", undefined]);
    const onSecond = of("crew A").filter(({ face }) => face === second);
    expect(onSecond.map(({ step, lift }) => [step, lift])).toEqual([["cladding", 2]]);
    expect(new Set(of("crew A").filter(({ face }) => face === first))).toEqual(
      new Set(steps.filter(({ face }) => face === first)),
    );
    expect(of("crew B").map(({ step, lift }) => `${step} ${lift ?? ""}`)).toEqual(
      steps
        .filter(
          ({ face, step, lift }) =>
            face === second && (step === "timber" || (step === "cladding" && lift !== 2)),
        )
        .map(({ step, lift }) => `${step} ${lift ?? ""}`),
    );
    expect(of().some(({ face, step }) => face === second && step === "membrane")).toBe(true);
    expect(of().some(({ face }) => face === first)).toBe(false);
  });

  it("stands for each crew by lifts from below, what goes over the whole height in front", () => {
    for (const { lifts } of works) {
      const order = lifts.map(({ lift }) => lift ?? 0);
      expect(order).toEqual([...order].sort((a, b) => a - b));
      for (const { lift, steps: own } of lifts) expect(own.every((step) => step.lift === lift)).toBe(true);
    }
  });
});

describe("a face given to a crew", () => {
  const begun = exampleSource("porch");
  const [face = ""] = begun.project.faces.map(({ id }) => id);

  it("begins a crew, moves on to another, and leaves none without work", () => {
    const one = edited(begun, giveFace(begun, face, " crew A "));
    expect(one.project.crews).toEqual([{ name: "crew A", work: [{ face }] }]);
    expect(crewOfFace(one.project.crews, face)).toBe("crew A");
    const other = edited(one, giveFace(one, face, "crew B"));
    expect(other.project.crews).toEqual([{ name: "crew B", work: [{ face }] }]);
    expect(edited(other, giveFace(other, face, "")).project.crews).toBeUndefined();
  });

  it("is of no one crew where its work is parted, and that is written over whole", () => {
    const work = [{ face, steps: ["timber" as const] }];
    expect(crewOfFace([{ name: "crew A", work }], face)).toBeUndefined();
    const parted = { ...begun, project: { ...begun.project, crews: [{ name: "crew A", work }] } };
    expect(giveFace(parted, face, "crew B").operations).toEqual([
      { op: "add", path: "/crews", value: [{ name: "crew B", work: [{ face }] }] },
    ]);
  });

  it("that the file does not have is told with its place", () => {
    const document = { ...(begun.document as object), crews: [{ name: "crew A", work: [{ face: "nort" }] }] };
    const read = readProject(JSON.stringify(document), "porch.json");
    expect(read.ok ? [] : read.findings).toMatchObject([{ where: { path: "/crews/0/work/0/face" } }]);
  });
});

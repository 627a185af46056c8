/** Entries of the site journal: what is taken and what is not, and what a few of them come to. */
import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { entryShape } from "../../src/site/journal/entry.ts";
import { createFold, FOLD_VERSION, foldJournal } from "../../src/site/journal/fold.ts";
import { DEVICES, PHOTO, told } from "../helpers/journal.ts";

const [ADA, BEN] = DEVICES;
const front = { face: "front" };

describe("an entry", () => {
  it.each([
    ["a tick", {}],
    ["a reading", { kind: "reading", place: { ...front, x: 610, y: 0 }, body: { outward: -3.5 } }],
    [
      "an opening as built",
      { kind: "opening", place: { ...front, opening: "W1" }, body: { width: 912, diagonals: [1500, 1504] } },
    ],
    ["moisture", { kind: "moisture", place: {}, body: { meterPercent: 14, temperatureC: 5 } }],
    ["a photo", { kind: "photo", place: { ...front, x: 1200, y: 400 }, body: { photo: PHOTO } }],
    [
      "a hold point",
      { kind: "hold-point", place: front, body: { point: "H1", signed: "Ada", seen: [], photos: [PHOTO] } },
    ],
    ["a finding", { kind: "finding", place: front, body: { says: "a lap is open" } }],
    ["its end", { kind: "settled", place: front, body: { finding: `${BEN}-1` } }],
    ["a note", { kind: "note", place: {}, body: { says: "rain since ten" } }],
    ["upkeep", { kind: "upkeep", place: front, body: { task: "oil", meterPercent: 12 } }],
    ["taking back", { kind: "undone", corrects: [`${BEN}-1`], place: {}, body: {} }],
  ])("that is %s is taken as it stands", (_, more) => {
    const entry = told(1, more);
    expect(entryShape.parse(entry)).toEqual(entry);
  });

  it.each([
    ["an id without a count", { id: ADA }],
    ["a count of nothing", { id: `${ADA}-0` }],
    ["an unknown kind", { kind: "removed" }],
    ["a stage that is none", { body: { stage: "painted" } }],
    ["a tick on no piece", { place: front }],
    ["a reading nowhere", { kind: "reading", body: { outward: 1 } }],
    ["a reading by the mile", { kind: "reading", place: { ...front, x: 1e9, y: 0 }, body: { outward: 1 } }],
    [
      "a reading that is no number",
      { kind: "reading", place: { ...front, x: 0, y: 0 }, body: { outward: "3" } },
    ],
    [
      "a hold point without a picture",
      { kind: "hold-point", place: front, body: { point: "H1", signed: "Ada", seen: [], photos: [] } },
    ],
    [
      "a seventh hold point",
      { kind: "hold-point", place: front, body: { point: "H7", signed: "Ada", seen: [], photos: [PHOTO] } },
    ],
    ["a note of spaces", { kind: "note", place: {}, body: { says: "  " } }],
    ["a note without end", { kind: "note", place: {}, body: { says: "a".repeat(2001) } }],
    ["a field too many", { order: 1 }],
    ["a place with a field too many", { place: { piece: "F-S1", wall: "front" } }],
    ["a time in words", { told: "this morning" }],
    ["taking back nothing", { kind: "undone", place: {}, body: {}, corrects: [] }],
    ["taking back itself", { kind: "undone", place: {}, body: {}, corrects: [`${ADA}-1`] }],
    ["a picture that is a path", { kind: "photo", place: {}, body: { photo: "../../etc/passwd" } }],
  ])("with %s is refused", (_, more) => {
    expect(entryShape.safeParse(told(1, more)).success).toBe(false);
  });
});

describe("a piece", () => {
  const tick = (count: number, stage: string, device = 0) =>
    told(count, { place: { piece: "F-S1" }, body: { stage } }, device);
  const undone = (count: number, corrects: string[], device = 0) =>
    told(count, { kind: "undone", corrects, place: {}, body: {} }, device);

  const ticked = (count: number) => ({ id: `${ADA}-${count}`, told: tick(count, "cut").told });

  it("stands at the furthest stage that was told, also where a stage between was not", () => {
    expect(foldJournal([tick(1, "fixed"), tick(2, "cut")]).pieces.of("F-S1")).toEqual({
      stage: "fixed",
      ticks: { cut: [ticked(2)], fixed: [ticked(1)] },
    });
  });

  it("goes back when its last stage is taken back, and is as new when all are", () => {
    const ticks = [tick(1, "cut"), tick(2, "finished")];
    expect(foldJournal([...ticks, undone(3, [`${ADA}-2`])]).pieces.stage("F-S1")).toBe("cut");
    expect(foldJournal([...ticks, undone(3, [`${ADA}-2`, `${ADA}-1`])]).pieces.marks()).toEqual([]);
  });

  it("ticked by two stays ticked until both are taken back", () => {
    const both = [tick(1, "fixed"), tick(1, "fixed", 1), undone(2, [`${ADA}-1`])];
    expect(foldJournal(both).pieces.of("F-S1")).toEqual({
      stage: "fixed",
      ticks: { fixed: [{ ...ticked(1), id: `${BEN}-1` }] },
    });
    expect(foldJournal([...both, undone(2, [`${BEN}-1`], 1)]).pieces.marks()).toEqual([]);
  });

  it("ticked anew after it was taken back is ticked, and what took back stays in force", () => {
    const first = [tick(1, "cut"), undone(2, [`${ADA}-1`])];
    expect(foldJournal([...first, undone(3, [`${ADA}-2`])]).pieces.marks()).toEqual([]);
    expect(foldJournal([...first, tick(4, "cut")]).pieces.of("F-S1")?.ticks.cut).toEqual([ticked(4)]);
  });
});

describe("a correction", () => {
  const reading = (count: number, outward: number, corrects?: string[]) =>
    told(count, {
      kind: "reading",
      place: { ...front, x: 0, y: 0 },
      body: { outward },
      ...(corrects && { corrects }),
    });

  it("stands in the place of what it names, and the last of a row stands alone", () => {
    const row = [reading(1, 30), reading(2, 3, [`${ADA}-1`]), reading(3, 4, [`${ADA}-2`])];
    expect(foldJournal(row).readings.map(({ body }) => body.outward)).toEqual([4]);
  });

  it("that comes before what it names waits for it", () => {
    expect(foldJournal([reading(2, 3, [`${ADA}-1`]), reading(1, 30)]).readings).toHaveLength(1);
  });

  it("of another kind does not reach: a note takes no signature back", () => {
    const signed = told(1, {
      kind: "hold-point",
      place: front,
      body: { point: "H1", signed: "Ada", seen: [], photos: [PHOTO] },
    });
    const note = told(2, { kind: "note", place: {}, body: { says: "no" }, corrects: [`${ADA}-1`] });
    expect(foldJournal([signed, note]).holdPoints).toEqual([signed]);
  });
});

it("a reading told twice is two readings: the error of one is known from repeats", () => {
  const reading = (count: number) =>
    told(count, { kind: "reading", place: { ...front, x: 0, y: 0 }, body: { outward: 3 } });
  expect(foldJournal([reading(1), reading(2)]).readings).toHaveLength(2);
});

it("lists stand by device and by number, 10 after 9", () => {
  const note = (count: number, device = 0) =>
    told(count, { kind: "note", place: {}, body: { says: String(count) } }, device);
  const ids = foldJournal([note(10), note(1, 1), note(9)]).notes.map(({ id }) => id);
  expect(ids).toEqual([`${ADA}-9`, `${ADA}-10`, `${BEN}-1`]);
});

it("a finding is open until an entry settles it, and again when that is taken back", () => {
  const raised = told(1, { kind: "finding", place: front, body: { says: "a lap is open" } });
  const settled = told(2, { kind: "settled", place: {}, body: { finding: `${ADA}-1` } });
  const back = told(3, { kind: "undone", corrects: [`${ADA}-2`], place: {}, body: {} });
  expect(foldJournal([raised]).open).toEqual([raised]);
  expect(foldJournal([settled, raised])).toMatchObject({ open: [], settled: [raised] });
  expect(foldJournal([raised, settled, back]).open).toEqual([raised]);
});

it("a piece is short until that is taken back", () => {
  const short = told(1, { kind: "short", place: { piece: "F-S1" }, body: { why: "broken" } });
  const back = told(2, { kind: "undone", corrects: [`${ADA}-1`], place: {}, body: {} });
  expect(entryShape.safeParse(short).success).toBe(true);
  expect(entryShape.safeParse({ ...short, place: front }).success).toBe(false);
  expect(foldJournal([short]).short).toEqual([short]);
  expect(foldJournal([back, short]).short).toEqual([]);
});

it("put by is of another version where the fold gives another state or shape, so that no old one is taken up", () => {
  const place = { face: "front", opening: "W1", piece: "F-S1", x: 610, y: 800 };
  const bodies = {
    piece: { stage: "fixed" },
    reading: { outward: -3 },
    opening: { width: 1000 },
    end: { end: "left", at: 5 },
    moisture: { meterPercent: 17 },
    photo: { photo: PHOTO },
    "hold-point": { point: "H1", signed: "Ada", seen: ["laps"], photos: [PHOTO] },
    finding: { says: "a lap is open" },
    short: { why: "broken" },
    settled: { finding: `${ADA}-9` },
    note: { says: "rain" },
    upkeep: { task: "look" },
    undone: {},
  };
  const fold = createFold();
  for (const [at, [kind, body]] of Object.entries(bodies).entries()) {
    fold.add([told(2 * at + 1, { kind, place, body, ...(kind === "undone" && { corrects: [`${BEN}-1`] }) })]);
    fold.add([told(at + 2, { kind, place, body, corrects: [`${ADA}-${2 * at}`, `${BEN}-${at + 1}`] }, 1)]);
  }
  const hash = createHash("sha256").update(JSON.stringify(fold.folded())).digest("hex");
  expect([FOLD_VERSION, hash.slice(0, 16)]).toEqual([2, "b929ea86c749851b"]);
});

/** The plane search: what it offers, what it refuses and why, and how far a change reaches. */
import { describe, expect, it } from "vitest";
import { planeGroups } from "../../src/setout/plane-search/index.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import {
  ALL,
  exampleDocument,
  FRONT,
  findingsAfter,
  nameOf,
  projectOf,
  search,
} from "../helpers/plane-search.ts";

/** Boards of 20, sheets of 8 and of 6 with a gasket of 1: how many stacks of the demo's stock meet within 1 mm, counted out. */
function meetingInThree(): number {
  // Packers of 1, 2, 3 and 5, four at most: every sum to 20 but 19.
  const sums = Array.from({ length: 21 }, (_, sum) => sum).filter((sum) => sum !== 19);
  const stacks = [19, 25, 30, 38].flatMap((batten) => sums.map((sum) => batten + sum));
  let count = 0;
  for (const first of stacks)
    for (const second of stacks)
      if (Math.abs(first + 20 - (second + 9)) <= 1)
        for (const third of stacks) if (Math.abs(second + 9 - (third + 7)) <= 1) count += 1;
  return count;
}

type Found = ReturnType<typeof search>;

const broken = (one: Found["failing"][number] | undefined) => one?.failed.map(({ rule }) => rule);
const named = (list: Found["failing"], name: string) => list.find((one) => nameOf(one) === name);

describe("the demo's three tempting pairs without a packer", () => {
  const demo = search(exampleDocument(), { planing: { least: -4, most: 4, step: 1 }, show: ALL });

  it("17 mm boards on 30 mm battens lie in one plane with the sheets but leave a rule of proportion, so rank behind", () => {
    const pair = demo.passing.findIndex((one) => nameOf(one) === "b30x64+|b38x64+ 17|8");
    const behind = demo.passing.findIndex(({ present }) => present);
    expect(demo.passing[pair]?.merit).toMatchObject({ step: 0, packers: 0, broken: 1 });
    expect(pair).toBeGreaterThan(behind);
    expect(say(demo.passing[pair]?.rank ?? { key: "", values: {} }, ENGLISH_MM)).toContain(
      "planing breaks 1 rule",
    );
  });

  it("boards on 19 mm battens choke the cavity where 20 mm is asked, and that alone", () => {
    const document = exampleDocument();
    document.limits.cavityMin.value = 20;
    document.limits.screwBite.cladding.value = 15;
    document.stock.screws.push({ id: "board-38", use: "board", diameter: 4.5, headDiameter: 8, length: 38 });
    const pair = named(search(document, { show: ALL }).failing, "b19x64+|b30x64+ 20|8");
    expect(pair?.merit.packers).toBe(0);
    expect(pair?.failed).toMatchObject([{ rule: "cavity", demand: 19, limit: 20, unit: "mm" }]);
  });

  it("23 mm boards cannot be cut from lot B, whose boards are 22 mm", () => {
    const pair = named(demo.failing, "b25x64+|b38x64+ 23|8");
    expect(pair?.merit.packers).toBe(0);
    expect(broken(pair)).toContain("lot");
    const lot = pair?.failed.find(({ rule }) => rule === "lot");
    expect(lot).toMatchObject({ demand: 23, limit: 22 });
    expect(say(lot?.says ?? { key: "", values: {} }, ENGLISH_MM)).toBe(
      "Lot B gives no board of 23 mm: its thickest is 22 mm.",
    );
    // With packers behind the sheets the lot is all that stands in the way.
    expect(demo.failing.some((one) => broken(one)?.join() === "lot")).toBe(true);
  });
});

describe("what fails", () => {
  const { counts, failing, leftOut, passing } = search(exampleDocument());

  it("is told by rule with its numbers, those that break one rule first", () => {
    expect(nameOf(failing[0] as Found["failing"][number])).toBe("b19x64+|b30x64+ 20|8");
    expect(failing[0]?.failed).toMatchObject([
      { rule: "cladding-screw", outcome: "fail", demand: 19, limit: 25 },
    ]);
    const rules = failing.map(({ failed }) => new Set(failed.map(({ rule }) => rule)).size);
    expect(rules).toEqual([...rules].sort((a, b) => a - b));
  });

  it("is counted exactly, what is left out too", () => {
    expect(counts.all).toBe((4 * 20) ** 2);
    expect(counts.passing + counts.failing).toBe(counts.meeting);
    expect(passing.length + leftOut.passing).toBe(counts.passing);
    expect(failing.length + leftOut.failing).toBe(counts.failing);
  });

  it("has no edit; what passes has", () => {
    expect(failing.some((one) => "edit" in one)).toBe(false);
    expect(passing.every((one) => one.present === (one.edit.length === 0))).toBe(true);
  });
});

describe("screws", () => {
  it("come out of a thin batten's back: named with the screw and the batten", () => {
    const { failing } = search(exampleDocument(), { show: ALL });
    const pair = named(failing, "b25x64+|b25x64+5+5 20|8");
    expect(pair?.failed).toMatchObject([{ rule: "cladding-screw", demand: 29, limit: 25 }]);
    expect(say(pair?.failed[0]?.says ?? { key: "", values: {} }, ENGLISH_MM)).toContain(
      "sheet-38 comes 4 mm out of the back of the 25 mm batten",
    );
  });

  it("are changed where another of the stock suits, and the edit says so", () => {
    // 51 + 3 + 38 + 11 = 103 to the stud; 140 leaves 37 of 38, 160 leaves 57.
    const { passing } = search(exampleDocument(), { show: ALL });
    const pair = passing.find((one) => nameOf(one) === "b30x64+|b38x64+3 20|8");
    expect(pair?.buildUps[1]?.battenScrew).toBe("batten-160");
    expect(pair?.edit).toEqual([
      { op: "replace", path: "/buildUps/0/layers/3/stock", value: "b30x64" },
      { op: "remove", path: "/buildUps/0/layers/2" },
      { op: "add", path: "/buildUps/1/layers/2", value: { kind: "packer", thickness: 3 } },
      { op: "replace", path: "/buildUps/1/battenScrew", value: "batten-160" },
    ]);
  });

  it("of a cladding also have to suit where it hangs on a build-up that stays", () => {
    const document = exampleDocument();
    document.limits.screwBite.cladding.value = 30;
    const more = (use: "sheet" | "board", length: number) => ({
      ...{ id: `${use}-${length}`, use, diameter: 4.8, headDiameter: 16, length },
    });
    // 42 − 9 = 33 bites in 38 mm, and would come 3 mm out of the bare faces' 30 mm battens.
    document.stock.screws.push(more("sheet", 42), more("board", 52));
    expect(search(document).counts.passing).toBe(0);
    const own = structuredClone(document.claddings[1] as (typeof document.claddings)[1]);
    document.claddings.push({ ...own, id: "bare-sheets" });
    for (const face of document.faces)
      for (const zone of face.zones) if (zone.buildUp === "bare-sheets") zone.cladding = "bare-sheets";
    const apart = search(document, { show: ALL });
    expect(apart.counts.passing).toBeGreaterThan(0);
    expect(new Set(apart.passing.map(({ claddings }) => claddings[1]?.screw))).toEqual(new Set(["sheet-42"]));
  });
});

describe("battens of one thickness", () => {
  it("stand for one another: the present one, else one as wide; a narrower one is told", () => {
    const document = exampleDocument();
    const batten = document.buildUps[1]?.layers.find(({ kind }) => kind === "batten");
    if (batten?.kind === "batten") batten.stock = "b38x89";
    const { passing } = search(document, { show: ALL });
    const behindSheets = passing.map(({ buildUps, attention }) => ({
      batten: buildUps[1]?.battens[0],
      told: attention.some(({ rule }) => rule === "narrower-batten"),
    }));
    expect(behindSheets).toContainEqual({ batten: "b38x89", told: false });
    expect(behindSheets).toContainEqual({ batten: "b30x64", told: true });
    expect(behindSheets.some(({ batten: id }) => id === "b38x64")).toBe(false);
    expect(passing.every(({ buildUps }) => buildUps[0]?.battens[0] !== "b38x89")).toBe(true);
  });
});

describe("frames", () => {
  it("proud of the plane fail; deeper ones are told with how far they lie behind", () => {
    const document = exampleDocument();
    const front = document.faces.find(({ id }) => id === "front");
    if (front) front.frameProjection = 98.5;
    const { passing, failing } = search(document, { show: ALL });
    const planes = passing.map(({ zones }) =>
      Math.min(...zones.filter(({ face }) => face === "front").map(({ faceZ }) => faceZ)),
    );
    expect(Math.min(...planes)).toBeGreaterThanOrEqual(98.5);
    const present = failing.find(({ present }) => present);
    expect(present?.failed).toMatchObject([
      { rule: "frame", demand: 98.5, limit: 98 },
      { rule: "frame", demand: 98.5, limit: 98 },
    ]);
  });

  it("whose projection nobody gave are said to be unknown", () => {
    const document = exampleDocument();
    const front = document.faces.find(({ id }) => id === "front");
    if (front) delete front.frameProjection;
    const { passing } = search(document);
    const frames = passing[0]?.attention.filter(({ rule }) => rule === "frame").map(({ says }) => says.key);
    expect(frames).toContain("proof.frame.unknown");
  });
});

describe("how far a change reaches", () => {
  it("zones that share a build-up follow and are judged too", () => {
    expect(search(exampleDocument()).followers).toEqual([{ face: "west", zone: "boards" }]);
    const document = exampleDocument();
    const west = document.faces.find(({ id }) => id === "west");
    if (west) west.frameProjection = 110;
    const planes = search(document, { show: ALL }).passing.map(({ zones }) => zones[0]?.faceZ ?? 0);
    expect(planes.length).toBeGreaterThan(0);
    expect(Math.min(...planes)).toBeGreaterThanOrEqual(110);
  });

  it("a step elsewhere that changes along may stay as it is, and get no worse", () => {
    const document = exampleDocument();
    const west = document.faces.find(({ id }) => id === "west");
    const [boards] = west?.zones ?? [];
    if (!west || !boards) throw new Error("the demo's west has a zone");
    // Bare sheets at plane 39 beside boards at 98: 59 mm apart today.
    west.zones = [
      { id: "bare", cladding: "grey-sheets", buildUp: "bare-sheets", x: ["left end", 2000] },
      { ...boards, x: [2010, "right end"] },
    ];
    const { passing } = search(document, { show: ALL });
    const planes = passing.map(({ zones }) => zones.find(({ face }) => face === "west")?.faceZ ?? 0);
    expect(Math.max(...planes)).toBe(98);
    expect(Math.min(...planes)).toBeLessThan(98);
  });

  it("an open mitre wants one plane exactly", () => {
    const document = exampleDocument();
    // West gets a build-up of its own, so that the corner no longer closes by itself.
    document.buildUps.push({
      ...structuredClone(document.buildUps[0] as (typeof document.buildUps)[0]),
      id: "west-boards",
    });
    const west = document.faces.find(({ id }) => id === "west");
    if (west?.zones[0]) west.zones[0].buildUp = "west-boards";
    const alone = search(document, { show: ALL });
    expect(alone.followers).toEqual([]);
    const mitre = (one: Found["passing"][number]) => one.meetings.find(({ kind }) => kind === "open mitre");
    expect(new Set(alone.passing.map((one) => mitre(one)?.step))).toEqual(new Set([0]));
    // Boards may then not leave plane 98, unless the west goes along.
    expect(new Set(alone.passing.map(({ zones }) => zones[0]?.faceZ))).toEqual(new Set([98]));
    const together = search(document, { zones: [...FRONT, { face: "west", zone: "boards" }], show: ALL });
    expect(new Set(together.passing.map(({ zones }) => zones[0]?.faceZ)).size).toBeGreaterThan(5);
    const pick = together.passing.find(({ zones }) => zones[0]?.faceZ === 101);
    expect(
      findingsAfter(document, pick?.edit ?? []).corners.filter(({ outcome }) => outcome === "fail"),
    ).toEqual([]);
  });

  it("three neighbours in one face are brought into one plane together", () => {
    const document = exampleDocument();
    const front = document.faces.find(({ id }) => id === "front");
    const [boards, sheets] = front?.zones ?? [];
    if (!front || !boards || !sheets) throw new Error("the demo's front has two zones");
    document.buildUps.push({
      ...structuredClone(document.buildUps[1] as (typeof document.buildUps)[1]),
      id: "thin-sheets",
    });
    const thin = structuredClone(document.claddings[1] as (typeof document.claddings)[1]);
    document.claddings.push({ ...thin, id: "thin-sheets", thickness: 6 });
    front.zones = [
      boards,
      { ...sheets, x: [2410, 6090] },
      { id: "end", cladding: "thin-sheets", buildUp: "thin-sheets", x: [6100, "right end"] },
    ];
    const zones = [...FRONT, { face: "front", zone: "end" }];
    const { counts, passing } = search(document, { zones });
    expect(counts.all).toBe((4 * 20) ** 3);
    expect(counts.meeting).toBe(meetingInThree());
    for (const { meetings, buildUps, edit } of passing.slice(0, 4)) {
      expect(meetings.filter(({ kind }) => kind === "side by side")).toHaveLength(2);
      expect(buildUps).toHaveLength(3);
      const { steps } = findingsAfter(document, edit);
      expect(steps.map(({ outcome }) => outcome)).toEqual(["pass", "pass"]);
    }
  });

  it("groups of zones that meet are found side by side and round mitres", () => {
    expect(planeGroups(projectOf(exampleDocument()))).toEqual([[...FRONT, { face: "west", zone: "boards" }]]);
    expect(planeGroups(projectOf(exampleDocument("l-plan")))).toEqual([]);
  });
});

describe("where nothing meets", () => {
  it("what comes nearest is told with its step", () => {
    const document = exampleDocument();
    document.stock.packers = [];
    document.stock.battens = document.stock.battens.filter(({ thickness }) => thickness !== 19);
    const { counts, nearest } = search(document);
    // 25 + 20 = 45 and 30 + 20 = 50 against 38 + 9 = 47 and 30 + 9 = 39: the least step is 2 mm, 1 over the limit.
    expect(counts.passing).toBe(0);
    expect(nearest && nameOf(nearest)).toBe("b25x64+|b38x64+ 20|8");
    expect(nearest?.failed).toMatchObject([{ rule: "meet", demand: 2, limit: 1 }]);
  });
});

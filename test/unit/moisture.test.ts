/** Moisture of boards at fixing. The correction is checked in test/published/meter-moisture; sums by hand. */
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { applyPatch } from "../../src/project/edit.ts";
import type { Project } from "../../src/project/schema/project.ts";
import type { EntryOf } from "../../src/site/journal/entry.ts";
import { correctedReadings, fixingMoisture } from "../../src/site/moisture/at-fixing.ts";
import { moistureFindings } from "../../src/site/moisture/findings.ts";
import { example } from "../contract/cut-facade-examples.ts";
import { told } from "../helpers/journal.ts";

const demo = example("atelier-bouleau");
const { facade } = design(demo.project);
const metered: Project = {
  ...demo.project,
  moistureMeter: { calibratedAtC: 20, species: [{ species: "eastern white pine", points: 1 }] },
};

type Place = EntryOf<"moisture">["place"];
let count = 0;
function reading(meterPercent: number, place: Place, more: Partial<EntryOf<"moisture">["body"]> = {}) {
  count += 1;
  const body = { meterPercent, temperatureC: 20, ...more };
  return told(count, { kind: "moisture", place, body }) as EntryOf<"moisture">;
}

const boardOf = (face: string) =>
  facade.faces.find(({ id }) => id === face)?.pieces.find(({ kind }) => kind === "board")?.mark ?? "";
const findings = (project: Project, readings: readonly EntryOf<"moisture">[]) =>
  moistureFindings(project, correctedReadings({ project, facade }, readings));

describe("moisture at fixing", () => {
  it("belongs to the cladding of the piece that was read, or of a face that has one of boards alone", () => {
    const [byPiece, byFace, nowhere, ofSheet] = correctedReadings({ project: metered, facade }, [
      reading(14, { piece: boardOf("west") }),
      reading(14, { face: "west" }),
      reading(14, {}),
      reading(14, { face: "north" }),
    ]);
    const zone = facade.faces.find(({ id }) => id === "west")?.zones[0]?.cladding;
    expect([byPiece?.cladding, byFace?.cladding]).toEqual([zone, zone]);
    expect([nowhere?.cladding, ofSheet?.cladding]).toEqual([undefined, undefined]);
  });

  it("is corrected for temperature and species, and never without what that takes", () => {
    const place = { piece: boardOf("west") };
    const [cold, pine, unknown] = correctedReadings({ project: metered, facade }, [
      reading(14, place, { temperatureC: 20 - 11.2 }),
      reading(14, place, { species: "eastern white pine" }),
      reading(14, place, { temperatureC: undefined }),
    ]);
    expect(cold?.percent).toBeCloseTo(15 + (cold?.points ?? 0), 9);
    expect(pine).toMatchObject({ percent: 15, points: 1 });
    expect(unknown).toMatchObject({ percent: undefined, lacks: ["temperature"] });
    const [bare] = correctedReadings({ project: { ...metered, moistureMeter: undefined }, facade }, [
      reading(14, place),
    ]);
    expect(bare).toMatchObject({ percent: undefined, lacks: ["calibration"] });
    const [told] = findings({ ...metered, moistureMeter: undefined }, [reading(14, place)]);
    expect(told).toMatchObject({
      code: "M006",
      outcome: "cannot evaluate",
      where: { path: "/moistureMeter" },
    });
  });

  it("is summed by cladding", () => {
    const place = { piece: boardOf("west") };
    const readings = [12, 14, 16].map((percent) => reading(percent, place, { species: "other" }));
    const [west] = fixingMoisture(metered, correctedReadings({ project: metered, facade }, readings));
    expect(west).toMatchObject({ count: 3, mean: 14, least: 12, most: 16, deviation: 2 });
  });

  it("fails where a board is wetter than advised, and passes only provisionally without the meter's chart", () => {
    const place = { piece: boardOf("west") };
    const dry = (species: string) => findings(metered, [reading(14, place, { species })])[0];
    expect(dry("eastern white pine")).toMatchObject({ code: "M006", outcome: "pass", provisional: false });
    expect(dry("other")).toMatchObject({ code: "M006", outcome: "pass", provisional: true });
    const [wet] = findings(metered, [reading(14, place), reading(19, place)]);
    expect(wet).toMatchObject({
      code: "M006",
      outcome: "fail",
      demand: 19,
      limit: 18,
      where: { marks: [boardOf("west")] },
    });
  });

  it("far from what the gaps were set out for offers the mean, and the gap through the year follows it", () => {
    const place = { piece: boardOf("west") };
    const readings = [17, 17.5, 18].map((percent) => reading(percent, place));
    const found = findings(metered, readings).find(({ code }) => code === "M007");
    expect(found).toMatchObject({ outcome: "attention", limit: 2 });
    const patched = applyPatch(metered, found?.edit ?? []);
    const next = (patched.ok ? patched.document : undefined) as Project;
    const cladding = correctedReadings({ project: metered, facade }, readings)[0]?.cladding ?? "";
    const before = design(metered).demands.boards[cladding]?.seasonal;
    const after = design(next).demands.boards[cladding]?.seasonal;
    expect([before?.fixingPercent, after?.fixingPercent]).toEqual([15, 17.5]);
    expect(findings(next, readings).find(({ code }) => code === "M007")).toMatchObject({ outcome: "pass" });
  });
});

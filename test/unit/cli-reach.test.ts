/** `outerleaf reach`: the order, the screws and the masses as set-out tells them, in the reader's units and language. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { ReachJson } from "../../src/cli/shapes/reach.ts";
import type { FaceJson, SetOutJson } from "../../src/output/json/shapes/set-out.ts";
import { bench } from "../helpers/cli.ts";

const desk = bench();
afterAll(() => desk.clear());

const DEMO = "atelier-bouleau.outerleaf.json";
const IMPERIAL = "imperial.outerleaf.json";

async function way(...argv: string[]): Promise<ReachJson> {
  return JSON.parse((await desk.run("reach", ...argv, "--json")).out);
}

describe("outerleaf reach", () => {
  let pieces: Map<string, FaceJson["pieces"][number]>;
  beforeAll(async () => {
    const { faces }: SetOutJson = JSON.parse((await desk.run("set-out", DEMO, "--json")).out);
    pieces = new Map(faces.flatMap((face) => face.pieces.map((piece) => [piece.mark, piece])));
  });

  it("takes everything off that lies before a batten, then the batten, and adds up what set-out tells", async () => {
    const { steps, screws, screwCount, massKg } = await way(DEMO, "--mark", "F2-L1a");
    expect(steps.map(({ mark }) => mark)).toEqual([...pieces.get("F2-L1a")!.removeBefore, "F2-L1a"]);
    const told = steps.map(({ mark }) => pieces.get(mark)!);
    expect(steps.map((one) => one.massKg)).toEqual(told.map((piece) => piece.massKg));
    expect(screwCount).toBe(told.reduce((sum, { fixings }) => sum + fixings.length, 0));
    expect(screws.reduce((sum, { count }) => sum + count, 0)).toBe(screwCount);
    expect(massKg).toBeCloseTo(
      told.reduce((sum, piece) => sum + piece.massKg, 0),
      2,
    );
  });

  it("reaches less deep for the battens than for the membrane behind one", async () => {
    const { outline } = pieces.get("F2-L1a")!;
    const x = (outline[0]![0]! + outline[1]![0]!) / 2;
    const place = [DEMO, "--face", "front", "--at", `${x},400`];
    const deep = (await way(...place)).steps.map(({ mark }) => mark);
    const shallow = (await way(...place, "--depth", "batten")).steps.map(({ mark }) => mark);
    expect(deep).toContain("F2-L1a");
    expect(shallow).not.toContain("F2-L1a");
    expect(deep.slice(0, shallow.length)).toEqual(shallow);
  });

  it("reads lengths in the project's units, or with their own", async () => {
    const inches = await way(IMPERIAL, "--face", "front", "--at", "3'-4 1/2\",20");
    expect(inches.at).toEqual([40.5 * 25.4, 20 * 25.4]);
    expect((await way(IMPERIAL, "--face", "front", "--at", "1028.7 mm,50.8 cm")).at).toEqual(inches.at);
    expect((await way(DEMO, "--face", "west", "--at", "3400,5;600,25")).at).toEqual([3400.5, 600.25]);
    // A corner's cladding reaches past the left end of its face.
    expect((await way(DEMO, "--face", "front", "--at", "-20,600")).at).toEqual([-20, 600]);
  });

  it("names the driver where the stock names it, and nowhere else", async () => {
    const stock: { id: string }[] = JSON.parse(desk.read(DEMO)).stock.screws;
    const path = `/stock/screws/${stock.findIndex(({ id }) => id === "sheet-38")}/driver`;
    desk.write("driver.json", [{ op: "add", path, value: "T20" }]);
    const plain = await desk.run("reach", DEMO, "--mark", "F2-L1a");
    const named = await desk.run("reach", DEMO, "--mark", "F2-L1a", "--edit", "driver.json");
    expect(plain.out).not.toContain("T20");
    expect(named.out).toMatch(/F2-S1a .* 15 × sheet-38 \(T20\)\n/);
    expect(named.out).toMatch(/F2-L1a .* 6 × batten-140\n/);
    const { screws } = await way(DEMO, "--mark", "F2-L1a", "--edit", "driver.json");
    expect(screws).toEqual([
      { screw: "sheet-38", count: 24, driver: "T20" },
      { screw: "batten-140", count: 6 },
    ]);
  });

  it("warns of heights and heavy pieces where there are any, and of no dust: nothing is sawn", async () => {
    const sheet = await desk.run("reach", DEMO, "--mark", "F2-S1a");
    expect(sheet.out).toContain("Heavier than 25 kg: F2-S1a. Two people or a lifting aid");
    expect(sheet.out).not.toContain("guard against falls");
    expect((await desk.run("reach", DEMO, "--mark", "F2-S1b")).out).toContain("guard against falls");
    expect((await way(DEMO, "--mark", "W-B106b")).cautions).toEqual([]);
    expect(sheet.out).not.toContain("dust");
    const soffit = await desk.run("reach", DEMO, "--mark", "ER1-B101a");
    expect(soffit.out).toContain("Overhead: hold each piece before its last screw is drawn.");
    expect(sheet.out).not.toContain("Overhead");
  });

  it("says it in French", async () => {
    const { out } = await desk.run("reach", DEMO, "--mark", "F2-L1a", "--language", "fr");
    expect(out).toContain("Pour déposer F2-L1a, sur la face front :");
    expect(out).toContain("2.  F2-S1b  panneau");
    expect(out).toContain("Deux personnes ou un appareil de levage");
  });
});

/** `outerleaf planes`: what it prints, what it refuses, and its edits handed back to `--edit`. */
import { afterAll, describe, expect, it } from "vitest";
import { bench } from "../helpers/cli.ts";

const DEMO = "atelier-bouleau.outerleaf.json";
const desk = bench();
afterAll(() => desk.clear());

describe("outerleaf planes", () => {
  it("says how many combinations there are, which is best, and what the tempting one breaks", async () => {
    const { exit, out } = await desk.run("planes", DEMO);
    expect(exit).toBe(0);
    expect(out).toContain("6400 combinations of battens, packers and planing; in 416 the faces meet");
    expect(out).toMatch(/1 {2}2 \+ b25x64 \(batten-140\) {2}b38x64 \(batten-140\) .* 98 .*\(as it stands\)/);
    expect(out).toContain("The 19 mm batten is thinner than the 25 mm that a cladding screw must bite.");
  });

  it("says it in French, in the trade's words", async () => {
    const { out } = await desk.run("planes", DEMO, "--language", "fr");
    expect(out).toContain("combinaisons de lattes, cales et rabotage");
    expect(out).toContain("lame d’air");
  });

  it("offers edits that --edit takes, after which the project has them", async () => {
    const asked = ["planes", DEMO, "--face", "front", "--planing", "2", "--json"];
    const { searches } = JSON.parse((await desk.run(...asked)).out);
    const [{ edit, zones }] = searches[0].passing;
    desk.write("put-in.json", edit);
    const { planes } = JSON.parse((await desk.run("set-out", DEMO, "--edit", "put-in.json", "--json")).out);
    for (const { face, zone, faceZ } of zones)
      expect(planes).toContainEqual(expect.objectContaining({ face, zone, faceZ }));
  });

  it("ends with 1 where nothing in stock brings the faces into one plane, and tells the nearest", async () => {
    desk.write("no-packers.json", [
      { op: "replace", path: "/stock/packers", value: [] },
      { op: "replace", path: "/stock/battens/0/thickness", value: 33 },
    ]);
    const { exit, out } = await desk.run("planes", DEMO, "--edit", "no-packers.json");
    expect(exit).toBe(1);
    expect(out).toContain("None keeps every rule.");
    expect(out).toContain("stand 2 mm apart; 1 mm allowed");
  });

  it("refuses a face that is not there, with the one that is meant", async () => {
    const { exit, err } = await desk.run("planes", DEMO, "--face", "fornt");
    expect(exit).toBe(2);
    expect(err).toContain("no face fornt");
    expect(err).toContain("front is probably meant");
  });

  it("searches a face that meets nothing by itself", async () => {
    const { searches } = JSON.parse((await desk.run("planes", DEMO, "--face", "north", "--json")).out);
    expect(searches).toHaveLength(1);
    expect(searches[0].zones).toEqual([{ face: "north", zone: "sheets" }]);
    expect(searches[0].followers).toEqual([{ face: "east", zone: "sheets" }]);
  });
});

/** `outerleaf take-in`: drawings into projects, told before they are written, and refused whole. */

import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { bench } from "../helpers/cli.ts";
import { box, dxf, lightLine } from "../helpers/dxf.ts";
import { box as houseOf, IfcText } from "../helpers/ifc.ts";

const desk = bench();
afterAll(() => desk.clear());
const put = (name: string, text: string): string => {
  writeFileSync(join(desk.folder, name), text, "latin1");
  return name;
};

const L_PLAN = "l-plan.outerleaf.json";
const FRONT = put(
  "front.dxf",
  dxf({
    units: 5,
    entities: [
      lightLine(box(0, 0, 400, 250), { layer: "Façade", handle: "10" }),
      lightLine(box(100, 90, 120, 100), { layer: "Façade", handle: "11" }),
    ],
  }),
);

describe("a drawing that begins a project", () => {
  it("is told, and written only where --to says, never over a file", async () => {
    const told = await desk.run("take-in", FRONT);
    expect(told).toMatchObject({ exit: 0, err: "" });
    expect(told.out).toContain("W1, a new window: 1200 mm × 1000 mm, 1000 mm from the left, sill at 850 mm.");
    expect(told.out).toContain("Nothing is written");
    const { exit } = await desk.run("take-in", FRONT, "--to", "begun.json", "--language", "fr");
    expect(exit).toBe(0);
    expect(JSON.parse(desk.read("begun.json")).faces[0].openings).toEqual([
      { id: "W1", kind: "window", x: [1000, 2200], y: [850, 1850] },
    ]);
    expect((await desk.run("check", "begun.json")).exit).toBe(0);
    const over = await desk.run("take-in", FRONT, "--to", "begun.json");
    expect(over.exit).toBe(2);
    expect(over.err).toContain("begun.json");
  });
});

describe("walls of a model", () => {
  const model = new IfcText("ft", { north: [0, 1] });
  const { front } = houseOf(model);
  model.opening(front.wall, ...front.hole(1219.2, 914.4, 914.4, 1219.2));
  const HOUSE = put("house.ifc", model.text());

  it("begin a project with a face each and the corners between them, and go into faces of their name", async () => {
    const begun = await desk.run("take-in", HOUSE, "--to", "house.json");
    expect(begun).toMatchObject({ exit: 0, err: "" });
    expect(begun.out).toContain("Corner: the right end of front meets the left end of right.");
    const { faces, corners } = JSON.parse(desk.read("house.json"));
    expect(faces.map(({ id }: { id: string }) => id)).toEqual(["front", "right", "a", "left"]);
    expect(corners).toHaveLength(4);
    expect((await desk.run("check", "house.json")).exit).toBe(0);
    const again = await desk.run("take-in", HOUSE, "--into", "house.json");
    expect(again.out).toContain("1 opening stays as it is.");
  });

  it("are turned one by one, and a wall that is not there is refused with those that are", async () => {
    const both = ["--walls", "front,right"] as const;
    const run = async (...more: string[]): Promise<string[]> => {
      const { exit, out } = await desk.run("take-in", HOUSE, "--language", "en", "--json", ...more);
      expect(exit).toBe(0);
      return (JSON.parse(out) as { changes: string[] }).changes;
    };
    const seen = await run(...both);
    expect(seen).toContain("Corner: the right end of front meets the left end of right.");
    expect(seen.join()).toContain("1219.2 mm from the left");
    const turned = await run(...both, "--turn", "front", "--turn", "right");
    expect(turned).toContain("Seen from the other side: front, right.");
    expect(turned).toContain("Corner: the right end of right meets the left end of front.");
    // Of 6000 mm, 300 lie behind the other wall: 6000 − 1219.2 − 914.4 − 300 = 3566.4.
    expect(turned.join()).toContain("3566.4 mm from the left");
    const one = await run(...both, "--turn", "front");
    expect(one.join()).not.toContain("Corner");
    const none = await desk.run("take-in", HOUSE, "--turn", "frnot", "--to", "roof.json");
    expect(none.exit).toBe(2);
    expect(none.err).toContain("no wall called “frnot”.");
    expect(none.err).toContain("Name walls of the file: front, right, Back wall:1, left.");
    const other = await desk.run("take-in", HOUSE, "--walls", "front", "--turn", "left", "--to", "roof.json");
    expect(other.err).toContain("“left” is to be turned, and is not among those that are taken");
    expect((await desk.run("take-in", HOUSE, "--turn", "front", "--turn", "")).err).toContain(
      "--turn WALL lacks its value",
    );
    expect(desk.names()).not.toContain("roof.json");
  });

  it("are named one by one, and refused whole by name", async () => {
    const one = await desk.run("take-in", HOUSE, "--walls", "left", "--json", "--language", "en");
    expect(JSON.parse(one.out).changes.join()).toContain("Left end of left: 300 mm further out");
    const none = await desk.run("take-in", HOUSE, "--walls", "left, roof", "--to", "roof.json");
    expect(none.exit).toBe(2);
    expect(none.err).toContain("no wall called “roof”");
    expect(desk.names()).not.toContain("roof.json");
  });
});

describe("readings from a table", () => {
  const DEMO = "atelier-bouleau.outerleaf.json";

  it("go into the survey, by columns that are named and in a unit that is told", async () => {
    const table = put("laser.csv", "wall,along,up,dev\nfront,0.9,0.7,0.006\nFront,0,0,0.002\n");
    const asked = ["take-in", table, "--as", "readings", "--into", DEMO, "--language", "en"] as const;
    const columns = ["--columns", "face=wall,x=along,y=up,outward=dev", "--drawn", "m"] as const;
    const bare = await desk.run(...asked);
    expect(bare.exit).toBe(2);
    expect(bare.err).toContain(
      "laser.csv has no column for: Face, x from the left end, y from the datum, Outward",
    );
    const done = await desk.run(...asked, ...columns, "--to", "read.json");
    expect(done).toMatchObject({ exit: 0, err: "" });
    expect(done.out).toContain("front: 1 new reading.");
    expect(done.out).toContain("front: 1 reading is the same.");
    expect(JSON.parse(desk.read("read.json")).survey[0].places).toEqual([{ x: 900, y: 700, outward: 6 }]);
    expect((await desk.run("check", "read.json")).exit).toBe(0);
    // The same table serves the packing without being taken in.
    const plain = put("plain.csv", "face,x,y,outward\nfront,0,0,3\nfront,2000,0,4\nfront,0,2000,9\n");
    expect((await desk.run("pack", DEMO, "--readings", plain)).out).not.toBe("");
  });

  it("are refused whole, by row, column and title", async () => {
    const bad = put("bad.csv", "face,x,y,outward\nfront,0,0,3\nfront,99999,0,3\n");
    const asked = ["take-in", bad, "--as", "readings", "--into", DEMO, "--to", "bad.json"] as const;
    const { exit, err } = await desk.run(...asked);
    expect(exit).toBe(2);
    expect(err).toContain("bad.csv, row 3, column “x”: 99999 lies off face front");
    const title = await desk.run(...asked, "--columns", "x=along");
    expect(title.err).toContain("bad.csv has no title “along”");
    expect(title.err).toContain("face, x, y, outward");
    expect((await desk.run(...asked, "--drawn", "dm")).err).toContain("mm, cm, m, in or ft");
    expect((await desk.run("take-in", bad, "--as", "readings")).err).toContain("--into");
    expect((await desk.run("take-in", bad, "--as", "boards")).err).toContain("none of pile, readings");
    expect(desk.names()).not.toContain("bad.json");
  });
});

describe("a drawing into a project", () => {
  it("needs the face that gets it", async () => {
    const { exit, err } = await desk.run("take-in", FRONT, "--into", L_PLAN);
    expect(exit).toBe(2);
    expect(err).toContain("court-e");
  });

  it("is refused whole where the plan is closed and the face would be shorter", async () => {
    const { exit, err } = await desk.run(
      "take-in",
      FRONT,
      "--into",
      L_PLAN,
      "--face",
      "south",
      "--to",
      "no.json",
    );
    expect(exit).toBe(2);
    expect(err).toContain("another wall would have to give");
    expect(desk.names()).not.toContain("no.json");
  });

  it("replaces outline and openings, and the project sets out", async () => {
    const south = put(
      "south.dxf",
      dxf({
        entities: [
          lightLine(
            [
              [0, 0],
              [9000, 0],
              [9000, 2500],
              [0, 2500],
            ],
            { handle: "10" },
          ),
          lightLine(box(1000, 900, 1200, 1000), { handle: "11" }),
        ],
      }),
    );
    const asked = await desk.run("take-in", south, "--into", L_PLAN, "--face", "south");
    expect(asked.err).toContain("does not say what one unit of it measures");
    const done = await desk.run(
      "take-in",
      south,
      "--into",
      L_PLAN,
      "--face",
      "south",
      "--drawn",
      "mm",
      "--to",
      "south.json",
      "--json",
      "--language",
      "en",
    );
    expect(done).toMatchObject({ exit: 0, err: "" });
    const { changes } = JSON.parse(done.out) as { changes: string[] };
    expect(changes.some((one) => one.includes("is taken out"))).toBe(true);
    const south2 = JSON.parse(desk.read("south.json")).faces[0];
    expect(south2.openings).toHaveLength(1);
    expect((await desk.run("check", "south.json")).exit).toBe(0);
  });

  it("names layers, and kinds of files that it knows", async () => {
    const two = put(
      "two.dxf",
      dxf({
        units: 4,
        entities: [lightLine(box(0, 0, 9, 9), { layer: "A" }), lightLine(box(0, 0, 9, 9), { layer: "B" })],
      }),
    );
    expect((await desk.run("take-in", two)).err).toContain("A (1), B (1)");
    expect((await desk.run("take-in", "front.png")).err).toContain(".dxf");
    expect((await desk.run("take-in", "nowhere.dxf")).exit).toBe(2);
  });

  it("reads the letters of older drawings", async () => {
    const { exit } = await desk.run("take-in", FRONT, "--layer", "Façade");
    expect(exit).toBe(0);
  });
});

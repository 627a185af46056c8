/** What comes off to reach a place: by hand on the demo, and in order on every piece of every example. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { readProject } from "../../src/project/read.ts";
import { reach, removalOf } from "../../src/setout/removal/reach.ts";

function facadeOf(name: string) {
  const result = readProject(readFileSync(`examples/${name}.outerleaf.json`, "utf8"), name);
  if (!result.ok) throw new Error(`${name} does not read`);
  return design(result.project).facade;
}

const demo = facadeOf("atelier-bouleau");

describe("reaching a place on the demo", () => {
  it("takes one board off between battens, with its own screws alone", () => {
    const way = reach(demo, { face: "west", point: [3400, 600], depth: "membrane" });
    const board = demo.faces[0]?.pieces.find(({ mark }) => mark === way?.steps[0]?.mark);
    expect(way?.steps).toHaveLength(1);
    expect(board?.kind).toBe("board");
    expect(way?.screws).toBe(board?.fixings.length);
  });

  it("takes one sheet off, and names the fewest-screwed piece beside a joint", () => {
    expect(
      reach(demo, { face: "front", point: [2700, 400], depth: "membrane" })?.steps.map(({ mark }) => mark),
    ).toEqual(["F2-S1a"]);
    const inJoint = reach(demo, { face: "front", point: [2700, 2126], depth: "membrane" });
    expect(inJoint?.steps.map(({ mark }) => mark)).toEqual(["F2-S1b"]);
  });

  it("takes off all that a batten carries before the batten", () => {
    const batten = demo.faces[1]?.pieces.find(({ mark }) => mark === "F2-L1a");
    const way = removalOf(demo, "F2-L1a");
    expect(way?.steps.at(-1)?.mark).toBe("F2-L1a");
    expect(way?.steps.map(({ mark }) => mark)).toEqual([...(batten?.removeBefore ?? []), "F2-L1a"]);
  });

  it("knows no way to an unknown face, mark, or a place off the wall", () => {
    expect(reach(demo, { face: "roof", point: [0, 0], depth: "membrane" })).toBeUndefined();
    expect(reach(demo, { face: "front", point: [4800, 1000], depth: "membrane" })).toBeUndefined();
    expect(removalOf(demo, "Z-B1")).toBeUndefined();
  });
});

describe.each(["atelier-bouleau", "l-plan", "two-storey", "imperial", "porch"])("%s", (name) => {
  const facade = facadeOf(name);

  it("takes every piece off after all that lies before it, each once", () => {
    for (const { pieces } of facade.faces) {
      const byMark = new Map(pieces.map((piece) => [piece.mark, piece]));
      for (const { mark } of pieces) {
        const order = removalOf(facade, mark)?.steps.map((step) => step.mark) ?? [];
        expect(new Set(order).size).toBe(order.length);
        expect(order.at(-1)).toBe(mark);
        for (const [i, one] of order.entries()) {
          for (const before of byMark.get(one)?.removeBefore ?? [])
            expect(order.indexOf(before)).toBeLessThan(i);
        }
      }
    }
  });
});

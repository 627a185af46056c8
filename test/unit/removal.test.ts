/** What comes off to reach a place: by hand on the demo, and in order on every piece of every example. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { readProject } from "../../src/project/read.ts";
import type { Piece } from "../../src/setout/facade.ts";
import { careOf } from "../../src/setout/removal/care.ts";
import { reach, removalOf } from "../../src/setout/removal/reach.ts";
import { boxOf } from "../helpers/piece-boxes.ts";

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

describe("what to take care of", () => {
  const limits = { onePersonKg: 25, fallHeightMm: 3000 };
  const care = (facade: typeof demo, mark: string) => careOf(facade, removalOf(facade, mark)!, limits);

  it("is the height of the highest piece above the lowest ground, and each piece over the mass", () => {
    // F2-S1b ends under the roof at 3010 over ground at -350; F2-S1a, of 36 kg, at the door's head.
    expect(care(demo, "F2-S1b")).toEqual({ high: true, overhead: false, heavy: [] });
    expect(care(demo, "F2-S1a")).toEqual({ high: false, overhead: false, heavy: ["F2-S1a"] });
    expect(careOf(demo, removalOf(demo, "F2-S1b")!, { ...limits, fallHeightMm: 9000 }).high).toBe(false);
    expect(careOf(demo, removalOf(demo, "F2-S1a")!, { ...limits, onePersonKg: 40 }).heavy).toEqual([]);
  });

  it("is said of a soffit by its level, for its own y is no height", () => {
    const raisedTo = (level: number): typeof demo => ({
      ...demo,
      faces: demo.faces.map((face) =>
        face.frame.level === undefined ? face : { ...face, frame: { ...face.frame, level } },
      ),
    });
    expect(care(demo, "ER1-B101a")).toEqual({ high: false, overhead: true, heavy: [] });
    expect(care(raisedTo(5000), "ER1-B101a").high).toBe(true);
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

  it("takes off what is screwed into a piece before that piece", () => {
    for (const { pieces } of facade.faces) {
      const byMark = new Map(pieces.map((piece) => [piece.mark, piece]));
      for (const { mark, fixings } of pieces) {
        for (const holder of new Set(fixings.map(({ into }) => into))) {
          const held = byMark.get(holder);
          // A screw passes from a batten or a buck into blocks behind the sheathing, which nobody takes off from outside.
          if (held && held.z[1] > 0) expect(held.removeBefore, holder).toContain(mark);
        }
      }
    }
  });

  it("clears every place with nothing in vain: what covers it, and what must come off before that", () => {
    let places = 0;
    for (const face of facade.faces) {
      const [left, right, bottom, top] = boxOf(face.outline);
      const byMark = new Map(face.pieces.map((piece) => [piece.mark, piece]));
      for (let x = left + 61.37; x < right; x += 313) {
        for (let y = bottom + 47.41; y < top; y += 229) {
          const way = reach(facade, { face: face.id, point: [x, y], depth: "membrane" });
          const covering = face.pieces.filter((piece) => standsInFront(piece) && hides(piece, [x, y]));
          if (!way) {
            expect(covering.map(({ mark }) => mark)).toEqual([]);
            continue;
          }
          places += 1;
          const off = way.steps.map(({ mark }) => mark);
          expect(covering.filter(({ mark }) => !off.includes(mark)).map(({ mark }) => mark)).toEqual([]);
          const needed = new Set(covering.length > 0 ? covering.map(({ mark }) => mark) : off.slice(-1));
          for (const mark of needed)
            for (const before of byMark.get(mark)?.removeBefore ?? []) needed.add(before);
          expect([...off].sort()).toEqual([...needed].sort());
        }
      }
    }
    expect(places).toBeGreaterThan(200);
  });
});

/** What stands before the membrane and is fixed there. */
const IN_FRONT: readonly Piece["kind"][] = [
  "board",
  "sheet",
  "batten",
  "counter-batten",
  "rail",
  "post",
  "packer",
  "closure",
  "return",
];

/** A strip that hangs on no batten comes away with the sheet over it. */
function standsInFront({ kind, supports }: Piece): boolean {
  return IN_FRONT.includes(kind) || (kind === "gasket" && supports.length > 0);
}

/** By the number of edges that a ray to the right crosses. */
function hides({ outline, holes }: Piece, [x, y]: readonly [number, number]): boolean {
  const crossed = [outline, ...holes].reduce(
    (count, ring) =>
      count +
      ring.filter(([ax, ay], i) => {
        const [bx, by] = ring[(i + 1) % ring.length] as readonly [number, number];
        return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax);
      }).length,
    0,
  );
  return crossed % 2 === 1;
}

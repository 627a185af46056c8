/** A wall from an IFC model turned by itself: its openings mirrored, its corners found anew. */
import { describe, expect, it } from "vitest";
import type { WallChoice } from "../../src/project/intake/ifc/take-walls.ts";
import { IfcText } from "../helpers/ifc.ts";
import { begun, refusal, shape } from "../helpers/ifc-taken.ts";

describe("a wall that is turned by itself", () => {
  /** Two walls of an L, 300 mm thick; a wall of the yard stands before the front one, so that its inner side seems to look out. */
  const yard = (before: boolean): string => {
    const ifc = new IfcText("mm", { north: [0, 1] });
    const front = ifc.plainWall({ name: "front", from: [0, 0], along: [1, 0], length: 6000, external: true });
    ifc.opening(front.wall, ...front.hole(1000, 900, 1200, 1200), { type: "IFCWINDOW", name: "W1" });
    const right = ifc.plainWall({
      name: "right",
      from: [6000, 300],
      along: [0, 1],
      length: 3700,
      external: true,
    });
    ifc.opening(right.wall, ...right.hole(700, 1000, 600, 600), { type: "IFCWINDOW", name: "W2" });
    if (before) ifc.plainWall({ name: "yard", from: [0, -3000], along: [1, 0], length: 6000 });
    return ifc.text();
  };
  const drawn = (choice: WallChoice, before: boolean) => {
    const { project, tells } = begun(yard(before), choice);
    return {
      openings: Object.fromEntries(project.faces.map((face) => [face.id, shape(face).openings])),
      looks: Object.fromEntries(project.faces.map(({ id, azimuthDeg }) => [id, azimuthDeg])),
      corners: project.corners?.map(({ left, right }) => `${left} ${right}`) ?? [],
      turned: tells.filter(({ key }) => key === "intake.change.turned").map(({ values }) => values.walls),
    };
  };

  it("shows its openings mirrored, and the corner that its neighbour has there is joined", () => {
    // Behind the yard's wall the model takes the front for one that is seen from the room: no corner joins it to the right one.
    const walls = ["front", "right"];
    const taken = drawn({ walls }, true);
    expect(taken.openings.front).toEqual([[3800, 900, 5000, 2100]]);
    expect([taken.looks, taken.corners]).toEqual([{ front: 0, right: 90 }, []]);
    expect(drawn({ walls, turned: ["front"] }, true)).toEqual({
      openings: { front: [[1000, 900, 2200, 2100]], right: [[1000, 1000, 1600, 1600]] },
      looks: { front: 180, right: 90 },
      corners: ["front right"],
      turned: [["front"]],
    });
  });

  it("leaves the corner where its side no longer meets it, and finds the inner one when both are turned", () => {
    const seen = drawn({}, false);
    expect(seen).toEqual({
      openings: { front: [[1000, 900, 2200, 2100]], right: [[1000, 1000, 1600, 1600]] },
      looks: { front: 180, right: 90 },
      corners: ["front right"],
      turned: [],
    });
    // Seen from within, the front's ends change places: its right one is where no wall is, and the corner is no more.
    const one = drawn({ turned: ["front"] }, false);
    expect(one.openings).toEqual({ front: [[3800, 900, 5000, 2100]], right: [[700, 1000, 1300, 1600]] });
    expect(one.looks).toEqual({ front: 0, right: 90 });
    expect([one.corners, one.turned]).toEqual([[], [["front"]]]);
    // Both turned are the inner corner: 300 mm of the front stand behind the other wall.
    const both = drawn({ turned: ["front", "right"] }, false);
    expect(both.openings).toEqual({ front: [[3500, 900, 4700, 2100]], right: [[2400, 1000, 3000, 1600]] });
    expect([both.corners, both.looks]).toEqual([["right front"], { front: 0, right: 270 }]);
  });

  it("is refused where the file has no such wall, or it is not taken, with the names there are", () => {
    expect(refusal(yard(false), { turned: ["frnot"] })).toBe(
      "house.ifc has no wall called “frnot”. Name walls of the file: front, right.",
    );
    expect(refusal(yard(true), { walls: ["front"], turned: ["right"] })).toBe(
      "house.ifc: wall “right” is to be turned, and is not among those that are taken. Name walls of the file: front.",
    );
  });
});

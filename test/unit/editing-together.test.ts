/** Several openings moved, aligned and taken out at once. */
import { describe, expect, it } from "vitest";
import { alignOpenings, moveOpenings, removeOpenings } from "../../src/project/editing/openings-together.ts";
import { faceById } from "../../src/project/lookup.ts";
import { changed, edited, exampleSource } from "../helpers/editing.ts";

const bouleau = exampleSource("atelier-bouleau");
const W2 = { face: "front", id: "W2" };
const W3 = { face: "west", id: "W3" };
const D1 = { face: "front", id: "D1" };
const at = (source: typeof bouleau, { face, id }: typeof W2) => {
  const opening = faceById(source.project, face)?.openings.find((one) => one.id === id);
  return opening && [opening.x, opening.y];
};

describe("openings together", () => {
  it("move by as much", () => {
    const moved = edited(bouleau, moveOpenings(bouleau, [W2, W3], [-50, 25]));
    expect(at(moved, W2)).toEqual([
      [700, 1600],
      [945, 2125],
    ]);
    expect(at(moved, W3)).toEqual([
      [2050, 2650],
      [1525, 2125],
    ]);
    expect(changed(moved, moveOpenings(moved, [W2, W3], [50, -25]))).toEqual(bouleau.document);
  });

  it("come into line with the first by their sills, whole, over all faces", () => {
    const aligned = edited(bouleau, alignOpenings(bouleau, [W2, W3], "sill"));
    expect(at(aligned, W3)).toEqual([
      [2100, 2700],
      [920, 1520],
    ]);
    expect(at(aligned, W2)).toEqual(at(bouleau, W2));
  });

  it("align their jambs on one face alone", () => {
    expect(alignOpenings(bouleau, [W2, W3], "left")).toBeUndefined();
    const change = alignOpenings(bouleau, [W2, D1, W3], "right");
    // D1 is 2387 mm wide; its right jamb would come to W2's, 1650 from the left end.
    expect(change?.operations[0]).toMatchObject({ path: "/faces/1/openings/0/x", value: [-737, 1650] });
    expect(change?.operations).toHaveLength(2);
  });

  it("are taken out from one list without one standing for another", () => {
    const less = edited(bouleau, removeOpenings(bouleau, [D1, W3, W2]));
    expect(less.project.faces.slice(0, 2).map(({ openings }) => openings)).toEqual([[], []]);
  });
});

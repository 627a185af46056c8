/** Zones and their joints edited: nothing of a face is left bare or doubled, and rods hold what hangs on them. */
import { describe, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import type { Source } from "../../src/project/editing/change.ts";
import { spaceEdgeZone, widenEdgeZone } from "../../src/project/editing/edge-zone.ts";
import { allowBand, forbidBand, pinJoint, unpinJoint } from "../../src/project/editing/joints.ts";
import { cladZone, moveZoneSide, removeZone, splitZone } from "../../src/project/editing/zones.ts";
import { faceById } from "../../src/project/lookup.ts";
import { starterProject } from "../../src/project/starter.ts";
import { setOut } from "../../src/setout/set-out.ts";
import { changed, edited, exampleSource, refusals, sourceOf } from "../helpers/editing.ts";

const bouleau = exampleSource("atelier-bouleau");
const starter = sourceOf(starterProject());
const boards = { face: "front", id: "boards" };
const sheets = { face: "front", id: "sheets" };
const zonesOf = ({ project }: Source, face = "front") =>
  faceById(project, face)?.zones.map(({ id, x, y }) => [id, x, y]);

describe("the edge zone of sheets", () => {
  const id = "grey-sheets";
  const zoneOf = ({ project }: Source) => {
    const found = project.claddings.find((one) => one.id === id);
    return found?.kind === "sheets" ? found.dataSheet.edgeZone : undefined;
  };

  it("is put in with the spacing of the data sheet, narrowed, and taken out again", () => {
    const put = edited(bouleau, widenEdgeZone(bouleau, id, 1200));
    const sheet = bouleau.project.claddings.find((one) => one.id === id);
    const usual = sheet?.kind === "sheets" ? sheet.dataSheet.fixingSpacing : undefined;
    expect(zoneOf(put)).toEqual({ width: 1200, fixingSpacing: usual });
    const closer = edited(put, spaceEdgeZone(put, id, 150));
    expect(zoneOf(closer)?.fixingSpacing).toEqual([Math.min(usual?.[0] ?? 0, 150), 150]);
    expect(changed(closer, widenEdgeZone(closer, id, 0))).toEqual(bouleau.document);
  });

  it("brings the sheets' screws closer where the face ends", () => {
    const rows = (source: Source): number =>
      setOut(source.project, demandsOf(source.project))
        .faces.flatMap(({ pieces }) => pieces)
        .filter(({ kind }) => kind === "sheet")
        .reduce((sum, { fixings }) => sum + fixings.length, 0);
    const put = edited(bouleau, widenEdgeZone(bouleau, id, 1200));
    const closer = edited(put, spaceEdgeZone(put, id, 200));
    expect(rows(closer)).toBeGreaterThan(rows(bouleau));
  });

  it("belongs to sheets alone", () => {
    const boarded = bouleau.project.claddings.find(({ kind }) => kind === "boards")?.id ?? "";
    expect(widenEdgeZone(bouleau, boarded, 1000)).toBeUndefined();
    expect(spaceEdgeZone(bouleau, id, 200)).toBeUndefined();
  });
});

describe("a side of a zone", () => {
  it("takes what it meets along with it, and the gap between them stays", () => {
    const moved = edited(bouleau, moveZoneSide(bouleau, boards, "right", 2500));
    expect(zonesOf(moved)).toEqual([
      ["boards", ["left end", 2500], undefined],
      ["sheets", [2510, "right end"], undefined],
    ]);
    expect(changed(moved, moveZoneSide(moved, sheets, "left", 2410))).toEqual(bouleau.document);
  });

  it("takes along every zone on its line, though they meet in turn", () => {
    const low = edited(bouleau, splitZone(bouleau, sheets, { axis: "y", at: 1400 }));
    const moved = edited(low, moveZoneSide(low, { face: "front", id: "sheets-2" }, "left", 2450));
    expect(zonesOf(moved)?.map(([, x]) => x)).toEqual([
      ["left end", 2440],
      [2450, "right end"],
      [2450, "right end"],
    ]);
  });

  it("that is an end of the face has no place to move", () => {
    expect(moveZoneSide(bouleau, boards, "left", 100)).toBeUndefined();
    expect(moveZoneSide(bouleau, boards, "top", 100)).toBeUndefined();
  });

  it("moved past the other is refused", () => {
    expect(refusals(bouleau, moveZoneSide(bouleau, sheets, "left", 8000))).toContain("F014");
  });
});

describe("a zone parted in two", () => {
  it("leaves the cladding's joint between them, and the one after stands behind the one before", () => {
    const parted = edited(bouleau, splitZone(bouleau, sheets, { axis: "x", at: 6100 }));
    expect(zonesOf(parted)).toEqual([
      ["boards", ["left end", 2400], undefined],
      ["sheets", [2410, 6100], undefined],
      ["sheets-2", [6108, "right end"], undefined],
    ]);
    const level = edited(bouleau, splitZone(bouleau, sheets, { axis: "y", at: 1400 }));
    expect(zonesOf(level)?.slice(1)).toEqual([
      ["sheets", [2410, "right end"], [-50, 1400]],
      ["sheets-2", [2410, "right end"], [1408, 3010]],
    ]);
  });

  it("of level boards stays on their rod, and is set out", () => {
    const parted = edited(bouleau, splitZone(bouleau, boards, { axis: "x", at: 1900 }));
    expect(parted.project.rods?.[0]?.zones).toContainEqual({ face: "front", zone: "boards-2" });
    const { faces } = setOut(parted.project, demandsOf(parted.project));
    const laid = faces
      .find(({ id }) => id === "front")
      ?.pieces.filter(({ zone, kind }) => zone === "boards-2" && kind === "board");
    expect(laid?.length).toBeGreaterThan(10);
  });

  it("keeps each pin in the part where it lies", () => {
    const pinned = edited(bouleau, pinJoint(bouleau, sheets, { axis: "x", from: 4800, to: 4800 }));
    const both = edited(pinned, pinJoint(pinned, sheets, { axis: "x", from: 6600, to: 6600 }));
    const parted = edited(both, splitZone(both, sheets, { axis: "x", at: 6100 }));
    expect(faceById(parted.project, "front")?.zones.map(({ joints }) => joints?.pinned?.x)).toEqual([
      undefined,
      [4800],
      [6600],
    ]);
  });

  it("is not parted at a line outside it", () => {
    expect(splitZone(bouleau, sheets, { axis: "x", at: 2000 })).toBeUndefined();
    expect(splitZone(bouleau, sheets, { axis: "x", at: 7195 })).toBeUndefined();
  });
});

describe("a zone's cladding", () => {
  it("of sheets instead of level boards takes the zone off its rod, and back on it", () => {
    const clad = edited(bouleau, cladZone(bouleau, boards, { cladding: "grey-sheets" }));
    expect(clad.project.rods?.[0]).toMatchObject({
      zones: [{ face: "west", zone: "boards" }],
      leads: ["west"],
    });
    const back = edited(clad, cladZone(clad, boards, { cladding: "charred-boards" }));
    expect(back.project.rods?.[0]?.zones).toContainEqual({ face: "front", zone: "boards" });
  });

  it("of level boards where there is no rod makes one", () => {
    const north = { face: "north", id: "sheets" };
    const { rods, ...without } = bouleau.document as Record<string, unknown> & { rods: unknown };
    expect(rods).toBeDefined();
    const bare = cladZone(
      sourceOf({
        ...without,
        faces: (without.faces as unknown[])
          .filter((_, i) => i > 1 && i < 4)
          .map((face) => ({ ...(face as object), openings: [] })),
        corners: [],
        survey: [],
        crews: [],
      }),
      north,
      { cladding: "charred-boards" },
    );
    expect(bare?.operations.at(-1)).toEqual({
      op: "add",
      path: "/rods",
      value: [
        { id: "rod-1", zones: [{ face: "north", zone: "sheets" }], leads: ["north"], lineTolerance: 2 },
      ],
    });
  });
});

describe("a zone merged into its neighbour", () => {
  it("gives it its place, and leaves its rod", () => {
    const merged = edited(bouleau, removeZone(bouleau, boards));
    expect(zonesOf(merged)).toEqual([["sheets", ["left end", "right end"], undefined]]);
    expect(merged.project.rods?.[0]?.zones).toEqual([{ face: "west", zone: "boards" }]);
  });

  it("undoes the parting that made it", () => {
    const parted = edited(bouleau, splitZone(bouleau, sheets, { axis: "x", at: 6100 }));
    expect(changed(parted, removeZone(parted, { face: "front", id: "sheets-2" }))).toEqual(bouleau.document);
  });

  it("is not done where no neighbour fills a side alone", () => {
    expect(removeZone(starter, sheets)).toBeUndefined();
    const parted = edited(bouleau, splitZone(bouleau, sheets, { axis: "y", at: 1400 }));
    // The boards are higher than either part of the sheets, but the parts lie on one another.
    expect(zonesOf(edited(parted, removeZone(parted, sheets)))).toEqual([
      ["boards", ["left end", 2400], undefined],
      ["sheets-2", [2410, "right end"], [-50, 3010]],
    ]);
    // Both parts together are as high as the boards.
    expect(zonesOf(edited(parted, removeZone(parted, boards)))?.map(([, x]) => x)).toEqual([
      ["left end", "right end"],
      ["left end", "right end"],
    ]);
  });
});

describe("a joint of sheets", () => {
  const pinsOf = (source: Source) => faceById(source.project, "front")?.zones[1]?.joints;

  it("is pinned, moved with its pin, and freed without a trace", () => {
    const pinned = edited(bouleau, pinJoint(bouleau, sheets, { axis: "x", from: 6600, to: 6600 }));
    expect(pinsOf(pinned)).toEqual({ pinned: { x: [6600] } });
    const moved = edited(pinned, pinJoint(pinned, sheets, { axis: "x", from: 6600, to: 6500 }));
    expect(pinsOf(moved)).toEqual({ pinned: { x: [6500] } });
    expect(changed(moved, unpinJoint(moved, sheets, { axis: "x", at: 6500 }))).toEqual(bouleau.document);
  });

  it("lies where it is pinned, once it is set out", () => {
    const pinned = edited(bouleau, pinJoint(bouleau, sheets, { axis: "x", from: 6300, to: 6300 }));
    const { faces } = setOut(pinned.project, demandsOf(pinned.project));
    const xs = faces
      .find(({ id }) => id === "front")
      ?.joints.filter(({ kind, along }) => kind === "sheet joint" && along === "y")
      .map(({ region }) => Math.min(...region.map(([x]) => x)));
    expect(xs).toContain(6296);
  });

  it("is kept out of a band with the pins that lie in it, until it is allowed again", () => {
    const level = edited(bouleau, pinJoint(bouleau, sheets, { axis: "y", from: 2400, to: 2400 }));
    const pinned = edited(level, pinJoint(level, sheets, { axis: "x", from: 6600, to: 6600 }));
    const kept = edited(pinned, forbidBand(pinned, sheets, { axis: "x", band: [6596, 6604] }));
    expect(pinsOf(kept)).toEqual({ pinned: { y: [2400] }, forbidden: { x: [[6596, 6604]] } });
    expect(pinsOf(edited(kept, allowBand(kept, sheets, { axis: "x", index: 0 })))).toEqual({
      pinned: { y: [2400] },
    });
    expect(allowBand(kept, sheets, { axis: "x", index: 3 })).toBeUndefined();
  });
});

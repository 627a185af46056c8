/** Openings and penetrations added, copied, placed and taken out: ids stay single, and the rest of the file as it was. */
import { describe, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import { nextId } from "../../src/project/editing/change.ts";
import {
  addOpening,
  changeOpeningKind,
  copyOpening,
  placeOpening,
  removeOpening,
  roomForOpening,
  standOpeningOnBase,
} from "../../src/project/editing/openings.ts";
import {
  addPenetration,
  placePenetration,
  removePenetration,
  roomForPenetration,
} from "../../src/project/editing/penetrations.ts";
import { faceById } from "../../src/project/lookup.ts";
import { starterProject } from "../../src/project/starter.ts";
import { setOut } from "../../src/setout/set-out.ts";
import { say } from "../../src/text/say.ts";
import { changed, edited, exampleSource, refusals, sourceOf } from "../helpers/editing.ts";

const english = { language: "en", units: "mm", denominator: 16 } as const;
const bouleau = exampleSource("atelier-bouleau");
const starter = sourceOf(starterProject());
const faceOf = (source: typeof starter, id: string) => {
  const face = faceById(source.project, id);
  if (!face) throw new Error(`no face ${id}`);
  return face;
};

describe("an opening", () => {
  it("is added with an id that none bears, at the end of its face's list", () => {
    const change = addOpening(bouleau, {
      face: "north",
      kind: "window",
      rect: { x: [600, 1500], y: [900, 2100] },
    });
    expect(change?.added).toEqual({ face: "north", id: "W5" });
    expect(say(change?.says ?? { key: "", values: {} }, english)).toBe("Add window W5");
    const { openings } = faceOf(edited(bouleau, change), "north");
    expect(openings.map(({ id }) => id)).toEqual(["W4", "W5"]);
    expect(openings[1]).toMatchObject({ kind: "window", x: [600, 1500], y: [900, 2100] });
  });

  it("changes no mark on another face", () => {
    const change = addOpening(bouleau, {
      face: "north",
      kind: "window",
      rect: { x: [600, 1500], y: [900, 2100] },
    });
    const [was, is] = [bouleau, edited(bouleau, change)].map(({ project }) =>
      setOut(project, demandsOf(project)).faces.filter(({ id }) => id !== "north"),
    );
    expect(is?.map(({ pieces }) => pieces.map(({ mark }) => mark))).toEqual(
      was?.map(({ pieces }) => pieces.map(({ mark }) => mark)),
    );
  });

  it("finds room in the middle of its face, and beside what stands there", () => {
    const rect = roomForOpening(faceOf(starter, "front"), { kind: "window", width: 900, height: 1200 });
    // W1 takes 1800 to 3000 of 4800; 200 mm are kept free beside it.
    expect(rect).toEqual({ x: [3200, 4100], y: [900, 2100] });
    const bare = faceOf(edited(starter, removeOpening(starter, { face: "front", id: "W1" })), "front");
    expect(roomForOpening(bare, { kind: "window", width: 900, height: 1200 }).x).toEqual([1950, 2850]);
  });

  it("where there is no room is refused with what it lies over", () => {
    const rect = roomForOpening(faceOf(starter, "front"), { kind: "window", width: 2400, height: 1200 });
    expect(refusals(starter, addOpening(starter, { face: "front", kind: "window", rect }))).toEqual(["F013"]);
  });

  it("that is a door stands on the base where its threshold is low", () => {
    const add = (y: readonly [number, number]) => {
      const change = addOpening(starter, { face: "front", kind: "door", rect: { x: [300, 1200], y } });
      return faceOf(edited(starter, change), "front").openings[1];
    };
    expect(add([0, 2100])).toMatchObject({ id: "D1", kind: "door", toBase: true });
    expect(add([300, 2300])?.toBase).toBeUndefined();
  });

  it("is copied with all that the file says of it, beside itself", () => {
    const change = copyOpening(starter, { face: "front", id: "W1" });
    const [first, copy] = faceOf(edited(starter, change), "front").openings;
    expect(copy).toEqual({ ...first, id: "W2", x: [3200, 4400] });
  });

  it("that is a recess is copied without what lines it", () => {
    const change = copyOpening(bouleau, { face: "east", id: "R1" });
    const copy = faceOf(edited(bouleau, change), "east").openings[1];
    expect(copy).toMatchObject({ id: "R2", kind: "recess", depth: 900, toBase: true });
    expect([copy?.linedBy, copy?.soffit]).toEqual([undefined, undefined]);
  });

  it("is placed as it was written", () => {
    const imperial = exampleSource("imperial");
    const face = imperial.project.faces.find(({ openings }) => openings.length > 0);
    const opening = face?.openings[0];
    if (!face || !opening) throw new Error("no opening");
    const ref = { face: face.id, id: opening.id };
    const written = changed(imperial, placeOpening(imperial, ref, { x: [762, 1676.4], y: [914.4, 2100] }));
    const path = imperial.project.faces.indexOf(face);
    const raw = (
      written as typeof imperial.document & { faces: { openings: { x: unknown; y: unknown }[] }[] }
    ).faces[path]?.openings[0];
    expect(raw?.x).toEqual(["2'-6\"", "5'-6\""]);
    expect(raw?.y).toEqual(["3'-0\"", 2100]);
    expect(placeOpening(imperial, { face: "nowhere", id: "W1" }, { x: [0, 1], y: [0, 1] })).toBeUndefined();
  });

  it("is made another kind, stood on the base, and taken out", () => {
    const ref = { face: "front", id: "W1" };
    expect(faceOf(edited(starter, changeOpeningKind(starter, ref, "door")), "front").openings[0]?.kind).toBe(
      "door",
    );
    const stood = edited(starter, standOpeningOnBase(starter, ref, true));
    expect(faceOf(stood, "front").openings[0]?.toBase).toBe(true);
    expect(changed(stood, standOpeningOnBase(stood, ref, false))).toEqual(starter.document);
    expect(faceOf(edited(starter, removeOpening(starter, ref)), "front").openings).toEqual([]);
  });
});

describe("a penetration", () => {
  it("is added where there is none yet, and beside others, named after its face", () => {
    const face = faceOf(starter, "front");
    const at = roomForPenetration(face, "duct", 160);
    const one = edited(
      starter,
      addPenetration(starter, { face: "front", kind: "duct", round: { at, diameter: 160 } }),
    );
    expect(faceOf(one, "front").penetrations).toEqual([
      { id: "FRONTP1", kind: "duct", x: at[0], y: at[1], diameter: 160 },
    ]);
    // W1 takes 1800 to 3000; the duct's edge keeps 200 mm off.
    expect(at).toEqual([3280, 1900]);
    const two = edited(
      one,
      addPenetration(one, { face: "front", kind: "tap", round: { at: [300, 450], diameter: 40 } }),
    );
    expect(faceOf(two, "front").penetrations?.map(({ id }) => id)).toEqual(["FRONTP1", "FRONTP2"]);
  });

  it("is placed and taken out", () => {
    const ref = { face: "west", id: "WP2" };
    const moved = edited(bouleau, placePenetration(bouleau, ref, { at: [720, 1800], diameter: 125 }));
    expect(faceOf(moved, "west").penetrations?.[1]).toMatchObject({ x: 720, y: 1800, diameter: 125 });
    const out = edited(bouleau, removePenetration(bouleau, ref));
    expect(faceOf(out, "west").penetrations?.map(({ id }) => id)).toEqual(["WP1", "WP3"]);
    expect(refusals(bouleau, placePenetration(bouleau, ref, { at: [2200, 1800], diameter: 125 }))).toEqual([
      "F017",
    ]);
  });
});

describe("a recess", () => {
  it("is taken out with the faces that line it, their openings and their places on rods", () => {
    const less = edited(bouleau, removeOpening(bouleau, { face: "east", id: "R1" }));
    expect(less.project.faces.map(({ id }) => id)).toEqual(["west", "front", "east", "north"]);
    expect(less.project.rods?.flatMap(({ zones }) => zones.map(({ face }) => face))).not.toContain(
      "recess-back",
    );
    expect(faceOf(less, "east").openings).toEqual([]);
  });

  it("leaves what lines another besides", () => {
    const shared = edited(bouleau, {
      operations: [
        {
          op: "add",
          path: `/faces/${bouleau.project.faces.findIndex(({ id }) => id === "west")}/openings/0/linedBy`,
          value: ["recess-left"],
        },
      ],
      says: { key: "", values: {} },
    });
    const less = edited(shared, removeOpening(shared, { face: "east", id: "R1" }));
    expect(less.project.faces.map(({ id }) => id)).toContain("recess-left");
    expect(less.project.faces.map(({ id }) => id)).not.toContain("recess-right");
  });
});

describe("the next id", () => {
  it("follows the greatest number of its row", () => {
    expect(nextId(starter, "W", [])).toBe("W1");
    expect(nextId(starter, "W", ["W3", "W12", "WP30", "D40", "W-9"])).toBe("W13");
  });

  it("is never one that was taken out: marks on paper speak of it", () => {
    const window = { face: "front", kind: "window", rect: { x: [3200, 4100], y: [900, 2100] } } as const;
    const two = edited(starter, addOpening(starter, window));
    const one = edited(two, removeOpening(two, { face: "front", id: "W2" }));
    expect(addOpening(one, window)?.added.id).toBe("W3");
    const none = edited(one, removeOpening(one, { face: "front", id: "W1" }));
    expect(addOpening(none, window)?.added.id).toBe("W3");
    const duct = { face: "west", kind: "duct", round: { at: [300, 450], diameter: 40 } } as const;
    const less = edited(bouleau, removePenetration(bouleau, { face: "west", id: "WP3" }));
    expect(addPenetration(less, duct)?.added.id).toBe("WP4");
  });
});

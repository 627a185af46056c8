/** A soffit: where it lies in the building, what it fills, and that it follows its recess. Common practice throughout. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import { design } from "../../src/design.ts";
import { inBuilding } from "../../src/geometry/frame.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { regionArea } from "../../src/geometry/region.ts";
import { applyPatch } from "../../src/project/edit.ts";
import { readDocument } from "../../src/project/read.ts";
import type { Project } from "../../src/project/schema/project.ts";
import type { Facade, FaceLayout, Piece } from "../../src/setout/facade.ts";
import { createFaceMemo } from "../../src/setout/memo.ts";
import { setOut } from "../../src/setout/set-out.ts";

// biome-ignore lint/suspicious/noExplicitAny: edits of the raw document.
type Loose = any;

function projectWith(edit: (document: Loose) => void = () => {}) {
  const document = JSON.parse(readFileSync("examples/porch.outerleaf.json", "utf8"));
  edit(document);
  const read = readDocument(document, "porch");
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.project;
}

const facadeWith = (edit?: (document: Loose) => void): Facade => design(projectWith(edit)).facade;

function soffitOf(facade: Facade): FaceLayout {
  const found = facade.faces.find(({ id }) => id === "front-R1-soffit");
  if (!found) throw new Error("no soffit");
  return found;
}

type Box = readonly (readonly [number, number])[];

/** Least and greatest of X, Y and Z: the porch is square to its axes. */
function boxOf({ frame }: FaceLayout, piece: Piece): Box {
  const { x, y } = polygonBounds(piece.outline);
  const corners = x.flatMap((px) =>
    y.flatMap((py) => piece.z.map((pz) => inBuilding(frame, { x: px, y: py, z: pz }))),
  );
  return [0, 1, 2].map((axis) => {
    const values = corners.map((corner) => corner[axis] as number);
    return [Math.min(...values), Math.max(...values)] as const;
  });
}

/** By how much two boxes run into one another (mm); nothing where they touch or stand apart. */
function overlap(a: Box, b: Box): number {
  return Math.max(
    0,
    Math.min(
      ...a.map(([from, to], axis) => Math.min(to, b[axis]?.[1] ?? 0) - Math.max(from, b[axis]?.[0] ?? 0)),
    ),
  );
}

const TIMBER = ["board", "sheet", "batten", "rail"];

describe("the soffit of a recess", () => {
  const facade = facadeWith();
  const soffit = soffitOf(facade);

  it("hangs under the head of its recess: z runs down, y into the building", () => {
    expect(inBuilding(soffit.frame, { x: 0, y: 0, z: 0 })).toEqual([2000, 0, 2300]);
    expect(inBuilding(soffit.frame, { x: 100, y: 200, z: 75 })).toEqual([2100, 200, 2225]);
  });

  it("runs into nothing that lines the recess or stands over it", () => {
    const others = facade.faces.filter(({ id }) => id !== soffit.id);
    const worst = soffit.pieces
      .filter(({ kind }) => TIMBER.includes(kind))
      .flatMap((piece) =>
        others.flatMap((face) =>
          face.pieces
            .filter(({ kind }) => TIMBER.includes(kind))
            .map((other) => overlap(boxOf(soffit, piece), boxOf(face, other))),
        ),
      );
    expect(worst.length).toBeGreaterThan(1000);
    expect(Math.max(...worst)).toBe(0);
  });

  it("keeps an open joint to the sides and the back, and ends behind the wall's cladding in front", () => {
    const { x, y } = polygonBounds(soffit.zones[0]?.region ?? []);
    // Linings 75 mm deep in a recess of 1800 by 1200; joint 8; the front's cladding begins 31 mm out.
    expect(x).toEqual([83, 1717]);
    expect(y).toEqual([-31, 1117]);
  });

  it("is filled exactly by boards and joints", () => {
    const boards = soffit.pieces.filter(({ kind }) => kind === "board");
    const sum = [
      ...boards.map((piece) => regionArea(piece)),
      ...soffit.joints.map((joint) => regionArea({ outline: joint.region, holes: joint.holes })),
    ].reduce((total, area) => total + area, 0);
    expect(sum).toBeCloseTo((1717 - 83) * (1117 + 31), 3);
  });

  it("is screwed through battens into joists or blocks between them", () => {
    const battens = soffit.pieces.filter(({ kind }) => kind === "batten");
    const known = new Set([...soffit.solids.map(({ id }) => id)]);
    expect(soffit.solids.some(({ kind }) => kind === "joist")).toBe(true);
    expect(soffit.solids.some(({ kind }) => kind === "stud")).toBe(false);
    for (const { fixings } of battens) {
      expect(fixings.length).toBeGreaterThan(1);
      for (const { into } of fixings) expect(known.has(into)).toBe(true);
    }
  });

  it("is meshed where its cavity opens, at the front and at the back", () => {
    expect(soffit.vents.map(({ position }) => position).sort()).toEqual(["base", "top"]);
  });

  it("takes level boards across the joists and sheets as well", () => {
    const level = soffitOf(
      facadeWith((document) => {
        document.claddings.push({
          ...document.claddings[1],
          id: "across",
          direction: "horizontal",
          maxEqualWidthsTouching: 3,
        });
        document.buildUps.push({ ...document.buildUps[0], id: "bare-boards" });
        Object.assign(document.faces[0].openings[0].soffit, { cladding: "across", buildUp: "bare-boards" });
      }),
    );
    expect(level.pieces.some(({ kind, grain }) => kind === "board" && grain === "x")).toBe(true);
    const sheeted = soffitOf(
      facadeWith((document) => {
        Object.assign(document.faces[0].openings[0].soffit, {
          cladding: "grey-sheets",
          buildUp: "bare-sheets",
        });
      }),
    );
    expect(sheeted.pieces.some(({ kind }) => kind === "sheet")).toBe(true);
  });

  it("follows its recess, and an edit elsewhere changes none of its marks", () => {
    const deeper = soffitOf(
      facadeWith((document) => {
        Object.assign(document.faces[0].openings[0].soffit.joists, { spacing: 305 });
      }),
    );
    expect(deeper.solids.length).toBeGreaterThan(soffit.solids.length);
    const moved = soffitOf(
      facadeWith((document) => Object.assign(document.faces[0].openings[1], { x: [4700, 5600] })),
    );
    expect(moved.pieces.map(({ mark }) => mark)).toEqual(soffit.pieces.map(({ mark }) => mark));
  });

  it("is remembered by its own inputs alone", () => {
    const memo = createFaceMemo({ spare: 50, shareds: 2 });
    design(projectWith(), { faces: memo });
    const before = memo.made;
    const edited = projectWith((document) =>
      Object.assign(document.faces[0].openings[1], { x: [4700, 5600] }),
    );
    expect(JSON.stringify(design(edited, { faces: memo }))).toBe(JSON.stringify(design(edited)));
    // The front with its window, and the soffit, which is told of the wall it opens from.
    expect(memo.made - before).toBe(2);
  });

  it("says what it does not work: screws overhead", () => {
    const said = design(projectWith()).findings.filter(({ code }) => code === "S019");
    expect(said.map(({ outcome }) => outcome)).toEqual(["attention"]);
  });

  it("is not set out without the recess's depth, and S015 says so", () => {
    const { facade: without, findings } = design(
      projectWith((document) => delete document.faces[0].openings[0].depth),
    );
    expect(without.faces.some(({ id }) => id.endsWith("soffit"))).toBe(false);
    expect(findings.some(({ code, outcome }) => code === "S015" && outcome === "attention")).toBe(true);
  });
});

describe("a soffit whose courses fit no rod", () => {
  const tight = (change: object): Project =>
    projectWith((document) => {
      const recess = document.faces
        .flatMap(({ openings }: Loose) => openings)
        .find(({ soffit: spec }: Loose) => spec);
      const like = document.claddings.find(({ kind }: Loose) => kind === "boards");
      document.claddings.push({ ...like, id: "overhead", direction: "horizontal", ...change });
      // Boards laid across the joists hang on battens alone.
      const built = document.buildUps.find(({ id }: Loose) => id === recess.soffit.buildUp);
      const layers = built.layers.filter(({ kind }: Loose) => kind !== "rail");
      document.buildUps.push({ ...built, id: "overhead", layers });
      Object.assign(recess.soffit, { cladding: "overhead", buildUp: "overhead" });
    });
  const rodOf = (project: Project) =>
    setOut(project, demandsOf(project)).findings.find(
      ({ code, where }) => code === "S001" && where.face === "front-R1-soffit",
    );

  it.each([
    { widths: [94], gapBand: [9, 9.05] },
    { widths: [120], gapBand: [8, 8.1] },
    { widths: [94, 126], gapBand: [8, 8.02], maxEqualWidthsTouching: 1 },
  ])("says which gaps are near, and offers changes that make one possible: %o", (change) => {
    const project = tight(change);
    const said = rodOf(project);
    expect(said?.outcome).toBe("fail");
    const edits = (said?.choices ?? []).flatMap(({ edit }) => (edit ? [edit] : []));
    expect(edits.length).toBeGreaterThan(0);
    for (const edit of edits) {
      const patched = applyPatch(project, edit);
      if (!patched.ok) throw new Error(JSON.stringify(edit));
      expect(rodOf(patched.document as Project), JSON.stringify(edit)).toMatchObject({ outcome: "pass" });
    }
    // One of them changes the recess's depth, and the walls that line it stay joined.
    const deepened = edits.filter((edit) => edit.some(({ path }) => path.endsWith("/depth")));
    expect(deepened.length).toBeGreaterThan(0);
    for (const edit of deepened) {
      const patched = applyPatch(project, edit);
      const { faces } = (patched.ok ? patched.document : project) as Project;
      const lining = (id: string) => faces.find((face) => face.id === id)?.plan;
      const depth = faces[0]?.openings.find(({ id }) => id === "R1")?.depth;
      expect(depth).not.toBe(1200);
      expect(lining("porch-left")?.to).toEqual([2000, depth]);
      expect(lining("porch-back")).toEqual({ from: [2000, depth], to: [3800, depth] });
      expect(lining("porch-right")?.from).toEqual([3800, depth]);
    }
    if (said?.says.key !== "setout.soffit.refused") return;
    const { below, above } = said.says.values as { below: number; above: number };
    const [least, most] = change.gapBand as [number, number];
    expect(below).toBeLessThan(least);
    expect(above).toBeGreaterThan(most);
  });
});

/** An edit on one face lays out that face alone, and the design is the same as from scratch. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import { design } from "../../src/design.ts";
import { readDocument } from "../../src/project/read.ts";
import { createReadMemo } from "../../src/project/read-memo.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { createFaceMemo } from "../../src/setout/memo.ts";

// biome-ignore lint/suspicious/noExplicitAny: edits of the raw document.
type Loose = any;

function demoWith(edit: (document: Loose) => void = () => {}): Project {
  const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
  edit(document);
  const result = readDocument(document, "memo");
  if (!result.ok) throw new Error(JSON.stringify(result.findings));
  return result.project;
}

/** Four walls, three sides of the recess and its soffit. */
const EVERY = 8;

const front = (document: Loose): Loose => document.faces.find(({ id }: Loose) => id === "front");

/** Faces laid out for an edit after the demo itself, with the design held to the one from scratch. */
function madeFor(edit: (document: Loose) => void): number {
  const memo = createFaceMemo({ spare: 50, shareds: 2 });
  design(demoWith(), { faces: memo });
  const before = memo.made;
  const edited = demoWith(edit);
  expect(JSON.stringify(design(edited, { faces: memo }))).toBe(JSON.stringify(design(edited)));
  return memo.made - before;
}

describe("laying out again after an edit", () => {
  it("lays out nothing when nothing that matters changed", () => {
    expect(madeFor(() => {})).toBe(0);
    expect(madeFor((document) => Object.assign(document, { title: "Another name", revision: "B" }))).toBe(0);
    expect(madeFor((document) => document.pile.boards.pop())).toBe(0);
  });

  it("lays out one face when a window moves along it", () => {
    expect(madeFor((document) => Object.assign(front(document).openings[1], { x: [790, 1690] }))).toBe(1);
  });

  it("solves no rod again when a window moves along its wall, and solves it when a sill moves", () => {
    const memo = createFaceMemo({ spare: 50, shareds: 2 });
    design(demoWith(), { faces: memo });
    const first = memo.solved;
    expect(first).toBeGreaterThan(0);
    design(
      demoWith((document) => Object.assign(front(document).openings[1], { x: [790, 1690] })),
      { faces: memo },
    );
    expect(memo.solved).toBe(first);
    design(
      demoWith((document) => Object.assign(front(document).openings[1], { y: [900, 2100] })),
      { faces: memo },
    );
    expect(memo.solved).toBeGreaterThan(first);
  });

  it("lays out the faces of the rod when its lines move", () => {
    const made = madeFor((document) => Object.assign(front(document).openings[1], { y: [900, 2100] }));
    expect(made).toBe(2);
  });

  it("lays out every face when what they share changes", () => {
    expect(madeFor((document) => Object.assign(document.limits.clearances.jamb, { value: 12 }))).toBe(EVERY);
  });

  it.each([
    { spare: 0, anew: 1 },
    { spare: 1, anew: 1 },
    { spare: 2, anew: 0 },
  ])("keeps the faces at hand and $spare more", ({ spare, anew }) => {
    const memo = createFaceMemo({ spare, shareds: 1 });
    const at = (x: number) =>
      demoWith((document) => Object.assign(front(document).openings[1], { x: [x, x + 900] }));
    for (const x of [750, 790, 830]) design(at(x), { faces: memo });
    expect(memo.made).toBe(EVERY + 2);
    design(at(830), { faces: memo });
    expect(memo.made).toBe(EVERY + 2);
    design(at(750), { faces: memo });
    expect(memo.made).toBe(EVERY + 2 + anew);
  });
});

describe("what a project asks", () => {
  const original: Loose = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
  const known = createReadMemo();
  const readAgain = (document: Loose): Project => {
    const result = readDocument(document, "memo", known);
    if (!result.ok) throw new Error(JSON.stringify(result.findings));
    return result.project;
  };

  it("is gathered anew for all but an edit of faces and rods, and is always what a fresh look gathers", () => {
    const memo = createFaceMemo({ spare: 1, shareds: 1 });
    const first = design(readAgain(original), { faces: memo }).demands;
    const faces = structuredClone(original.faces);
    front({ faces }).openings[1].x = [760, 1660];
    const moved = readAgain({ ...original, faces });
    const kept = design(moved, { faces: memo }).demands;
    expect(kept).toBe(first);
    expect(kept).toEqual(demandsOf(moved));
    const claddings = structuredClone(original.claddings);
    claddings.find(({ kind }: Loose) => kind === "boards").thickness += 3;
    const thicker = readAgain({ ...original, claddings });
    const anew = design(thicker, { faces: memo }).demands;
    expect(anew).not.toEqual(first);
    expect(anew).toEqual(demandsOf(thicker));
  });
});

/** A facade laid again for openings as measured: what stays, what is cut again, what the file takes, and that it is set out so. */
import { describe, expect, it } from "vitest";
import { type Design, design } from "../../src/design.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { intersect, regionArea } from "../../src/geometry/region.ts";
import { setEnd, setMeasured, takeLaid } from "../../src/project/editing/as-built.ts";
import type { Source } from "../../src/project/editing/change.ts";
import { type FaceLaidAgain, layAgain } from "../../src/site/as-built/lay-again.ts";
import { measuredOf } from "../../src/site/as-built/measured.ts";
import { takenFaces } from "../../src/site/as-built/taken.ts";
import type { Entry, Stage } from "../../src/site/journal/entry.ts";
import { foldJournal } from "../../src/site/journal/fold.ts";
import { edited, exampleSource, sourceOf } from "../helpers/editing.ts";

const source = exampleSource("atelier-bouleau");
const drawn = design(source.project);

/** A window of the front or the west, so much wider at its left than drawn (mm). */
function widerBy(of: Source, by: number, at = { face: "west", opening: "W3" }): Source {
  const opening = of.project.faces
    .find(({ id }) => id === at.face)
    ?.openings.find(({ id }) => id === at.opening);
  if (!opening) throw new Error("no such opening");
  const { x } = opening;
  return edited(of, setMeasured(of, at, { left: x[0] - by, width: x[1] - x[0] + by }));
}

function told(stages: Readonly<Record<string, Stage>>) {
  return foldJournal(
    Object.entries(stages).map(
      ([piece, stage], i): Entry => ({
        id: `0123456789abcdef-${i + 1}`,
        told: "2026-05-04T08:00:00Z",
        kind: "piece",
        place: { piece },
        body: { stage },
      }),
    ),
  );
}

function again(of: Source, at: Design, stages: Readonly<Record<string, Stage>> = {}, face = "west") {
  const layout = at.facade.faces.find(({ id }) => id === face);
  if (!layout) throw new Error("no such face");
  const state = told(stages);
  const measured = measuredOf(of.project, state);
  return {
    measured,
    laid: layAgain({ project: of.project, demands: at.demands, face: layout, measured, told: state }),
  };
}

function found(laid: ReturnType<typeof layAgain>): FaceLaidAgain {
  if (laid.kind !== "found") throw new Error(`cannot be laid: ${laid.marks.join(", ")}`);
  return laid;
}

const BESIDE_LEFT = ["W-B206a", "W-B207a", "W-B208a", "W-B209c", "W-B210a"];

describe("a face laid again", () => {
  it("stays as it is where nothing was measured, or all as drawn", () => {
    expect(found(again(source, drawn).laid)).toMatchObject({ pieces: [], gaps: [], cost: 0, least: 0 });
    expect(found(again(widerBy(source, 0), drawn).laid).pieces).toEqual([]);
  });

  it("lets the clearance take what its band takes, and moves no more than that", () => {
    const laid = found(again(widerBy(source, 2), drawn).laid);
    expect(laid.cost).toBe(0);
    expect(laid.pieces.every(({ fate }) => fate === "moved")).toBe(true);
    for (const { kind, after, band } of laid.gaps) {
      expect(after).toBeGreaterThanOrEqual(band[0]);
      expect(after).toBeLessThanOrEqual(band[1]);
      expect(["joint", "clearance"]).toContain(kind);
    }
  });

  it("changes paper alone while nothing is cut, trims what is cut, and costs more where it is finished", () => {
    const wide = widerBy(source, 6);
    const uncut = found(again(wide, drawn).laid);
    expect(uncut.cost).toBe(0);
    expect(uncut.pieces.map(({ mark, fate }) => `${mark} ${fate}`)).toEqual(
      BESIDE_LEFT.map((mark) => `${mark} new size`),
    );
    const cut = found(again(wide, drawn, { "W-B206a": "cut", "W-B207a": "finished" }).laid);
    // 1 for trimming what is cut, 3 for what is finished: the usual weights.
    expect(cut).toMatchObject({ cost: 4, least: 4 });
    expect(cut.pieces.map(({ mark, fate }) => `${mark} ${fate}`)).toEqual([
      "W-B206a trimmed",
      "W-B207a trimmed",
      "W-B208a new size",
      "W-B209c new size",
      "W-B210a new size",
    ]);
    for (const { before, after } of cut.pieces) expect(after.x[1]).toBe(before.x[1] - 6);
  });

  it("makes a cut piece again where it is too short, and never touches a fixed one", () => {
    const narrow = widerBy(source, -6);
    const cut = found(again(narrow, drawn, { "W-B206a": "cut" }).laid);
    expect(cut.cost).toBe(2);
    expect(cut.pieces.find(({ mark }) => mark === "W-B206a")).toMatchObject({ fate: "made again" });
    const fixed = found(again(narrow, drawn, { "W-B206a": "fixed" }).laid);
    expect(fixed.pieces.map(({ mark }) => mark)).not.toContain("W-B206a");
    expect(fixed.standing).toHaveLength(1);
    expect(fixed.standing[0]).toMatchObject({ marks: ["W-B206a"], opening: "W3", side: "left" });
    // Drawn with its clearance, and six more as it stands.
    expect((fixed.standing[0]?.after ?? 0) - (fixed.standing[0]?.nominal ?? 0)).toBe(6);
  });

  it("needs a jamb's own place: a width alone moves nothing", () => {
    const at = { face: "west", opening: "W3" };
    const width = edited(source, setMeasured(source, at, { width: 640 }));
    const [opening] = measuredOf(width.project).openings;
    expect(opening?.sides.map(({ measured }) => measured)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
    expect(found(again(width, drawn).laid).pieces).toEqual([]);
  });

  it("goes with the end of a wall that was measured", () => {
    const short = edited(source, setEnd(source, { face: "north", end: "right" }, measuredEnd("north") - 8));
    const laid = found(again(short, drawn, {}, "north").laid);
    const last = laid.pieces.filter(({ fate }) => fate === "new size");
    expect(last.length).toBeGreaterThan(0);
    expect(laid.pieces.every(({ after, before }) => after.x[1] <= before.x[1])).toBe(true);
  });

  it("tells by what the jambs lean from the diagonals: d₁² − d₂² = 4 · w · s", () => {
    const at = { face: "west", opening: "W3" };
    // A frame of 600 by 800 that leans 8 mm to the right: by Pythagoras.
    const diagonals = [Math.hypot(608, 800), Math.hypot(592, 800)] as const;
    const lean = edited(source, setMeasured(source, at, { width: 600, diagonals }));
    expect(measuredOf(lean.project).openings[0]?.lean).toBeCloseTo(8, 2);
  });
});

function measuredEnd(face: string): number {
  const plan = source.project.faces.find(({ id }) => id === face)?.plan;
  if (!plan) throw new Error("no such face");
  return Math.hypot(plan.to[0] - plan.from[0], plan.to[1] - plan.from[1]);
}

describe("a layout that is taken", () => {
  const wide = widerBy(source, 6);
  const stages = { "W-B206a": "cut", "W-B209b": "fixed" } as const;
  const { measured, laid } = again(wide, drawn, stages);
  const taken = edited(wide, takeLaid(wide, takenFaces(wide.project, measured, [found(laid)])));
  const after = design(taken.project);
  const pieces = (at: Design) =>
    (at.facade.faces.find(({ id }) => id === "west")?.pieces ?? []).filter(({ kind }) => kind === "board");

  it("is what setting-out then lays, with every mark as it was and nothing else moved", () => {
    expect(pieces(after).map(({ mark }) => mark)).toEqual(pieces(drawn).map(({ mark }) => mark));
    const moved = new Map(found(laid).pieces.map((one) => [one.mark, one]));
    expect(moved.size).toBeGreaterThan(0);
    pieces(after).forEach((piece, i) => {
      const before = pieces(drawn)[i];
      const { x, y } = polygonBounds(piece.outline);
      expect({ x, y }).toEqual(moved.get(piece.mark)?.after ?? polygonBounds(before?.outline ?? []));
      if (moved.has(piece.mark)) expect(piece.cut.length).toBe((before?.cut.length ?? 0) - 6);
    });
  });

  it("puts the opening where it was measured, and leaves nothing to lay again", () => {
    const opening = after.facade.faces
      .find(({ id }) => id === "west")
      ?.openings.find(({ id }) => id === "W3");
    expect(opening?.region.x).toEqual([2094, 2700]);
    const next = again(taken, after, stages);
    expect(found(next.laid).pieces).toEqual([]);
    expect(after.findings.filter(({ code }) => code === "S029")).toEqual([]);
  });

  it("covers its zones once: pieces and joints overlap nowhere", () => {
    const face = after.facade.faces.find(({ id }) => id === "west");
    const all = [
      ...pieces(after).map(({ outline }) => outline),
      ...(face?.joints ?? []).map(({ region }) => region),
    ];
    let double = 0;
    all.forEach((one, i) => {
      for (const other of all.slice(i + 1)) {
        const [a, b] = [polygonBounds(one), polygonBounds(other)];
        if (a.x[0] >= b.x[1] || b.x[0] >= a.x[1] || a.y[0] >= b.y[1] || b.y[0] >= a.y[1]) continue;
        for (const region of intersect(one, other)) double += regionArea(region);
      }
    });
    expect(double).toBe(0);
  });

  it("goes on from there: another measure later moves from where pieces are", () => {
    const wider = edited(
      taken,
      setMeasured(taken, { face: "west", opening: "W3" }, { left: 2080, width: 620 }),
    );
    const second = again(wider, after, stages);
    const twice = edited(
      wider,
      takeLaid(wider, takenFaces(wider.project, second.measured, [found(second.laid)])),
    );
    const board = pieces(design(twice.project)).find(({ mark }) => mark === "W-B206a");
    const first = pieces(drawn).find(({ mark }) => mark === "W-B206a");
    const [is, was] = [board, first].map((one) => polygonBounds(one?.outline ?? []));
    expect(is?.x[1]).toBe((was?.x[1] ?? 0) - 20);
  });

  it("names pieces that another layout has put elsewhere since, and leaves them", () => {
    const document = structuredClone(taken.document) as {
      asBuilt: { laid: { pieces: { x: number[][] }[] }[] };
    };
    const [first] = document.asBuilt.laid[0]?.pieces ?? [];
    // As if the piece had been set out to begin a millimetre further left since.
    for (const move of first?.x ?? []) move[0] = (move[0] ?? 0) - 1;
    const other = design(sourceOf(document).project);
    expect(other.findings.filter(({ code }) => code === "S029")).toMatchObject([
      { outcome: "fail", where: { face: "west", marks: ["W-B206a"] } },
    ]);
    expect(pieces(other).find(({ mark }) => mark === "W-B206a")).toEqual(
      pieces(drawn).find(({ mark }) => mark === "W-B206a"),
    );
  });
});

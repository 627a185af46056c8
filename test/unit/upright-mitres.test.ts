/** Upright boards in the mitre of an inside corner, by plane geometry in the building's frame. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { readDocument } from "../../src/project/read.ts";
import { designed } from "../helpers/designed.ts";

const GAP = 8;

// biome-ignore lint/suspicious/noExplicitAny: edits of the raw document.
type Loose = any;

function porch(edit: (document: Loose) => void = () => {}) {
  const document = JSON.parse(readFileSync("examples/porch.outerleaf.json", "utf8"));
  for (const corner of document.corners) {
    corner.kind = "open mitre";
    corner.gap = GAP;
    delete corner.lead;
  }
  edit(document);
  const read = readDocument(document, "porch");
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return designed(read.project);
}

describe("upright boards that end in the mitre of an inside corner", () => {
  const made = porch(({ stock }) => {
    stock.boards[0].width = 140;
  });
  const boards = made.pieces.filter(({ kind, face }) => kind === "board" && face.startsWith("porch"));

  it("are sawn as wide as their back, where two meet with the corner's gap between them", () => {
    // Left wall along +Y at X = 2000, seen towards -X; back wall along +X at Y = 1200, seen towards -Y: turned by 90°.
    const [leftBoard] = boards.filter(
      ({ face, ends }) => face === "porch-left" && ends.right.cut === "mitre",
    );
    const [backBoard] = boards.filter(({ face, ends }) => face === "porch-back" && ends.left.cut === "mitre");
    if (!leftBoard || !backBoard) throw new Error("the porch's corners are mitred");
    const left = polygonBounds(leftBoard.outline).x;
    const back = polygonBounds(backBoard.outline).x;
    // From the outline at the face, the board reaches so much farther as it is sawn wider.
    const wider = leftBoard.cut.width - (left[1] - left[0]);
    expect(backBoard.cut.width - (back[1] - back[0])).toBeCloseTo(wider, 3);
    const place = (along: number, z: number, of: "left" | "back") =>
      of === "left" ? ([2000 + z, -39 + along] as const) : ([2000 + along, 1200 - z] as const);
    const { z } = leftBoard;
    for (const [depth, by] of [
      [z[1], 0],
      [z[0], wider],
    ] as const) {
      const a = place(left[1] + by, depth, "left");
      const b = place(back[0] - by, depth, "back");
      // The mitre's plane halves the corner at (2000, 1200): its normal is (1, 1) / √2.
      const across = Math.abs(b[0] - a[0] + (b[1] - a[1])) / Math.SQRT2;
      expect(across).toBeCloseTo(GAP, 3);
    }
    expect(wider).toBeCloseTo(20, 3);
  });

  it("and are as wide as they are seen where they end square", () => {
    const square = boards.filter(({ ends }) => ends.left.cut === "square" && ends.right.cut === "square");
    expect(square.length).toBeGreaterThan(10);
    for (const { cut, outline } of square) {
      const { x } = polygonBounds(outline);
      expect(cut.width).toBeCloseTo(x[1] - x[0], 6);
    }
  });
});

describe("a mitred board that is sawn wider than the stock", () => {
  /** Of boards so wide: what cannot be cut, and what the order still asks for. A tight band of gaps leaves no other rod. */
  const bought = (width: number, { tight = false } = {}) => {
    const { project, facade, pieces } = porch(({ stock, claddings }) => {
      stock.boards[0].width = width;
      if (tight) claddings.find(({ id }: Loose) => id === "porch-boards").gapBand = [6.9, 7.1];
    });
    const { plan, findings } = cutFacade(project, facade);
    return {
      boards: pieces.filter(({ kind }) => kind === "board"),
      refused: findings.filter(({ code }) => code === "C002"),
      toFind: plan?.boards.toFind ?? [],
      sawn: new Set(
        plan?.boards.bought.flatMap(({ result }) =>
          result.plan.bars.flatMap((bar) => bar.pieces.map(({ demandId }) => demandId)),
        ),
      ),
    };
  };

  it("is seen narrower, so that it is sawn from a board of the rod's own widths, and says so", () => {
    // 105 seen would be 125 behind at a right angle's mitre through 20: boards are 120 wide.
    const { boards, refused, sawn } = bought(120);
    const back = boards.filter(({ face }) => face === "porch-back");
    const ends = back.filter(({ ends: { left, right } }) => left.angleDeg < 0 || right.angleDeg < 0);
    expect(ends.map(({ cut }) => cut.width)).toEqual([105, 105]);
    for (const { outline, why } of ends) {
      const { x } = polygonBounds(outline);
      expect(x[1] - x[0]).toBeCloseTo(85, 6);
      expect(why).toMatchObject({
        rule: { key: "setout.why.upright.corner", values: { seen: 85, width: 105 } },
        runnerUp: { values: { seen: 105, width: 125, widest: 120 } },
      });
    }
    expect(refused).toEqual([]);
    expect(boards.filter(({ mark, face }) => face.startsWith("porch") && !sawn.has(mark))).toEqual([]);
  });

  it("leaves gaps within the band, and the corner's own gap as it is", () => {
    const { boards } = bought(120);
    const back = boards.filter(({ face, course }) => face === "porch-back" && course !== undefined);
    const full = back.filter(({ course }) => Number(course) < 200);
    const xs = full.map(({ outline }) => polygonBounds(outline).x).sort((a, b) => a[0] - b[0]);
    const gaps = xs.slice(1).map(([from], i) => from - (xs[i]?.[1] ?? 0));
    expect(gaps).toHaveLength(2);
    for (const gap of gaps) {
      expect(gap).toBeGreaterThanOrEqual(6);
      expect(gap).toBeLessThanOrEqual(11);
    }
    const [wide] = bought(200).boards.filter(({ mark }) => mark === "PB-B101a");
    const [narrow] = boards.filter(({ mark }) => mark === "PB-B101a");
    expect(polygonBounds(narrow?.outline ?? []).x[0]).toBe(polygonBounds(wide?.outline ?? []).x[0]);
  });

  it("is named with the width that it takes where no other rod fits, and stays on the order", () => {
    const { boards, refused, toFind, sawn } = bought(120, { tight: true });
    const wide = boards.filter(({ cut }) => cut.width > 120);
    expect(wide.map(({ mark, cut }) => [mark, cut.width])).toEqual([["PR-B101a", 125]]);
    expect(refused).toMatchObject([
      {
        outcome: "fail",
        where: { path: "/stock/boards", marks: ["PR-B101a"] },
        says: {
          values: {
            stock: { key: "schedule.cut.board-section", values: { thickness: 20, width: 125 } },
            why: { key: "schedule.cut.reason.no-match" },
          },
        },
        hint: { key: "schedule.cut.without-stock.boards" },
      },
    ]);
    expect(toFind.map(({ width, pieces: of }) => [width, of.map(({ mark }) => mark)])).toEqual([
      [125, ["PR-B101a"]],
    ]);
    expect(boards.filter(({ mark }) => mark !== "PR-B101a" && !sawn.has(mark))).toEqual([]);
  });

  it("is left as wide as it is where a board just holds it, and not where one is a hair narrower", () => {
    const corner = (width: number) => bought(width).boards.find(({ mark }) => mark === "PB-B101a")?.cut.width;
    expect(corner(125)).toBe(125);
    expect(bought(125).sawn.has("PB-B101a")).toBe(true);
    expect(corner(124.9)).toBe(105);
  });
});

/** Pictures of the cut plan say what the plan says, and number the cuts so that the saw can follow them. */
import { describe, expect, it } from "vitest";
import { numberedCuts } from "../../src/cutting/cut-order.ts";
import type { CutNode, CutSheet, Rectangle } from "../../src/cutting/model.ts";
import { drawList } from "../../src/scene/draw-list.ts";
import type { Scene } from "../../src/scene/model.ts";
import { cutBoardScene } from "../../src/scene/views/cutting/cut-board.ts";
import { cutLengthsScene } from "../../src/scene/views/cutting/cut-lengths.ts";
import { cutSheetScene } from "../../src/scene/views/cutting/cut-sheet.ts";
import { message } from "../../src/text/message.ts";
import { ENGLISH_MM } from "../../src/text/say.ts";
import { snap } from "../../src/units/length.ts";
import { example } from "./cut-facade-examples.ts";

const { plan } = example("atelier-bouleau").cut;
if (!plan) throw new Error("the demo is cut");

const textsOf = (scene: Scene): string[] =>
  drawList(scene, ENGLISH_MM).flatMap((mark) => (mark.shape === "text" ? [mark.text] : []));
const marksOf = (scene: Scene): string[] => [
  ...new Set(scene.items.flatMap((item) => (item.kind === "polygon" && item.of ? [item.of] : []))),
];
const sheets = plan.sheets.flatMap((part) =>
  part.result.plan.sheets.map((sheet) => ({
    sheet,
    stock: part.request.stock.find(({ id }) => id === sheet.stockId) as (typeof part.request.stock)[number],
    kerf: part.request.kerf,
  })),
);

/** On the grid of lengths: what a row of cuts adds up to is no nearer. */
function runsThrough([start, size]: [number, number], [from, to]: [number, number]): boolean {
  return snap(start) === snap(from) && snap(start + size) === snap(to);
}

/** Saws in the order of the numbers: each cut must run right through one part that is still whole. */
function sawn({ sheet, kerf }: { sheet: CutSheet; kerf: number }): Rectangle[] {
  const { x, y, width, height } = sheet.tree;
  let parts: Rectangle[] = [{ x, y, width, height }];
  for (const { from, to } of numberedCuts(sheet.tree)) {
    const upright = from[0] === to[0];
    const at = upright ? from[0] : from[1];
    const hit = parts.filter((part) =>
      upright
        ? runsThrough([part.y, part.height], [from[1], to[1]]) && part.x < at && at < part.x + part.width
        : runsThrough([part.x, part.width], [from[0], to[0]]) && part.y < at && at < part.y + part.height,
    );
    expect(hit).toHaveLength(1);
    const [part] = hit as [Rectangle];
    const end = upright ? part.x + part.width : part.y + part.height;
    const after = Math.min(at + kerf, end);
    parts = parts.filter((one) => one !== part);
    parts.push(
      upright ? { ...part, width: at - part.x } : { ...part, height: at - part.y },
      ...(after < end
        ? [upright ? { ...part, x: after, width: end - after } : { ...part, y: after, height: end - after }]
        : []),
    );
  }
  return parts;
}

describe("sheets", () => {
  it("come apart into their pieces when they are sawn in the order of the numbers", () => {
    for (const one of sheets) {
      const parts = sawn(one);
      for (const { x, y, width, height } of one.sheet.placements) {
        const whole = parts.some(
          (part) =>
            snap(part.x) === x &&
            snap(part.y) === y &&
            snap(part.width) === width &&
            snap(part.height) === height,
        );
        expect(whole).toBe(true);
      }
    }
  });

  it("number every cut of the tree once, from 1", () => {
    const count = (node: CutNode): number =>
      (node.cut ? 1 : 0) + (node.children ?? []).reduce((sum, child) => sum + count(child), 0);
    for (const { sheet } of sheets) {
      const numbers = numberedCuts(sheet.tree).map(({ number }) => number);
      expect(numbers).toEqual(Array.from({ length: count(sheet.tree) }, (_, i) => i + 1));
    }
  });

  it("show each piece with its mark and size", () => {
    for (const { sheet, stock } of sheets) {
      const scene = cutSheetScene(sheet, { stock, scale: 1 / 28 });
      expect(marksOf(scene).sort()).toEqual(sheet.placements.map(({ demandId }) => demandId).sort());
      const largest = sheet.placements.reduce((a, b) => (a.width * a.height > b.width * b.height ? a : b));
      expect(textsOf(scene)).toContain(largest.demandId);
    }
  });
});

describe("lengths and boards", () => {
  it("show each piece where it is cut, with its length", () => {
    for (const { use, request, result } of [...plan.lengths, ...plan.boards.bought]) {
      const { bars } = result.plan;
      if (bars.length === 0) continue;
      const scene = cutLengthsScene(bars, {
        id: use,
        title: message("schedule.cut.part.pile"),
        stock: request.stock,
        scale: 1 / 25,
        fill: "batten",
      });
      const pieces = bars.flatMap((bar) => bar.pieces);
      expect(marksOf(scene).sort()).toEqual(pieces.map(({ demandId }) => demandId).sort());
      for (const { demandId, from, to } of pieces) {
        const item = scene.items.find((one) => one.kind === "polygon" && one.of === demandId);
        expect(item?.kind === "polygon" && [item.outline[0]?.[0], item.outline[1]?.[0]]).toEqual([from, to]);
      }
    }
  });

  it("show every piece of the pile on a board that is ripped", () => {
    const { rips } = plan;
    if (!rips) throw new Error("the demo has a pile");
    const shown = rips.ripped.flatMap((ripped) => {
      const board = rips.request.boards.find(({ id }) => id === ripped.boardId);
      if (!board) throw new Error(`no board ${ripped.boardId}`);
      return marksOf(cutBoardScene(ripped, { board, result: rips.result, scale: 1 / 25 }));
    });
    const cut = rips.result.lengths.plan.bars.flatMap(({ pieces }) => pieces.map(({ demandId }) => demandId));
    expect(shown.sort()).toEqual(cut.sort());
    expect(cut.length).toBeGreaterThan(0);
  });
});

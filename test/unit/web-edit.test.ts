/** What the page does with edits before any of it is drawn: steps, snapping, faces sent. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { designFile } from "../../src/design.ts";
import { createFaceMemo } from "../../src/setout/memo.ts";
import { message } from "../../src/text/message.ts";
import { begin, besides, done, moved, present } from "../../src/web/edit/history.ts";
import { dragged } from "../../src/web/edit/snap.ts";
import { packed, unpacked } from "../../src/web/work/packed.ts";

const step = (document: unknown, merge?: string) => ({
  document,
  says: message("page.edit.kept"),
  ...(merge !== undefined && { merge }),
});

describe("the history of edits", () => {
  it("takes back and does again", () => {
    const history = done(done(begin(step(0)), step(1)), step(2));
    expect(present(history).document).toBe(2);
    const before = moved(history, history.at - 1);
    expect(present(before).document).toBe(1);
    expect(besides(before).forth?.document).toBe(2);
    expect(moved(history, -5).at).toBe(0);
  });

  it("forgets what was taken back once something else is done", () => {
    const history = done(moved(done(begin(step(0)), step(1)), 0), step(3));
    expect(history.steps.map(({ document }) => document)).toEqual([0, 3]);
  });

  it("counts one drag as one step, and never the file itself as part of it", () => {
    const history = done(done(done(begin(step(0, "a")), step(1, "a")), step(2, "a")), step(3, "b"));
    expect(history.steps.map(({ document }) => document)).toEqual([0, 2, 3]);
  });
});

describe("dragging an opening", () => {
  const rect = { x: [750, 1650], y: [900, 2100] } as const;
  const snapping = { lines: { x: [800, 1701], y: [2100] }, reach: 10, step: 5 };
  const whole = { x: "both", y: "both" } as const;

  it("draws a side to a line that is near, and keeps the size", () => {
    const { rect: moved, met } = dragged(rect, { grip: whole, by: [47, 0], snapping });
    // The right side meets 1701 with less of a push than the left one meets 800.
    expect(moved).toEqual({ x: [800, 1700], y: [900, 2100] });
    expect(met.x).toEqual([800]);
    expect(dragged(rect, { grip: whole, by: [50.6, 0], snapping }).rect.x).toEqual([801, 1701]);
  });

  it("goes in even steps where no line is near", () => {
    expect(dragged(rect, { grip: whole, by: [-123.4, 33.3], snapping }).rect).toEqual({
      x: [625, 1525],
      y: [935, 2135],
    });
  });

  it("moves one side alone, and never through the other", () => {
    expect(dragged(rect, { grip: { x: "high", y: "none" }, by: [201, 50], snapping }).rect).toEqual({
      x: [750, 1850],
      y: [900, 2100],
    });
    expect(dragged(rect, { grip: { x: "low", y: "none" }, by: [5000, 0], snapping }).rect.x).toEqual([
      1550, 1650,
    ]);
  });
});

describe("a facade sent from the worker", () => {
  it("names the faces that the page has, and comes out whole", () => {
    const text = readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8");
    const memo = createFaceMemo({ spare: 50, shareds: 2 });
    const first = designFile({ name: "demo", text }, { faces: memo });
    const edited = JSON.parse(text);
    edited.faces[1].openings[1].x = [760, 1660];
    const second = designFile({ name: "demo", document: edited }, { faces: memo });
    if (first.kind !== "designed" || second.kind !== "designed") throw new Error("refused");
    const held = first.design.facade.faces;
    const { facade } = second.design;
    const sent = structuredClone(packed(facade, held));
    expect(sent.faces.filter((one) => typeof one !== "number")).toHaveLength(1);
    expect(unpacked(sent, held)).toEqual({ ...facade, findings: [] });
  });
});

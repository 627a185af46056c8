import { describe, expect, it } from "vitest";
import { type RodProblem, solveRod } from "../../src/setout/rod/index.ts";

const good: RodProblem = {
  segments: [
    { id: "a", from: -50, to: 900, gapAtStart: false, gapAtEnd: false },
    { id: "b", from: 900, to: 2122, gapAtStart: true, gapAtEnd: false },
  ],
  widths: [94, 126],
  gapBand: [6, 12],
  maxEqualTouching: 3,
  secondaryLines: [{ id: "s", at: 1480, edge: "end-of-board", tolerance: 2 }],
};
const [a, b] = [good.segments[0]!, good.segments[1]!];
const line = good.secondaryLines[0]!;

describe("a rod that cannot be worked", () => {
  it.each<[string, string, Partial<RodProblem>]>([
    ["no-segments", "segments", { segments: [] }],
    ["segment-not-ahead", "segments/0/to", { segments: [{ ...a, to: -50 }] }],
    ["segments-overlap", "segments/1/from", { segments: [a, { ...b, from: 890 }] }],
    ["segment-id-repeated", "segments/1/id", { segments: [a, { ...b, id: "a" }] }],
    ["not-a-number", "segments/0/to", { segments: [{ ...a, to: Number.NaN }] }],
    ["no-widths", "widths", { widths: [] }],
    ["too-many-widths", "widths", { widths: [80, 90, 100, 110] }],
    ["width-not-positive", "widths/1", { widths: [94, -126] }],
    ["width-repeated", "widths/1", { widths: [94, 94] }],
    ["not-a-number", "widths/0", { widths: [Number.POSITIVE_INFINITY] }],
    ["band-not-a-band", "gapBand/1", { gapBand: [12, 6] }],
    ["band-not-a-band", "gapBand/0", { gapBand: [-1, 6] }],
    ["not-a-number", "gapBand/1", { gapBand: [6, Number.NaN] }],
    ["touching-not-a-count", "maxEqualTouching", { maxEqualTouching: 0 }],
    ["touching-not-a-count", "maxEqualTouching", { maxEqualTouching: 2.5 }],
    ["not-a-number", "preferredGap", { preferredGap: Number.NaN }],
    ["too-many-lines", "secondaryLines", { secondaryLines: Array.from({ length: 65 }, () => line) }],
    [
      "tolerance-out-of-range",
      "secondaryLines/0/tolerance",
      { secondaryLines: [{ ...line, tolerance: -1 }] },
    ],
    [
      "tolerance-out-of-range",
      "secondaryLines/0/tolerance",
      { secondaryLines: [{ ...line, tolerance: 94 }] },
    ],
    ["ripped-segment-unknown", "ripped/0/segment", { ripped: [{ segment: "c", width: 70 }] }],
    [
      "ripped-segment-repeated",
      "ripped/1/segment",
      {
        ripped: [
          { segment: "a", width: 70 },
          { segment: "a", width: 71 },
        ],
      },
    ],
    ["ripped-width-out-of-range", "ripped/0/width", { ripped: [{ segment: "a", width: 94 }] }],
    ["too-large", "segments/0/to", { segments: [{ ...a, to: 900_000 }] }],
  ])("is named %s at %s", (code, field, part) => {
    const outcome = solveRod({ ...good, ...part });
    expect(outcome.kind === "unusable" && outcome.faults.map((fault) => [fault.code, fault.field])).toEqual([
      [code, field],
    ]);
  });

  it("names every fault at once", () => {
    const outcome = solveRod({ ...good, widths: [94, 94], gapBand: [12, 6], maxEqualTouching: 0 });
    expect(outcome.kind === "unusable" && outcome.faults.map((fault) => fault.code)).toEqual([
      "width-repeated",
      "band-not-a-band",
      "touching-not-a-count",
    ]);
  });

  it("takes a look rule that no row is long enough to break", () => {
    const loose = solveRod({ ...good, maxEqualTouching: 1_000_000 });
    const free = solveRod({ ...good, maxEqualTouching: undefined });
    expect(loose.kind === "solved" && loose.best).toEqual(free.kind === "solved" && free.best);
  });

  it("takes the good one", () => {
    expect(solveRod(good).kind).toBe("solved");
  });
});

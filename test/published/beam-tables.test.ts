/**
 * Continuous beams under an even load: Civil Engineering Formulas, Table 2.1, two to seven equal spans. Four spans loaded on the first and
 * the third: a public page of formulas (which misprints one moment). Sag of three spans: the constant of the plywood industry’s panel
 * design, w L⁴ / 1743 EI with w in psf and L in inches. Sag of one, two and four spans: steel handbook tables, from memory. Unlike spans, arms and
 * single loads: exact beams by SymPy (fixtures/make-beams.py).
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { bendingStress } from "../../src/equations/beams/bending-stress.ts";
import { type Beam, type Bent, continuousBeam } from "../../src/equations/beams/continuous-beam.ts";

function bent(beam: Beam): Bent {
  const found = continuousBeam(beam);
  if (!found) throw new Error("held by fewer than two supports");
  return found;
}

const equal = (spans: number): Bent =>
  bent({ supports: Array.from({ length: spans + 1 }, (_, i) => i), from: 0, to: spans, load: 1 });

describe("Table 2.1: reactions in w L, moments over supports in w L²", () => {
  it.each([
    [1, [0.5], []],
    [2, [3 / 8, 10 / 8], [1 / 8]],
    [3, [4 / 10, 11 / 10], [1 / 10]],
    [4, [11 / 28, 32 / 28, 26 / 28], [3 / 28, 2 / 28]],
    [5, [15 / 38, 43 / 38, 37 / 38], [4 / 38, 3 / 38]],
    [6, [41 / 104, 118 / 104, 100 / 104, 106 / 104], [11 / 104, 8 / 104, 9 / 104]],
    [7, [56 / 142, 161 / 142, 137 / 142, 143 / 142], [15 / 142, 11 / 142, 12 / 142]],
  ])("%d spans", (spans, reactions, moments) => {
    const found = equal(spans);
    reactions.forEach((printed, i) => {
      expect(found.reactions[i]).toBeCloseTo(printed, 9);
      expect(found.reactions[spans - i]).toBeCloseTo(printed, 9);
    });
    moments.forEach((printed, i) => {
      expect(found.overSupports[i + 1]).toBeCloseTo(-printed, 9);
    });
  });
});

describe("Table 2.1: moments within spans in w L², to four figures", () => {
  it.each([
    [1, 0, 0.125],
    [2, 0, 0.0703],
    [3, 0, 0.08],
    [3, 1, 0.025],
    [4, 0, 0.0772],
    [4, 1, 0.0364],
    [5, 0, 0.0779],
    [5, 1, 0.0332],
    [5, 2, 0.0461],
    [6, 0, 0.0777],
    [6, 1, 0.034],
    [6, 2, 0.0433],
    [7, 0, 0.0778],
    [7, 1, 0.0338],
    [7, 2, 0.044],
    [7, 3, 0.0405],
  ])("%d spans, span %d: %d", (spans, span, printed) => {
    const { overSupports } = equal(spans);
    const [left, right] = [overSupports[span] ?? 0, overSupports[span + 1] ?? 0];
    // Where the shear of the span is nought.
    const force = 0.5 + right - left;
    expect(Math.abs(left + force ** 2 / 2 - printed)).toBeLessThan(0.00011);
  });
});

describe("four spans, the first and the third loaded", () => {
  /** Even loads by many single ones: 2000 to a span. */
  const points = [0, 2].flatMap((from) =>
    Array.from({ length: 2000 }, (_, i) => ({ at: from + (i + 0.5) / 2000, load: 1 / 2000 })),
  );
  const found = bent({ supports: [0, 1, 2, 3, 4], from: 0, to: 4, load: 0, points });
  it.each([
    [0, 0.446],
    [1, 0.572],
    [2, 0.464],
    [3, 0.572],
    [4, -0.054],
  ])("support %d: %d w L", (support, printed) => {
    expect(Math.abs((found.reactions[support] ?? 0) - printed)).toBeLessThan(0.0006);
  });

  it("largest moment 0.0996 w L², largest sag 0.0097 w L⁴/EI at 0.477 L", () => {
    expect(Math.abs(found.moment - 0.0996)).toBeLessThan(0.0001);
    expect(Math.abs(found.sag.stiff - 0.0097)).toBeLessThan(0.00005);
    expect(Math.abs(found.sag.at - 0.477)).toBeLessThan(0.002);
  });
});

describe("largest sag in w L⁴/EI", () => {
  it("three spans: 1/1743 with w over a foot and L in inches", () => {
    expect(Math.abs(equal(3).sag.stiff - 12 / 1743)).toBeLessThan(2e-6);
  });

  it("panels of three spans: w = 120 Fb S / L²", () => {
    // w over a foot of width, L in inches: M = (w/12) L²/10.
    expect(1 / equal(3).moment / (1 / 12)).toBeCloseTo(120, 9);
  });

  it.each([
    [1, 1 / 76.8],
    [2, 1 / 185],
    [3, 1 / 145],
    [4, 1 / 154],
  ])("%d spans (from memory)", (spans, printed) => {
    expect(Math.abs(equal(spans).sag.stiff - printed)).toBeLessThan(6e-5);
  });
});

interface ExactBeam extends Beam {
  readonly reactions: readonly number[];
  readonly overSupports: readonly number[];
  readonly sag: { readonly at: number; readonly stiff: number };
}

const exact = JSON.parse(
  readFileSync(new URL("./fixtures/beams-sympy.json", import.meta.url), "utf8"),
) as readonly ExactBeam[];

describe.each(exact)("exact beam on $supports", (one) => {
  const found = bent(one);
  it("reactions", () => {
    one.reactions.forEach((reaction, i) => {
      expect(Math.abs((found.reactions[i] ?? 0) - reaction)).toBeLessThan(1e-8 * Math.abs(reaction) + 1e-9);
    });
  });

  it("moments over supports", () => {
    one.overSupports.forEach((moment, i) => {
      expect(Math.abs((found.overSupports[i] ?? 0) - moment)).toBeLessThan(1e-8 * Math.abs(moment) + 1e-6);
    });
  });

  it("largest sag and its place", () => {
    expect(Math.abs(found.sag.stiff / one.sag.stiff - 1)).toBeLessThan(1e-8);
    expect(Math.abs(found.sag.at - one.sag.at)).toBeLessThan(0.01);
  });
});

describe("a batten of 19 by 64 mm laid flat, screws 400 mm apart, under 0.804457 N/mm on three spans and more", () => {
  const found = bent({ supports: [0, 400, 800, 1200], from: 0, to: 1200, load: 0.804457 });
  it("stress 3.3426 MPa, sag 0.408 mm at 9500 MPa, first inner screw 353.96 N", () => {
    expect(bendingStress({ momentNmm: found.moment, widthMm: 64, thicknessMm: 19 })).toBeCloseTo(3.342621, 5);
    const stiff = (9500 * 64 * 19 ** 3) / 12;
    // 1/145.26 of the panel constant.
    expect(Math.abs(found.sag.stiff / stiff - 0.407957)).toBeLessThan(1e-4);
    expect(found.reactions[1]).toBeCloseTo(353.9613, 3);
  });
});

describe("a sheet of 8 mm over two spans of 600 mm, 1072.61 Pa", () => {
  const found = bent({ supports: [0, 600, 1200], from: 0, to: 1200, load: 0.00107261 });
  it("stress 4.5251 MPa, sag 2.5209 mm at 7000 MPa", () => {
    expect(bendingStress({ momentNmm: found.moment, widthMm: 1, thicknessMm: 8 })).toBeCloseTo(4.525074, 4);
    expect(Math.abs(found.sag.stiff / ((7000 * 8 ** 3) / 12) - 2.520913)).toBeLessThan(2e-4);
  });
});

/**
 * National Design Specification for Wood Construction, 2018. Withdrawal of lag screws: Table 12.2A, from a scan in public permit
 * files, to whole pounds. Of wood screws: Table 12.2B and an engineering page that cuts off the decimals. Head pull-through: Table 12.2F,
 * cells quoted in a public script of chapter 12. Lateral: Tables 12N (common nails) and 12L (wood screws), cells quoted there, both
 * pieces of specific gravity 0.50. Totals: solved examples of the American Wood Council, as coded in a public library of structures.
 * The rounded values of wood screws in spruce-pine-fir are Equation 12.2-2 worked by hand.
 */
import { describe, expect, it } from "vitest";
import { ndsBearingStrength } from "../../src/equations/screws/nds-bearing-strength.ts";
import { ndsCombined } from "../../src/equations/screws/nds-combined.ts";
import { ndsHeadPullThrough } from "../../src/equations/screws/nds-head-pull-through.ts";
import { ndsLagWithdrawal } from "../../src/equations/screws/nds-lag-withdrawal.ts";
import { ndsLateral } from "../../src/equations/screws/nds-lateral.ts";
import { ndsNailWithdrawal } from "../../src/equations/screws/nds-nail-withdrawal.ts";
import { ndsScrewWithdrawal } from "../../src/equations/screws/nds-screw-withdrawal.ts";

const MM = 25.4;
const N_PER_LB = 4.4482216;
const MPA_PER_PSI = 0.0068947573;
const perInch = (nPerMm: number): number => (nPerMm * MM) / N_PER_LB;

/** Half a pound, the rounding of the tables, and the noise of changing units. */
const ROUNDED = 0.501;

describe("Table 12.2A: lag screws, lb for an inch of thread", () => {
  const table: [number, readonly (readonly [number, number])[]][] = [
    [
      0.73,
      [
        [1 / 4, 397],
        [5 / 16, 469],
        [3 / 8, 538],
        [7 / 16, 604],
        [1 / 2, 668],
      ],
    ],
    [
      0.67,
      [
        [1 / 4, 349],
        [5 / 16, 413],
        [3 / 8, 473],
        [7 / 16, 531],
        [1 / 2, 587],
      ],
    ],
    [
      0.55,
      [
        [1 / 4, 260],
        [5 / 16, 307],
        [7 / 16, 395],
        [1 / 2, 437],
      ],
    ],
    [
      0.5,
      [
        [1 / 4, 225],
        [5 / 16, 266],
        [3 / 8, 305],
        [7 / 16, 342],
        [1 / 2, 378],
      ],
    ],
    [
      0.42,
      [
        [1 / 4, 173],
        [5 / 16, 205],
        [3 / 8, 235],
        [7 / 16, 264],
        [1 / 2, 291],
      ],
    ],
    [
      0.41,
      [
        [1 / 4, 167],
        [3 / 8, 226],
        [7 / 16, 254],
        [1 / 2, 281],
      ],
    ],
    [
      0.4,
      [
        [1 / 4, 161],
        [5 / 16, 190],
        [3 / 8, 218],
        [7 / 16, 245],
      ],
    ],
    [
      0.36,
      [
        [1 / 4, 137],
        [5 / 16, 163],
        [3 / 8, 186],
        [7 / 16, 209],
        [1 / 2, 231],
      ],
    ],
    [
      0.35,
      [
        [1 / 4, 132],
        [5 / 16, 156],
        [3 / 8, 179],
        [7 / 16, 200],
        [1 / 2, 222],
      ],
    ],
    [
      0.31,
      [
        [5 / 16, 130],
        [3 / 8, 149],
        [7 / 16, 167],
      ],
    ],
  ];
  it.each(table.flatMap(([gravity, row]) => row.map(([inch, printed]) => [gravity, inch, printed] as const)))(
    "G %d, %d in: %d",
    (specificGravity, inch, printed) => {
      const value = perInch(ndsLagWithdrawal({ specificGravity, diameterMm: inch * MM }));
      expect(Math.abs(value - printed)).toBeLessThan(ROUNDED);
    },
  );
});

describe("Table 12.2B: wood screws, lb for an inch of thread", () => {
  it.each([
    ["#8", 0.164, 0.42, 82],
    ["#10", 0.19, 0.42, 96],
    ["#12", 0.216, 0.42, 109],
    ["#8", 0.164, 0.5, 117],
    ["#10", 0.19, 0.5, 135],
    ["#12", 0.216, 0.5, 154],
    ["#8", 0.164, 0.36, 61],
    ["#10", 0.19, 0.36, 70],
  ])("%s (%d in), G %d: %d", (_, inch, specificGravity, printed) => {
    const value = perInch(ndsScrewWithdrawal({ specificGravity, diameterMm: inch * MM }));
    expect(Math.abs(value - printed)).toBeLessThan(ROUNDED);
  });

  it("#10 in spruce of 0.45 is printed as 109, cut off", () => {
    expect(Math.floor(perInch(ndsScrewWithdrawal({ specificGravity: 0.45, diameterMm: 0.19 * MM })))).toBe(
      109,
    );
  });
});

describe("Table 12.2F: head pull-through, lb", () => {
  it.each([
    [0.5, 0.234, 5 / 16, 40],
    [0.5, 0.312, 1, 132],
    [0.42, 0.5, 1.5, 239],
  ])("G %d, head %d in, wood %d in: %d", (specificGravity, head, thickness, printed) => {
    const value = ndsHeadPullThrough({ specificGravity, headMm: head * MM, thicknessMm: thickness * MM });
    expect(Math.abs(value / N_PER_LB - printed)).toBeLessThan(ROUNDED);
  });

  it("wood thicker than two and a half heads holds no more: 1725 π DH² G²", () => {
    const value = ndsHeadPullThrough({ specificGravity: 0.42, headMm: 8, thicknessMm: 38 });
    expect(value / N_PER_LB).toBeCloseTo(1725 * Math.PI * (8 / MM) ** 2 * 0.42 ** 2, 9);
  });
});

describe("Tables 12N and 12L: lateral, lb, both pieces of 0.50", () => {
  /** Table 12.3.3, to 50 psi. */
  const bearing = 4650 * MPA_PER_PSI;
  /** Tables hold the point ten diameters deep; a tapered tip of two diameters counts by half. */
  const inPounds = (at: { side: number; nominal: number; root: number; yieldPsi: number }): number =>
    ndsLateral({
      rootMm: at.root * MM,
      yieldMPa: at.yieldPsi * MPA_PER_PSI,
      sideMm: at.side * MM,
      mainMm: 9 * at.nominal * MM,
      gapMm: 0,
      sideMPa: bearing,
      mainMPa: bearing,
    }) / N_PER_LB;

  it.each([
    [0.75, 0.113, 100_000, 72],
    [0.75, 0.131, 100_000, 90],
    [0.75, 0.148, 90_000, 105],
    [0.75, 0.162, 90_000, 121],
    [1, 0.113, 100_000, 72],
    [1, 0.131, 100_000, 97],
    [1, 0.148, 90_000, 118],
    [1, 0.162, 90_000, 141],
  ])("12N: side %d in, nail %d in, yield %d psi: %d", (side, diameter, yieldPsi, printed) => {
    expect(Math.abs(inPounds({ side, nominal: diameter, root: diameter, yieldPsi }) - printed)).toBeLessThan(
      ROUNDED,
    );
  });

  it.each([
    [0.5, 4650],
    [0.42, 3350],
    [0.36, 2550],
  ])("12.3.3: G %d bears %d psi", (specificGravity, printed) => {
    const psi = ndsBearingStrength({ specificGravity }) / MPA_PER_PSI;
    expect(Math.round(psi / 50) * 50).toBe(printed);
  });

  it("12L: side 1/2 in, #10: 90", () => {
    const value = inPounds({ side: 0.5, nominal: 0.19, root: 0.152, yieldPsi: 80_000 });
    expect(Math.abs(value - 90)).toBeLessThan(ROUNDED);
  });
});

describe("solved examples of the American Wood Council", () => {
  // Southern pine counts with 0.55; nail of 0.105 in side piece, 2.5 in long.
  it("2.1a: nail of 0.131 in, 2.395 in deep: 220.1737 N", () => {
    const value = ndsNailWithdrawal({ specificGravity: 0.42, diameterMm: 0.131 * MM }) * 2.395 * MM;
    expect(value).toBeCloseTo(220.1737, 2);
  });

  it("2.3: lag screw of 1/2 in, 2.1875 in of thread in southern pine: 4247.940 N", () => {
    const value = ndsLagWithdrawal({ specificGravity: 0.55, diameterMm: 0.5 * MM }) * 2.1875 * MM;
    expect(Math.abs(value - 4247.94)).toBeLessThan(0.02);
  });

  it("nail of 0.148 in through 3/4 in of douglas fir into 2.25 in: 467.488 N", () => {
    const bearing = ndsBearingStrength({ specificGravity: 0.5 });
    const value = ndsLateral({
      rootMm: 0.148 * MM,
      yieldMPa: 90_000 * MPA_PER_PSI,
      sideMm: 0.75 * MM,
      mainMm: 2.25 * MM,
      gapMm: 0,
      sideMPa: bearing,
      mainMPa: bearing,
    });
    expect(Math.abs(value - 467.488)).toBeLessThan(0.02);
  });
});

describe("Equation 12.4-1", () => {
  it("equal pull and shear of 50 lb where each alone may be 100 lb: 0.7071", () => {
    const N = 4.448;
    expect(
      ndsCombined({ pullN: 50 * N, shearN: 50 * N, pullHeldN: 100 * N, shearHeldN: 100 * N }),
    ).toBeCloseTo(70.71 / 100, 4);
  });

  it("pull alone and shear alone are their own shares", () => {
    expect(ndsCombined({ pullN: 30, shearN: 0, pullHeldN: 100, shearHeldN: 70 })).toBeCloseTo(0.3, 12);
    expect(ndsCombined({ pullN: 0, shearN: 30, pullHeldN: 100, shearHeldN: 60 })).toBeCloseTo(0.5, 12);
    expect(ndsCombined({ pullN: 0, shearN: 0, pullHeldN: 100, shearHeldN: 60 })).toBe(0);
  });
});

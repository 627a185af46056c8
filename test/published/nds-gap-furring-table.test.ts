/**
 * International Building Code 2018, Table 2603.13.2, as reprinted: thickest foam (in) under furring, against the dowel equations of
 * Technical Report 12 with the foam as a gap. The share 0.72 of the allowable load, and the No. 10 screw counted as the nail of
 * 90 000 psi, were found by fitting this very table: the test shows that one rule makes all its cells, not where the code took it from.
 */
import { describe, expect, it } from "vitest";
import { ndsBearingStrength } from "../../src/equations/screws/nds-bearing-strength.ts";
import { ndsLateral } from "../../src/equations/screws/nds-lateral.ts";

const MM = 25.4;
const N_PER_LB = 4.4482216;
const MPA_PER_PSI = 0.0068947573;
const SHARE = 0.72;
const WEIGHTS = [3, 11, 18, 25];
const THICKEST = 4;
/** Cells are multiples of 0.05 in, and end at half an inch. */
const LEAST = 0.5;
const CELL = 0.075;

const DR = undefined;
const NAIL_131 = { root: 0.131, yieldPsi: 100_000, held: 1.25 };
const NAIL_162 = { root: 0.162, yieldPsi: 90_000, held: 1.25 };
const NUMBER_10 = { root: 0.152, yieldPsi: 90_000, held: 1 };
const LAG = { root: 0.173, yieldPsi: 70_000, held: 1.5 };

type Dowel = typeof LAG;
const rows: [string, Dowel, number, number, (number | undefined)[]][] = [
  ["nail of 0.131 in", NAIL_131, 8, 16, [4, 2.45, 1.45, 0.95]],
  ["nail of 0.131 in", NAIL_131, 8, 24, [4, 1.6, 0.85, DR]],
  ["nail of 0.131 in", NAIL_131, 12, 16, [4, 1.6, 0.85, DR]],
  ["nail of 0.131 in", NAIL_131, 12, 24, [4, 0.95, DR, DR]],
  ["nail of 0.131 in", NAIL_131, 16, 16, [4, 1.1, DR, DR]],
  ["nail of 0.131 in", NAIL_131, 16, 24, [3.05, 0.6, DR, DR]],
  ["nail of 0.162 in", NAIL_162, 8, 16, [4, 4, 2.45, 1.6]],
  ["nail of 0.162 in", NAIL_162, 8, 24, [4, 2.75, 1.45, 0.85]],
  ["nail of 0.162 in", NAIL_162, 12, 16, [4, 2.75, 1.45, 0.85]],
  ["nail of 0.162 in", NAIL_162, 12, 24, [4, 1.65, 0.75, DR]],
  ["nail of 0.162 in", NAIL_162, 16, 16, [4, 1.9, 0.95, DR]],
  ["nail of 0.162 in", NAIL_162, 16, 24, [4, 1.05, DR, DR]],
  ["No. 10", NUMBER_10, 12, 16, [4, 2.3, 1.2, 0.7]],
  ["No. 10", NUMBER_10, 12, 24, [4, 1.4, 0.6, DR]],
  ["No. 10", NUMBER_10, 16, 16, [4, 1.65, 0.75, DR]],
  ["No. 10", NUMBER_10, 16, 24, [4, 0.9, DR, DR]],
  ["No. 10", NUMBER_10, 24, 16, [4, 0.9, DR, DR]],
  ["No. 10", NUMBER_10, 24, 24, [2.85, DR, DR, DR]],
  ["lag screw of 1/4 in", LAG, 12, 16, [4, 2.65, 1.5, 0.9]],
  ["lag screw of 1/4 in", LAG, 12, 24, [4, 1.65, 0.8, DR]],
  ["lag screw of 1/4 in", LAG, 16, 16, [4, 1.95, 0.95, 0.5]],
  ["lag screw of 1/4 in", LAG, 16, 24, [4, 1.1, DR, DR]],
  ["lag screw of 1/4 in", LAG, 24, 16, [4, 1.1, DR, DR]],
  ["lag screw of 1/4 in", LAG, 24, 24, [3.25, 0.5, DR, DR]],
];

const bearing = ndsBearingStrength({ specificGravity: 0.42 });
function allowedLb({ root, yieldPsi, held }: Dowel, foam: number): number {
  const load = ndsLateral({
    rootMm: root * MM,
    yieldMPa: yieldPsi * MPA_PER_PSI,
    sideMm: 0.75 * MM,
    mainMm: held * MM,
    gapMm: foam * MM,
    sideMPa: bearing,
    mainMPa: bearing,
  });
  return (SHARE * load) / N_PER_LB;
}

/** The gap at which a load is just allowed, by halving. */
function thickest(dowel: Dowel, lb: number): number {
  let [low, high] = [0, 30];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (allowedLb(dowel, middle) > lb) low = middle;
    else high = middle;
  }
  return low;
}

describe.each(rows)("%s %j, fasteners at %d in, furring at %d in", (_, dowel, screws, furring, cells) => {
  it.each(WEIGHTS.map((psf, column) => [psf, cells[column]] as const))("%d psf: %d in", (psf, cell) => {
    const inches = thickest(dowel, (psf * screws * furring) / 144);
    if (cell === DR) expect(inches).toBeLessThan(LEAST);
    else if (cell === THICKEST) expect(inches).toBeGreaterThan(THICKEST - CELL);
    else expect(Math.abs(inches - cell)).toBeLessThan(CELL);
  });
});

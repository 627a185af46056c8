/**
 * U.S. Standard Atmosphere, 1976: temperature, pressure and density as tabled in the Mechanical Engineers' Handbook,
 * volume 4, Table 6; viscosity at sea level 1.789e-5 Pa·s, and its ratios at other heights in an aeronautics table.
 */
import { describe, expect, it } from "vitest";
import { airDensity, ZERO_C } from "../../src/equations/air/air-density.ts";
import { airViscosity } from "../../src/equations/air/air-viscosity.ts";

describe("density (kg/m³) of the tabled temperature (K) and pressure (bar)", () => {
  // The pressure is printed to four places: half of the last is 0.01 % at its worst here, beside half of the density's own.
  it.each([
    [288.15, 1.0133, 1.225],
    [281.65, 0.8988, 1.1117],
    [275.15, 0.795, 1.0066],
    [268.66, 0.7012, 0.9093],
    [262.17, 0.6166, 0.8194],
    [255.68, 0.5405, 0.7364],
    [249.19, 0.4722, 0.6601],
    [242.7, 0.4111, 0.59],
    [236.22, 0.3565, 0.5258],
  ])("%d K, %d bar", (kelvin, bar, printed) => {
    const density = airDensity({ airC: kelvin - ZERO_C, pressurePa: bar * 1e5 });
    expect(Math.abs(density - printed)).toBeLessThan(0.00005 + printed * (0.00005 / bar + 0.00002));
  });
});

describe("viscosity", () => {
  it("is 1.789e-5 Pa·s at 15 °C", () => {
    expect(airViscosity({ airC: 15 }) * 1e5).toBeCloseTo(1.789, 3);
  });

  // The table is of an atmosphere that starts at 15.2 °C.
  it.each([
    [14.2, 0.9973],
    [13.2, 0.9947],
    [10.2, 0.9866],
    [5.3, 0.9731],
    [0.3, 0.9595],
    [-4.6, 0.9457],
    [-7.6, 0.9374],
  ])("at %d °C beside that at 15.2 °C", (airC, printed) => {
    expect(Math.abs(airViscosity({ airC }) / airViscosity({ airC: 15.2 }) - printed)).toBeLessThan(0.0004);
  });
});

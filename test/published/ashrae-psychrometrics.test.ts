/**
 * ASHRAE Handbook of Fundamentals, 2017, chapter 1: Tables 1, 2 and 3 and Example 1, as quoted in the tests of an open
 * psychrometrics library. The handbook holds its saturation formula to 300 parts in a million of the table. Table 2 is
 * of real air: the ideal gas of the equations is up to 0.5 % low near room temperature, 1 % when cold or warm.
 */
import { describe, expect, it } from "vitest";
import { dewPoint } from "../../src/equations/air/dew-point.ts";
import { humidityRatio } from "../../src/equations/air/humidity-ratio.ts";
import { humidityRatioWetBulb } from "../../src/equations/air/humidity-ratio-wet-bulb.ts";
import { moistAirEnthalpy } from "../../src/equations/air/moist-air-enthalpy.ts";
import { moistAirVolume } from "../../src/equations/air/moist-air-volume.ts";
import { saturationPressure } from "../../src/equations/air/saturation-pressure.ts";
import { standardPressure } from "../../src/equations/air/standard-pressure.ts";

const SEA_LEVEL = 101_325;

/** The greatest difference allowed, as a share of the printed value. */
const within = (value: number, printed: number, share: number): void =>
  expect(Math.abs(value - printed)).toBeLessThanOrEqual(Math.abs(printed) * share);

describe("Table 3, saturation pressure (Pa)", () => {
  it.each([
    [-20, 103.24],
    [-5, 401.74],
    [5, 872.6],
    [25, 3169.7],
    [50, 12_351.3],
    [100, 101_418],
    [150, 476_101.4],
  ])("%d °C", (airC, printed) => {
    within(saturationPressure({ airC }), printed, 0.0003);
  });

  it("−60 °C prints 1.08", () => {
    expect(saturationPressure({ airC: -60 })).toBeCloseTo(1.08, 2);
  });

  it.each([-20, 5, 50])("the dew point turns it back at %d °C", (airC) => {
    expect(dewPoint({ vapourPa: saturationPressure({ airC }) })).toBeCloseTo(airC, 6);
  });
});

describe("Table 2, humidity ratio at saturation (kg/kg)", () => {
  it.each([
    [-50, 0.0000243, 0.01],
    [-20, 0.0006373, 0.01],
    [-5, 0.0024863, 0.005],
    [5, 0.005425, 0.005],
    [25, 0.020173, 0.005],
    [50, 0.086863, 0.01],
  ])("%d °C", (airC, printed, share) => {
    const vapourPa = saturationPressure({ airC });
    within(humidityRatio({ vapourPa, pressurePa: SEA_LEVEL }), printed, share);
  });
});

describe("Table 2, enthalpy at saturation (kJ/kg)", () => {
  it.each([
    [-50, -50.222],
    [-20, -18.542],
    [5, 18.639],
    [25, 76.504],
    [50, 275.353],
  ])("%d °C", (airC, printed) => {
    const ratio = humidityRatio({ vapourPa: saturationPressure({ airC }), pressurePa: SEA_LEVEL });
    within(moistAirEnthalpy({ airC, humidityRatio: ratio }), printed, 0.01);
  });
});

describe("Table 2, dry air at 25 °C", () => {
  it("holds 25.148 kJ/kg", () => {
    within(moistAirEnthalpy({ airC: 25, humidityRatio: 0 }), 25.148, 0.0003);
  });

  it("takes 0.8443 m³/kg", () => {
    within(moistAirVolume({ airC: 25, humidityRatio: 0, pressurePa: SEA_LEVEL }), 0.8443, 0.001);
  });
});

describe("Table 1, pressure of the standard atmosphere (Pa)", () => {
  it.each([
    [-500, 107_478],
    [0, 101_325],
    [500, 95_461],
    [1000, 89_875],
    [4000, 61_640],
    [10_000, 26_436],
  ])("%d m", (altitudeM, printed) => {
    expect(Math.abs(standardPressure({ altitudeM }) - printed)).toBeLessThanOrEqual(1);
  });
});

describe("Example 1: 40 °C dry, 20 °C wet, at sea level", () => {
  const ratio = humidityRatioWetBulb({ airC: 40, wetBulbC: 20, pressurePa: SEA_LEVEL });
  const vapourPa = (ratio * SEA_LEVEL) / (0.621945 + ratio);

  it("carries 0.0065 kg/kg, read from the chart; the equations say 0.00640", () => {
    expect(Math.abs(ratio - 0.0065)).toBeLessThanOrEqual(0.0001);
    expect(ratio).toBeCloseTo(0.0064, 5);
  });

  it("has a relative humidity of 0.14", () => {
    expect(vapourPa / saturationPressure({ airC: 40 })).toBeCloseTo(0.14, 2);
  });

  it("holds 56.7 kJ/kg", () => {
    expect(Math.abs(moistAirEnthalpy({ airC: 40, humidityRatio: ratio }) - 56.7)).toBeLessThanOrEqual(0.1);
  });

  it("takes 0.896 m³/kg", () => {
    expect(moistAirVolume({ airC: 40, humidityRatio: ratio, pressurePa: SEA_LEVEL })).toBeCloseTo(0.896, 3);
  });

  it("has its dew point at 7 °C, read from the chart; the equations say 7.43", () => {
    expect(Math.abs(dewPoint({ vapourPa }) - 7)).toBeLessThanOrEqual(0.5);
    expect(dewPoint({ vapourPa })).toBeCloseTo(7.43, 1);
  });
});

describe("worked apart in a table calculation, as that library's tests quote it", () => {
  it("3169.7 Pa at 95 461 Pa carry 0.02136040 kg/kg", () => {
    expect(humidityRatio({ vapourPa: 3169.7, pressurePa: 95_461 })).toBeCloseTo(0.0213603998, 8);
  });

  it.each([
    [30, 25, 0.0192281274],
    [-1, -5, 0.0012039982],
  ])("%d °C dry, %d °C wet at 95 461 Pa", (airC, wetBulbC, printed) => {
    within(humidityRatioWetBulb({ airC, wetBulbC, pressurePa: 95_461 }), printed, 0.0003);
  });

  it("30 °C with 0.02 kg/kg holds 81.316 kJ/kg and takes 0.940855 m³/kg at 95 461 Pa", () => {
    within(moistAirEnthalpy({ airC: 30, humidityRatio: 0.02 }), 81.316, 0.0003);
    within(moistAirVolume({ airC: 30, humidityRatio: 0.02, pressurePa: 95_461 }), 0.940855, 0.0003);
  });
});

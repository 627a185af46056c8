/** Environment Canada, Canadian Climate Normals 1971–2000, Quebec airport station: the yearly columns check the months. */
import { expect, it } from "vitest";
import { climate } from "../../src/catalogue/climates.ts";

const quebec = climate("quebec-city");
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const months = (key: "meanTemperature" | "precipitation" | "rainfall" | "snowDepth"): number[] =>
  quebec?.[key].value ?? [];

it("mean temperature over the year is printed as 4 °C", () => {
  expect(Math.abs(sum(months("meanTemperature")) / 12 - 4)).toBeLessThan(0.05);
});

it("precipitation over the year is printed as 1230.3 mm and rain as 923.8 mm", () => {
  expect(sum(months("precipitation"))).toBeCloseTo(1230.3, 1);
  expect(sum(months("rainfall"))).toBeCloseTo(923.8, 1);
});

it("snow depth over the year is printed as 22 cm", () => {
  expect(Math.round(sum(months("snowDepth")) / 12 / 10)).toBe(22);
});

it("humidity and the wind's speed are remembered and say so", () => {
  for (const figure of [quebec?.relativeHumidity, quebec?.windSpeed]) {
    expect(figure?.basis).toBe("memory");
  }
});

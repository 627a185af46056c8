/**
 * National Design Specification for Wood Construction, 2018: specific gravity for fastener formulae, Table 12.3.3A, as
 * transcribed; and diameters of wood screws #8, #10 and #12.
 */
import { expect, it } from "vitest";
import { screwGauge } from "../../src/catalogue/fasteners.ts";
import { species } from "../../src/catalogue/species.ts";

it.each([
  ["douglas-fir-larch", 0.5],
  ["douglas-fir-larch-north", 0.49],
  ["hem-fir", 0.43],
  ["hem-fir-north", 0.46],
  ["spruce-pine-fir", 0.42],
  ["spruce-pine-fir-south", 0.36],
  ["eastern-white-pine", 0.36],
  ["western-cedars", 0.36],
  ["western-cedars-north", 0.35],
  ["northern-white-cedar", 0.31],
  ["quaking-aspen", 0.39],
  ["southern-pine", 0.55],
  ["red-oak", 0.67],
  ["white-oak", 0.73],
] as const)("Table 12.3.3A: %s is %d", (id, gravity) => {
  expect(species(id)?.specificGravityFastener).toMatchObject({ value: gravity, unit: "1" });
});

it.each([
  ["#8", 0.164],
  ["#10", 0.19],
  ["#12", 0.216],
] as const)("wood screw %s is %d in", (id, inch) => {
  expect(screwGauge(id)?.diameterInch).toMatchObject({ value: inch, unit: "in" });
  expect(screwGauge(id)?.diameter.value).toBeCloseTo(inch * 25.4, 4);
});

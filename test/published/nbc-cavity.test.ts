/**
 * Vents of the cavity: woven mesh by the form of ISO 9044 (terminology page of wire cloth), slots worked by hand, and the
 * rule sets that they are held against: National Building Code of Canada 9.27.2.2.(1) and the others of the catalogue.
 */
import { describe, expect, it } from "vitest";
import { cavityRuleSet } from "../../src/catalogue/cavity-rules.ts";
import { netVentArea } from "../../src/equations/net-vent-area.ts";
import { openShare } from "../../src/equations/open-share.ts";
import { wovenFreeShare } from "../../src/equations/woven-free-share.ts";

describe("woven square mesh, free share in percent", () => {
  it.each([
    [3.15, 0.8, 63.6],
    [3, 0.5, 73.5],
    [4, 1, 64.0],
    [2, 0.5, 64.0],
    [1.6, 0.4, 64.0],
  ])("%d mm opening, %d mm wire", (openingMm, wireMm, percent) => {
    expect(wovenFreeShare({ openingMm, wireMm }) * 100).toBeCloseTo(percent, 1);
  });
});

describe("a 25 mm slot with 45 mm battens at 400 mm", () => {
  const slot = { slotMm: 25, battenWidthMm: 45, battenCentresMm: 400, cleanShare: 1 };
  const asked = (id: string): number => cavityRuleSet(id)?.ventArea?.value ?? Number.NaN;

  it("nets 163 cm²/m behind 3/0.5 mesh and passes the 150 rule", () => {
    const net = netVentArea({ ...slot, freeShare: wovenFreeShare({ openingMm: 3, wireMm: 0.5 }) });
    expect(net).toBeCloseTo(163, 0);
    expect(net).toBeGreaterThan(asked("austria-oenorm-b-8110-2"));
  });

  it("nets 72 cm²/m behind a 3/5 perforation: passes the 50 rule, fails 100 and 150", () => {
    const net = netVentArea({ ...slot, freeShare: 0.3265 });
    expect(net).toBeCloseTo(72, 0);
    expect(net).toBeGreaterThan(asked("germany-din-18516-1"));
    expect(net).toBeLessThan(asked("switzerland-practice"));
    expect(net).toBeLessThan(asked("austria-oenorm-b-8110-2"));
  });
});

it("the National Building Code asks for 10 mm of drained and vented cavity and names no vent area", () => {
  expect(cavityRuleSet("canada-nbc")?.depth.value).toBe(10);
  expect(cavityRuleSet("canada-nbc")?.ventArea).toBeUndefined();
});

describe("open share of boards with gaps, worked by hand (percent)", () => {
  it.each([
    [140, 8, 5.4],
    [89, 10, 10.1],
    [38, 12, 24],
  ])("board %d, gap %d", (boardMm, gapMm, percent) => {
    expect(openShare({ boardMm, gapMm }) * 100).toBeCloseTo(percent, 1);
  });
});

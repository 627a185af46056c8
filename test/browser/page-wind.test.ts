/** Wind on the sheet: painted with a legend, what governs a press away, the code and its inputs typed with help, screws before and after. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { type OpenPage, openPage, serveExample, soon, violations } from "./page-harness.ts";

const go = (page: Page, part: string) => page.locator(".part", { hasText: part }).click();
const field = (page: Page, label: string | RegExp) =>
  page.locator(".wind-fields").getByLabel(label, { exact: true });

describeInBrowser("wind on the sheet", (browser) => {
  let serving: Serving;
  let open: OpenPage;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
    open = await openPage(browser(), serving);
  });
  afterAll(async () => {
    await open.close();
    await serving.close();
  });

  it("is painted when it is asked for, and what governs is ringed by one press", async () => {
    const { page } = open;
    expect(await page.locator('.drawing-host [data-layer^="A-WIND"]').count()).toBe(0);
    await page.locator(".layer-controls button", { hasText: "wind" }).click();
    await soon(() => page.locator('.drawing-host [data-layer="A-WIND--E-"] > *').count()).toBeGreaterThan(
      100,
    );
    const governs = page.locator(".wind-governs button");
    await soon(() => governs.count()).toBe(4);
    await governs.nth(2).click();
    await soon(() => page.locator(".ringed").count()).toBe(1);
    await governs.nth(1).click();
    await soon(() => page.locator(".ringed").count()).toBe(0);
    await soon(() => page.locator(".pick-outline").count()).toBe(1);
    expect(await violations(page)).toEqual([]);
  });

  it("a finding on a screw rings it where it stands", async () => {
    const { page } = open;
    await page.locator(".notes .fold[aria-expanded]").click();
    await page.locator(".note-press", { hasText: "Screws of the cladding in wind" }).first().click();
    await soon(() => page.locator(".ringed").count()).toBe(1);
  });

  it("is typed with its source, changes the proof, and is taken back", async () => {
    const { page } = open;
    await go(page, "Proof");
    const pressure = field(page, "hourly pressure q, once in 50 years (kPa)");
    expect(await pressure.inputValue()).toBe("0.41");
    const end = page.locator(".wind-said li").first();
    const before = await end.textContent();
    await pressure.fill("0.9");
    await pressure.press("Enter");
    await soon(() => end.textContent()).not.toBe(before);
    await soon(() => page.locator(".fixing-plans button", { hasText: "Set" }).count()).toBeGreaterThan(0);
    await pressure.fill("9");
    await soon(() => page.locator(".wind-fields .wrong").count()).toBe(1);
    await pressure.press("Escape");
    expect(await violations(page)).toEqual([]);
    await page.locator(".field-history button", { hasText: "Undo" }).click();
    await soon(() => pressure.inputValue()).toBe("0.41");
  });

  it("another code asks for its own words and says what is missing", async () => {
    const { page } = open;
    await field(page, "structural code and edition").selectOption("usa-asce-7-22");
    await soon(() => field(page, "terrain").locator("option").allTextContents()).toContain(
      "exposure C: open land",
    );
    await soon(() => page.locator(".wind-legend li").count()).toBeGreaterThan(0);
    await field(page, "terrain").selectOption("C");
    await field(page, "basic speed V, gust of 3 s (m/s)").fill("51");
    await field(page, "source of: basic speed V, gust of 3 s (m/s)").fill("map of the code");
    await field(page, "source of: basic speed V, gust of 3 s (m/s)").press("Enter");
    await soon(() => page.locator(".wind-governs button").count()).toBeGreaterThan(2);
    expect(open.complaints).toEqual([]);
  });
});

/** Figures of the reader's own, put in the place of the reference data's on the page, and taken out again. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { openPage, serveExample, soon, violations } from "./page-harness.ts";

const NAME = "climates.drivenRain.moderate";

const form = (page: Page) => page.getByRole("form", { name: NAME, exact: true });
const ratio = (page: Page) => page.locator(".bar-row[aria-pressed=true] .bar-figure").textContent();

describeInBrowser("figures of one's own", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());

  it.each([
    ["wide", {}],
    ["on a phone", { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }],
  ])("%s: typed by keys with where it stands, felt by the rule, and taken out again", async (_, options) => {
    const { page, complaints, close } = await openPage(browser(), serving, options);
    await page.locator(".margin").getByRole("button", { name: "Proof" }).click();
    await page.locator(".bar-row").filter({ hasText: "Driven rain" }).click();
    await soon(() => form(page).count()).toBe(1);
    const before = await ratio(page);

    // Without a number and a source nothing is done, and both are asked for.
    await form(page)
      .getByLabel(/Your value/)
      .focus();
    await page.keyboard.press("Enter");
    await soon(() => form(page).locator(".figure-wrong").count()).toBe(2);

    await page.keyboard.type("1,5");
    await page.keyboard.press("Tab");
    await page.keyboard.type("local code");
    await page.keyboard.press("Enter");
    await soon(() => form(page).locator(".figure-own").textContent()).toContain("local code");
    await soon(() => ratio(page)).not.toBe(before);
    expect(await violations(page)).toEqual([]);

    await form(page).getByRole("button", { name: "Take out" }).press("Enter");
    await soon(() => form(page).locator(".figure-own").count()).toBe(0);
    await soon(() => ratio(page)).toBe(before);
    await soon(() =>
      form(page)
        .getByLabel(/Your value/)
        .evaluate((field) => field === document.activeElement),
    ).toBe(true);
    expect(complaints).toEqual([]);
    await close();
  });
});

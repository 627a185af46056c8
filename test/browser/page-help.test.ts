/** Help beside the fields: opened in place by hand or by keys, one at a time, closed by Escape. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { openPage, serveExample, violations } from "./page-harness.ts";

const notes = (page: Page): Promise<string[]> => page.locator(".help-note").allTextContents();
const about = (page: Page, field: string) =>
  page.getByRole("button", { name: `About: ${field}`, exact: true });

async function openDoor(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Items" }).click();
  const items = page.getByRole("treeitem");
  await items.filter({ hasText: "Front" }).first().click();
  await items.filter({ hasText: "D1" }).first().click();
  await expect.poll(() => page.locator(".facts h2").textContent()).toBe("D1");
}

describeInBrowser("help beside a field", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());

  it("opens in place, one at a time, and says what, where and what is usual in the reader's words", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    await openDoor(page);
    await about(page, "width").click();
    await expect.poll(() => notes(page)).toEqual([expect.stringContaining("1000 mm")]);
    await expect.poll(() => about(page, "width").getAttribute("aria-expanded")).toBe("true");
    await about(page, "sill over the datum").click();
    await expect.poll(() => notes(page)).toEqual([expect.stringContaining("900 mm")]);
    await expect.poll(() => about(page, "width").getAttribute("aria-expanded")).toBe("false");
    expect(await violations(page)).toEqual([]);
    await page.locator(".field-units button").nth(1).click();
    await expect.poll(() => notes(page)).toEqual([expect.stringContaining("3'")]);
    await page.getByRole("button", { name: "Français" }).click();
    await expect.poll(() => notes(page)).toEqual([expect.stringContaining("niveau zéro")]);
    expect(complaints).toEqual([]);
    await close();
  });

  it("is opened and closed by keys, and Escape gives the focus back and lets go of nothing else", async () => {
    const { page, close } = await openPage(browser(), serving);
    await openDoor(page);
    await about(page, "height").focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => notes(page)).toHaveLength(1);
    await page.keyboard.press("Tab");
    await page.keyboard.press("Escape");
    await expect.poll(() => notes(page)).toEqual([]);
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe("?About: height");
    await expect.poll(() => page.locator(".pick-outline").count()).toBe(1);
    await close();
  });

  it("stands beside the size of a new thing and, with no file, of a first wall, on a phone as well", async () => {
    const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
    const { page, close } = await openPage(browser(), serving, phone);
    await page.getByRole("button", { name: "Add: duct" }).click();
    await about(page, "diameter").click();
    await expect.poll(() => notes(page)).toEqual([expect.stringContaining("100 mm")]);
    expect(await violations(page)).toEqual([]);
    await close();
    const bare = await serveExample("nothing-of-this-name");
    const context = await browser().newContext(phone);
    const empty = await context.newPage();
    await empty.goto(bare.url);
    await about(empty, "height").click();
    await expect.poll(() => notes(empty)).toEqual([expect.stringContaining("2700 mm")]);
    expect(await violations(empty)).toEqual([]);
    await context.close();
    await bare.close();
  });
});

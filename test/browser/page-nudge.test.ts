/** Sides of zones, corners of faces, ducts and pinned joints moved by keys as openings are, each place said. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { openPage, serveExample } from "./page-harness.ts";

const place = (page: Page, label: string): Promise<string> =>
  page.getByLabel(label, { exact: true }).inputValue();
const said = (page: Page): Promise<string[]> => page.locator(".drawing-area [aria-live]").allTextContents();

/** Picks through the list of items, each name under the one before, and gives the drawing the keys. */
async function pick(page: Page, names: readonly string[]): Promise<void> {
  await page.getByRole("button", { name: "Items" }).click();
  for (const name of names) await page.getByRole("treeitem").filter({ hasText: name }).first().click();
  await page.locator(".drawing-host").focus();
}

describeInBrowser("what is picked and moved by keys", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());

  it("a zone's side goes along its axis, the next one after Enter", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    await pick(page, ["Front", "zone sheets"]);
    await expect.poll(() => place(page, "left side")).toBe("2410");
    await page.keyboard.press("Alt+ArrowRight");
    await expect.poll(() => place(page, "left side")).toBe("2411");
    await expect.poll(() => said(page)).toContain("left side: 2411 mm from the left end");
    await expect.poll(() => page.locator(".held-part").count()).toBe(1);
    await page.keyboard.press("Alt+Shift+ArrowLeft");
    await expect.poll(() => said(page)).toContain("left side: 2401 mm from the left end");
    expect(complaints).toEqual([]);
    await close();
  });

  it("a face's corner is taken by Enter and goes up and down", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    await pick(page, ["North"]);
    await expect.poll(() => place(page, "top at the right end")).toBe("2290");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Enter");
    await expect.poll(() => said(page)).toContain("corner 3 of 4: 2290 mm over the datum");
    await page.keyboard.press("Alt+Shift+ArrowUp");
    await expect.poll(() => place(page, "top at the right end")).toBe("2300");
    await expect.poll(() => said(page)).toContain("corner 3 of 4: 2300 mm over the datum");
    // An end of the face goes no other way.
    await page.keyboard.press("Alt+ArrowUp");
    await expect.poll(() => place(page, "top at the right end")).toBe("2301");
    expect(complaints).toEqual([]);
    await close();
  });

  it("a duct and a joint are moved, and their places said", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    await pick(page, ["West", "WP1"]);
    await expect.poll(() => page.locator(".facts h2").textContent()).toBe("WP1");
    const left = Number(await place(page, "middle from the left end"));
    await page.keyboard.press("Alt+ArrowRight");
    await expect.poll(() => place(page, "middle from the left end")).toBe(String(left + 1));
    await expect
      .poll(() => said(page))
      .toContainEqual(expect.stringContaining(`WP1: ${left + 1} mm from the left end`));
    await page.getByRole("treeitem").filter({ hasText: "Front" }).first().click();
    await page.getByRole("treeitem").filter({ hasText: "zone sheets" }).first().click();
    await page.getByRole("treeitem").filter({ hasText: "sheet joint" }).first().click();
    await expect.poll(() => page.locator(".facts h2").textContent()).toContain("sheet joint");
    await page.locator(".drawing-host").focus();
    // The joint is an upright or a level one: the other way it stays.
    await page.keyboard.press("Alt+ArrowRight");
    await page.keyboard.press("Alt+ArrowUp");
    await expect.poll(() => page.locator(".field-history").textContent()).toContain("Pin:");
    await expect
      .poll(() => said(page))
      .toContainEqual(
        expect.stringMatching(/^Place of the joint: [\d.]+ mm (from the left end|over the datum)$/),
      );
    expect(complaints).toEqual([]);
    await close();
  });
});

/** The part Survey: readings typed on the sheet, planes side by side, the packing at every crossing, a wall that was not read yet. */
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { openPage, serveExample, violations } from "./page-harness.ts";

describeInBrowser("the wall as read", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());

  it.each([
    ["at a desk", {}],
    ["on a phone by night", { viewport: { width: 390, height: 844 }, colorScheme: "dark" as const }],
  ])("%s: a reading is typed, the planes follow, and another one is chosen", async (_, options) => {
    const { page, complaints, close } = await openPage(browser(), serving, options);
    await page.getByRole("button", { name: "Survey", exact: true }).click();
    const planes = page.locator(".survey-planes");
    const outer = () =>
      planes
        .getByRole("row", { name: /outer plane/ })
        .locator("td")
        .allTextContents();
    await planes.waitFor();
    const before = await outer();
    expect(await violations(page)).toEqual([]);
    const reading = page.getByLabel("reading at 1830, 3000");
    expect(await reading.inputValue()).toBe("12");
    await reading.fill("twelve");
    await expect.poll(() => reading.getAttribute("aria-invalid")).toBe("true");
    await reading.fill("22");
    await reading.press("Enter");
    await expect.poll(outer).not.toEqual(before);
    const packed = async () => (await page.locator(".survey-map text").allTextContents()).join(" ");
    const map = await packed();
    await planes.getByRole("radio", { name: "plumb plane" }).check();
    await expect.poll(packed).not.toBe(map);
    await page.keyboard.press("Control+z");
    await expect.poll(outer).toEqual(before);
    expect(complaints).toEqual([]);
    await close();
  });

  it("reads a place again, and begins a wall that was not read", async () => {
    const { page, close } = await openPage(browser(), serving);
    await page.getByRole("button", { name: "Survey", exact: true }).click();
    const error = page.locator(".survey-findings", { hasText: /One reading errs by/ });
    await error.waitFor();
    const told = await error.textContent();
    await page.getByLabel("read again at").selectOption({ label: "3660, 1500" });
    await page.getByLabel("second reading").fill("11");
    await page.getByLabel("second reading").press("Enter");
    await expect.poll(() => error.textContent()).not.toBe(told);
    await page.locator(".survey-faces").getByRole("button", { name: "North" }).click();
    await page.getByRole("button", { name: "Read it on a grid" }).click();
    await page.locator(".survey-readings").waitFor();
    await expect.poll(() => page.locator(".survey-map text").count()).toBeGreaterThan(10);
    expect(await violations(page)).toEqual([]);
    await close();
  });
});

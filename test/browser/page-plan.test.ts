/** Where no file is served: walls told as lengths and turns become faces with corners; what crosses itself is refused. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { DRAWN, serveExample, violations } from "./page-harness.ts";

const run = (page: Page) => page.getByLabel("or walls and turns");
const press = (page: Page) => page.getByRole("button", { name: "Start these walls" });

describeInBrowser("a start from a plan", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("nothing-of-this-name");
  });
  afterAll(() => serving.close());

  it.each([
    ["at a desk", { viewport: { width: 1680, height: 1050 } }],
    ["on a phone by night", { viewport: { width: 390, height: 844 }, colorScheme: "dark" as const }],
  ])("%s: walls are typed, seen in plan, made higher, and set out", async (_, options) => {
    const context = await browser().newContext(options);
    const page = await context.newPage();
    await page.goto(serving.url);
    await run(page).fill("8400, left, 3600, right, 2400, left 45°, 2000");
    await expect
      .poll(() => page.locator(".plan-picture").getAttribute("aria-label"))
      .toBe("Plan of 4 walls, open at its ends");
    await expect
      .poll(() => page.locator(".plan-picture text").allTextContents())
      .toEqual(["A", "B", "C", "D", "N"]);
    const height = page.getByLabel("height of B (3600)");
    await height.fill("3000");
    await height.press("Enter");
    // What follows is as high until it is told.
    await expect.poll(() => page.getByLabel("height of C (2400)").inputValue()).toBe("3000");
    await page.getByLabel("the first looks to").fill("170");
    expect(await violations(page)).toEqual([]);
    await press(page).click();
    await page.locator(DRAWN).first().waitFor();
    await expect.poll(() => page.locator(".project-title").textContent()).toBe("Walls in plan");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save a copy" }).click(),
    ]);
    const { faces, corners } = JSON.parse(readFileSync(await download.path(), "utf8"));
    expect(faces.map(({ azimuthDeg }: { azimuthDeg: number }) => azimuthDeg)).toEqual([170, 80, 170, 125]);
    expect(faces.map(({ outline }: { outline: number[][] }) => outline[2])).toEqual([
      [8400, 2500],
      [3600, 2950],
      [2400, 2950],
      [2000, 2950],
    ]);
    expect(corners.map(({ left, right }: Record<string, string>) => [left, right])).toEqual([
      ["a", "b"],
      ["b", "c"],
      ["c", "d"],
    ]);
    await context.close();
  });

  it("is refused at its field in words where it crosses itself, and cannot be started", async () => {
    const context = await browser().newContext();
    const page = await context.newPage();
    await page.goto(serving.url);
    await expect.poll(() => press(page).isDisabled()).toBe(true);
    await run(page).fill("8400, left, 3600, left, 2400, left, 5000");
    await expect
      .poll(() => page.getByRole("alert").allTextContents())
      .toContain("Wall 4 crosses or touches an earlier one. Mend its length, or the turn before it.");
    await expect.poll(() => run(page).getAttribute("aria-invalid")).toBe("true");
    await expect.poll(() => press(page).isDisabled()).toBe(true);
    expect(await violations(page)).toEqual([]);
    await run(page).fill("8400, left, 3600, left, 2400, left, 3000");
    await expect.poll(() => press(page).isEnabled()).toBe(true);
    await page.getByLabel("the first looks to").fill("400");
    await expect.poll(() => press(page).isDisabled()).toBe(true);
    await context.close();
  });
});

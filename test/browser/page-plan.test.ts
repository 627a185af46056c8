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
      .toEqual(["A", "B", "C", "D", "N", "grid 1000"]);
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

  it("draws walls by hand, corner by corner, moves one, and tells them in words", async () => {
    const context = await browser().newContext({ viewport: { width: 1680, height: 1050 } });
    const page = await context.newPage();
    await page.goto(serving.url);
    const picture = page.locator(".plan-picture");
    await picture.scrollIntoViewIfNeeded();
    const box = await picture.boundingBox();
    if (!box) throw new Error("no picture of the plan");
    /** A place of the picture, in parts of it. */
    const at = (x: number, y: number) => ({ x: box.x + box.width * x, y: box.y + box.height * y });
    const told = () => run(page).inputValue();
    const first = picture.locator(".plan-corner").first();
    const start = await first.boundingBox();
    if (!start) throw new Error("no first corner");
    await page.mouse.click(at(0.6, 0).x, start.y);
    await expect.poll(told).toMatch(/^\d+$/);
    // The picture makes room as it is drawn on: each press is aimed at what it shows by then.
    const lastCorner = async () => {
      const last = await picture.locator(".plan-corner").last().boundingBox();
      if (!last) throw new Error("no last corner");
      return { x: last.x + last.width / 2, y: last.y + last.height / 2 };
    };
    const from = await lastCorner();
    await page.mouse.move(from.x + 3, from.y - 20);
    await page.mouse.down();
    await page.mouse.move(from.x + 4, from.y - 70, { steps: 4 });
    await page.mouse.up();
    await expect.poll(told).toMatch(/^\d+, left, \d+$/);
    const second = await lastCorner();
    await page.mouse.click(second.x + 60, second.y + 2);
    await expect.poll(told).toMatch(/^\d+, left, \d+, right, \d+$/);
    expect(await violations(page)).toEqual([]);
    const before = await told();
    const held = await lastCorner();
    await page.mouse.move(held.x, held.y);
    await page.mouse.down();
    await page.mouse.move(held.x + 25, held.y, { steps: 4 });
    await page.mouse.up();
    await expect.poll(told).not.toBe(before);
    expect(await told()).toMatch(/^\d+, left, \d+, right, \d+$/);
    await page.getByRole("button", { name: "Take the last wall away" }).click();
    await expect.poll(told).toMatch(/^\d+, left, \d+$/);
    await press(page).click();
    await page.locator(DRAWN).first().waitFor();
    await expect.poll(() => page.locator(".project-title").textContent()).toBe("Walls in plan");
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

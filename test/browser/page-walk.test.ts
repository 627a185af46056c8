/** The walk round the sheet: offered once, left at any moment, and going on by a press or by doing what it says. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { openPage, serveExample, violations } from "./page-harness.ts";

const OFFER = ".walk-offer";
const step = (page: Page): Promise<string | null> => page.locator(".walk .sub").textContent();
const next = (page: Page): Promise<void> => page.locator(".walk-next").click();

async function start(page: Page): Promise<void> {
  await page.locator(OFFER).getByRole("button", { name: "Show me round" }).click();
  await expect.poll(() => step(page)).toBe("1 of 10");
}

/** What the outline encloses lies inside the window, and the words do not cover the whole of it. */
async function pointsAt(page: Page, selector: string): Promise<void> {
  await expect
    .poll(async () => {
      const [outline, place] = await Promise.all([
        page.locator(".walk-outline").boundingBox(),
        page.locator(selector).first().boundingBox(),
      ]);
      return outline && place
        ? Math.abs(outline.x - place.x) +
            Math.abs(outline.y - place.y) +
            Math.abs(outline.width - place.width)
        : Number.POSITIVE_INFINITY;
    })
    .toBeLessThan(24);
}

describeInBrowser("the walk round the sheet", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());

  it("is offered on the first visit alone, and stays in the title block", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    await expect.poll(() => page.locator(OFFER).count()).toBe(1);
    expect(await violations(page)).toEqual([]);
    await page.locator(OFFER).getByRole("button", { name: "Not now" }).click();
    await expect.poll(() => page.locator(OFFER).count()).toBe(0);
    await page.reload();
    const press = page.locator(".walk-press");
    await expect.poll(() => press.isEnabled()).toBe(true);
    await expect.poll(() => page.locator(OFFER).count()).toBe(0);
    await press.click();
    await expect.poll(() => step(page)).toBe("1 of 10");
    await page.keyboard.press("Escape");
    await expect.poll(() => page.locator(".walk").count()).toBe(0);
    await expect.poll(() => press.evaluate((it) => it === document.activeElement)).toBe(true);
    expect(complaints).toEqual([]);
    await close();
  });

  it("goes on by doing what it says, on a sheet that stays in use", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    await start(page);
    await pointsAt(page, '.drawing-host [data-of="W2"]');
    const window = await page.locator('.drawing-host [data-of="W2"]').first().boundingBox();
    if (!window) throw new Error("W2 is not drawn");
    const at = [window.x + window.width / 2, window.y + window.height / 2] as const;
    await page.mouse.click(...at);
    await expect.poll(() => step(page)).toBe("2 of 10");
    await page.mouse.move(...at);
    await page.mouse.down();
    await page.mouse.move(at[0] + 20, at[1], { steps: 5 });
    await expect.poll(() => page.locator(".field-history").textContent()).toContain("Place W2");
    expect(await step(page)).toBe("2 of 10");
    await page.mouse.up();
    await expect.poll(() => step(page)).toBe("3 of 10");
    await pointsAt(page, ".section");
    await next(page);
    await expect.poll(() => step(page)).toBe("4 of 10");
    await page.locator(".note-press").first().click();
    await expect.poll(() => step(page)).toBe("5 of 10");
    await next(page);
    await pointsAt(page, '[data-part="build-up"]');
    await page.locator('[data-part="build-up"]').click();
    await pointsAt(page, ".detail-band");
    expect(await violations(page)).toEqual([]);
    // A part that is pressed before its step is its step.
    await page.locator('[data-part="order"]').click();
    await expect.poll(() => step(page)).toBe("8 of 10");
    expect(complaints).toEqual([]);
    await close();
  });

  it("on a phone brings each place into view over its words, goes back, and ends", async () => {
    const { page, complaints, close } = await openPage(browser(), serving, {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
      reducedMotion: "reduce",
    });
    await start(page);
    for (let at = 1; at <= 10; at++) {
      await expect.poll(() => step(page)).toBe(`${at} of 10`);
      await expect
        .poll(async () => {
          const [outline, words] = await Promise.all([
            page.locator(".walk-outline").boundingBox(),
            page.locator(".walk").boundingBox(),
          ]);
          return outline && words && outline.y < words.y && outline.y + outline.height > 0;
        })
        .toBe(true);
      if (at === 4) expect(await violations(page)).toEqual([]);
      await next(page);
    }
    await expect.poll(() => page.locator(".walk").count()).toBe(0);
    await page.locator(".walk-press").click();
    await next(page);
    await expect.poll(() => step(page)).toBe("2 of 10");
    await page.locator(".walk").getByRole("button", { name: "Back" }).click();
    await expect.poll(() => step(page)).toBe("1 of 10");
    await page.locator(".walk").getByRole("button", { name: "Leave" }).click();
    await expect.poll(() => page.locator(".walk").count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });
});

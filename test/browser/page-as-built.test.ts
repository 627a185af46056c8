/** The part Survey: what is measured of openings and what laying again may take, typed; and what newly fails with a layout. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { openPage, serveExample, soon, violations } from "./page-harness.ts";

const SIZES = [
  ["at a desk", {}],
  ["on a phone by night", { viewport: { width: 390, height: 844 }, colorScheme: "dark" as const }],
] as const;

async function type(page: Page, label: string, value: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(value);
  await field.press("Enter");
}

async function openWest(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Survey", exact: true }).click();
  await page.locator(".survey-faces").getByRole("button", { name: "West" }).click();
}

/** Of a finding among those of the face as built, by its words: the word of its outcome. */
const outcome = (page: Page, words: RegExp) =>
  page
    .locator(".built-findings li", { hasText: words })
    .locator(".outcome")
    .evaluateAll((marks) => marks.map((mark) => mark.getAttribute("aria-label")));

describeInBrowser("what is measured of openings", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());

  it.each(SIZES)(
    "%s: diagonals are typed, and the lean they tell is held to the band",
    async (_, options) => {
      const { page, complaints, close } = await openPage(browser(), serving, options);
      await openWest(page);
      const [rising, falling] = ["diagonal, rising to the right", "diagonal, falling to the right"] as const;
      const diagonals = page.getByRole("form", { name: "Diagonals of an opening as measured" });
      const laying = page.getByRole("form", { name: "What laying again may take and what it costs" });
      await diagonals.getByLabel("opening", { exact: true }).selectOption("W3");
      // A frame of 600 by 600 has no diagonal of more than both its sides.
      await type(page, rising, "1300");
      expect(await diagonals.getByRole("alert").textContent()).toContain("No diagonal of 600 mm × 600 mm");
      expect(await page.locator(".built-findings li").count()).toBe(0);
      await type(page, rising, "850.3");
      expect(await diagonals.getByRole("status").textContent()).toContain("the other diagonal as well");
      await type(page, falling, "846.8");
      // Without the width they tell nothing, and that is said.
      await soon(() => outcome(page, /its width was not/)).toEqual(["cannot evaluate"]);
      expect(await diagonals.getByRole("status").count()).toBe(0);
      // As wide as drawn, which is a measure too once it is said.
      const width = page.getByLabel("W3, width as measured", { exact: true });
      expect(await width.getAttribute("class")).toContain("faint");
      await width.press("Enter");
      await soon(() => width.getAttribute("class")).not.toContain("faint");
      // s = (850.3² − 846.8²) / (4 · 600) = 2.475 mm, within the usual 3.
      await soon(() => outcome(page, /jambs of W3 on west lean by 2.47 mm/)).toEqual(["pass"]);
      await type(page, "clearances may take, ±", "2");
      await soon(() => outcome(page, /lean by 2.47 mm/)).toEqual(["attention"]);
      await type(page, "clearances may take, ±", "-2");
      expect(await laying.getByRole("alert").textContent()).toBe("Must not be less than nothing.");
      // Wider than the clearance itself: the gap may close, which is said.
      await type(page, "clearances may take, ±", "30");
      await soon(() => outcome(page, /The clearance of .* may close/)).toEqual(["attention"]);
      await soon(() => outcome(page, /lean by 2.47 mm/)).toEqual(["pass"]);
      await laying.getByRole("button", { name: "About: clearances may take, ±" }).click();
      await laying.getByText("What the sealing strip and the turn of the flashing can still take").waitFor();
      expect(await violations(page)).toEqual([]);
      await page.keyboard.press("Escape");
      await page.getByRole("heading", { name: "As built" }).click();
      await page.keyboard.press("Control+z");
      await soon(() => outcome(page, /lean by 2.47 mm/)).toEqual(["attention"]);
      expect(await page.getByLabel("clearances may take, ±", { exact: true }).inputValue()).toBe("2");
      expect(complaints).toEqual([]);
      await close();
    },
  );

  it.each(SIZES)("%s: what a re-cut costs is typed, a whole number", async (_, options) => {
    const { page, complaints, close } = await openPage(browser(), serving, options);
    await openWest(page);
    const laying = page.getByRole("form", { name: "What laying again may take and what it costs" });
    await type(page, "cost: trim what is cut", "2.5");
    expect(await laying.getByRole("alert").textContent()).toBe("A whole number from 0 to 1000.");
    await type(page, "cost: trim what is cut", "4");
    await soon(() => page.locator(".field-history").textContent()).toContain("cost of trimming what is cut");
    await type(page, "joints may take, ±", "1.5");
    await soon(() => page.locator(".field-history").textContent()).toContain("what joints may take");
    expect(await violations(page)).toEqual([]);
    await page.getByRole("heading", { name: "As built" }).click();
    await page.keyboard.press("Control+z");
    await soon(() => page.getByLabel("joints may take, ±", { exact: true }).inputValue()).toBe("");
    await page.keyboard.press("Control+z");
    await soon(() => page.getByLabel("cost: trim what is cut", { exact: true }).inputValue()).toBe("");
    expect(complaints).toEqual([]);
    await close();
  });

  it.each(SIZES)("%s: a layout says what newly fails with it before it is taken", async (_, options) => {
    const { page, complaints, close } = await openPage(browser(), serving, options);
    await page.getByRole("button", { name: "Survey", exact: true }).click();
    await page.locator(".survey-faces").getByRole("button", { name: "Front" }).click();
    const newly = page.getByRole("region", { name: "What newly fails when it is laid so" });
    await type(page, "D1, left jamb as measured", "3581.5");
    await type(page, "D1, width as measured", "2447");
    const take = newly.getByRole("button", { name: /^Lay it so/ });
    // While it is worked out nothing can be taken.
    expect(await take.isDisabled()).toBe(true);
    await newly.getByText("With this layout 3 findings fail that did not before.").waitFor();
    expect(await take.textContent()).toBe("Lay it so all the same: 2 pieces, 3 newly failing");
    await newly.getByRole("button", { name: /P047 · Front · sheets/ }).click();
    await newly.locator(".working .formula").first().waitFor();
    expect(await newly.locator(".working").textContent()).toContain("26.9 > ");
    expect(await violations(page)).toEqual([]);
    const settle = async () => (await page.locator(".count").textContent()) ?? "";
    const before = await settle();
    await take.click();
    await page.getByText("Nothing has to move.").waitFor();
    await soon(settle).not.toBe(before);
    expect(await newly.count()).toBe(0);
    await page.keyboard.press("Control+z");
    await soon(settle).toBe(before);
    // A smaller step breaks nothing, and says so.
    await type(page, "D1, left jamb as measured", "3609.5");
    await type(page, "D1, width as measured", "2389");
    await newly.getByText("Nothing newly fails with this layout.").waitFor();
    await soon(() => take.textContent()).toMatch(/^Lay it so: (one piece|\d+ pieces)$/);
    expect(complaints).toEqual([]);
    await close();
  });
});

/** The sheet in its forms: wide, small, on a phone, by night, in both languages; and free of what shuts people out. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { DRAWN, openPage, serveExample, violations } from "./page-harness.ts";

const FORMS: readonly (readonly [name: string, options: BrowserContextOptions])[] = [
  ["by day", { colorScheme: "light" }],
  ["by night", { colorScheme: "dark" }],
  ["on a phone", { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }],
  ["on a phone by night", { viewport: { width: 390, height: 844 }, hasTouch: true, colorScheme: "dark" }],
];

describeInBrowser("the sheet in its forms", (browser) => {
  let serving: Serving;
  const documentsDir = mkdtempSync(join(tmpdir(), "outerleaf-documents-"));
  beforeAll(async () => {
    writeFileSync(join(documentsDir, "cut-list.csv"), "mark,length mm\r\nW-B101a,2494\r\n");
    writeFileSync(
      join(documentsDir, "front.svg"),
      '<svg xmlns="http://www.w3.org/2000/svg"><style>rect{fill:#123456}</style><rect width="9" height="9"/></svg>',
    );
    serving = await serveExample("atelier-bouleau", { documentsDir });
  });
  afterAll(async () => {
    await serving.close();
    rmSync(documentsDir, { recursive: true, force: true });
  });

  it.each(FORMS)(
    "%s has nothing that shuts people out (axe-core)",
    async (_, options) => {
      const { page, complaints, close } = await openPage(browser(), serving, options);
      expect(await violations(page)).toEqual([]);
      await page.locator(".note-press").first().click();
      await page.locator(".fold").last().click();
      expect(await violations(page)).toEqual([]);
      await page.getByRole("button", { name: "Items" }).click();
      await page.getByRole("treeitem").first().click();
      await page.getByRole("treeitem").filter({ hasText: "zone" }).first().click();
      await page.getByRole("treeitem").filter({ hasText: "L1a" }).first().click();
      await page.locator(".take-off-fold").last().click();
      expect(await violations(page)).toEqual([]);
      await page.locator(".margin").getByRole("button", { name: "Cutting" }).click();
      expect(await violations(page)).toEqual([]);
      await page.locator(".margin").getByRole("button", { name: "Proof" }).click();
      await page.setInputFiles("input[type=file]", {
        name: "torn.json",
        mimeType: "application/json",
        buffer: Buffer.from("{"),
      });
      await page.locator(".refused").waitFor();
      expect(await violations(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await close();
    },
    60_000,
  );

  it.each([
    [1680, 1050],
    [1280, 800],
    [390, 844],
  ])(
    "at %i × %i no word is cut off and nothing reaches past the sheet, in any reading",
    async (width, height) => {
      const { page, close } = await openPage(browser(), serving, { viewport: { width, height } });
      for (const language of ["Français", "English"]) {
        await page.getByRole("button", { name: language }).click();
        for (const units of [1, 0]) {
          await page.locator(".field-units button").nth(units).click();
          await page.waitForTimeout(250);
          expect({ language, units, cut: await cutOff(page) }).toEqual({ language, units, cut: [] });
        }
      }
      await close();
    },
  );

  it("lights itself as it is told, and else as the system is", async () => {
    const { page, close } = await openPage(browser(), serving, { colorScheme: "dark" });
    const paper = () => page.locator(".sheet").evaluate((sheet) => getComputedStyle(sheet).backgroundColor);
    expect(await paper()).toBe("rgb(20, 25, 28)");
    await page.getByRole("button", { name: "day", exact: true }).click();
    expect(await paper()).toBe("rgb(251, 250, 245)");
    await page.emulateMedia({ colorScheme: "light" });
    await page.getByRole("button", { name: "night", exact: true }).click();
    expect(await paper()).toBe("rgb(20, 25, 28)");
    await page.emulateMedia({ media: "print" });
    expect(await paper()).toBe("rgb(255, 255, 255)");
    expect(await page.locator(".margin").isVisible()).toBe(false);
    await close();
  });

  it("on a phone is one column in the order of need, and is picked from by touch", async () => {
    const { page, close } = await openPage(browser(), serving, FORMS[2]?.[1]);
    const tops = await Promise.all(
      [".drawing-area", ".notes", ".detail-band", ".title-block"].map(
        async (part) => (await page.locator(part).boundingBox())?.y ?? 0,
      ),
    );
    expect(tops).toEqual([...tops].sort((a, b) => a - b));
    const door = await page.locator('.drawing-host [data-of="D1"]').first().boundingBox();
    await page.touchscreen.tap((door?.x ?? 0) + 20, (door?.y ?? 0) + 40);
    await page.locator(".facts h2", { hasText: "D1" }).waitFor();
    const small = await page.locator("button:visible").evaluateAll((buttons) =>
      buttons.flatMap((button) => {
        const { width, height } = button.getBoundingClientRect();
        return width < 24 || height < 24 ? [button.textContent] : [];
      }),
    );
    expect(small).toEqual([]);
    await close();
  });

  it("links what is written, and a drawing opened by itself keeps its inks and may run nothing", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    await page.locator(".margin").getByRole("button", { name: "Sheets" }).click();
    const link = page.getByRole("link", { name: "cut-list.csv" });
    expect(await link.getAttribute("href")).toBe("/documents/cut-list.csv");
    await page.getByRole("link", { name: "front.svg" }).waitFor();
    await page.goto(`${serving.url}documents/front.svg`);
    const fill = await page.locator("rect").evaluate((rect) => getComputedStyle(rect).fill);
    expect(fill).toBe("rgb(18, 52, 86)");
    expect(complaints).toEqual([]);
    await close();
  });

  it("says so where no project is served, and still opens one", async () => {
    const empty = await serveExample("nothing-of-this-name");
    const context = await browser().newContext();
    const page = await context.newPage();
    await page.goto(empty.url);
    await page.locator(".refused").waitFor();
    expect(await page.locator(".drawing-area").textContent()).toContain("No project is on the sheet");
    await page.setInputFiles("input[type=file]", "examples/l-plan.outerleaf.json");
    await page.locator(DRAWN).first().waitFor();
    // The notes follow the drawing when it leaves them time.
    await page.locator(".refused").waitFor({ state: "detached" });
    await context.close();
    await empty.close();
  });
});

/** Texts that their box does not hold, and boxes that reach past the sheet. */
function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const sheet = document.querySelector(".sheet")?.getBoundingClientRect();
    const wide =
      document.documentElement.scrollWidth > window.innerWidth ? ["the page scrolls sideways"] : [];
    const boxes = document.querySelectorAll<HTMLElement>(
      ".field, .field .value, .notes-head, .count, .note-press > *, .facts, .facts dd, .facts dt, .year > :not(.unseen), .section > h2, .part",
    );
    const cut = [...boxes].flatMap((box) => {
      const { left, right, width } = box.getBoundingClientRect();
      if (width === 0) return [];
      const inSheet = box.closest(".margin") || (sheet && left >= sheet.left - 1 && right <= sheet.right + 1);
      const holds = box.tagName === "svg" || box.scrollWidth <= box.clientWidth + 1 || box.clientWidth === 0;
      return inSheet && holds ? [] : [`${box.className || box.tagName}: ${box.textContent?.slice(0, 40)}`];
    });
    // Drawn texts: inside their drawing, but for the empty foot of their line.
    const drawn = [...document.querySelectorAll<SVGTextElement>(".section svg text, .year svg text")].flatMap(
      (text) => {
        const inner = text.getBoundingClientRect();
        const outer = text.closest("svg")?.getBoundingClientRect();
        return outer &&
          inner.left >= outer.left - 1 &&
          inner.right <= outer.right + 1 &&
          inner.bottom <= outer.bottom + 4
          ? []
          : [`drawn: ${text.textContent}`];
      },
    );
    return [...wide, ...cut, ...drawn];
  });
}

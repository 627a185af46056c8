/** The sheet in its forms: wide, small, on a phone, by night, in both languages; and free of what shuts people out. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { DRAWN, drawn, openPage, restingBox, serveExample, soon, violations } from "./page-harness.ts";

const PHONE: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
};

/** What shuts people out of the page as it stands, by day and by night: what it holds is the same, its inks are not. */
async function shutsOut(page: Page): Promise<string[]> {
  const found: string[] = [];
  for (const colorScheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme });
    await soon(() => paper(page)).toBe(PAPERS[colorScheme]);
    for (const one of await violations(page, colorScheme === "light" ? "all" : "colour"))
      found.push(`${colorScheme}: ${one}`);
  }
  return found;
}

const PAPERS = { light: "rgb(251, 250, 245)", dark: "rgb(20, 25, 28)" };

const paper = (page: Page): Promise<string> =>
  page.locator(".sheet").evaluate((sheet) => getComputedStyle(sheet).backgroundColor);

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

  it.each<[form: string, options: BrowserContextOptions]>([
    ["on a desk", {}],
    ["on a phone", PHONE],
  ])("%s, by day and by night, has nothing that shuts people out (axe-core)", async (_, options) => {
    const { page, complaints, close } = await openPage(browser(), serving, options);
    expect(await shutsOut(page)).toEqual([]);
    await page.locator(".note-press").first().click();
    await page.locator(".working").first().waitFor();
    await page.locator(".fold").last().click();
    await page.locator(".note-list").nth(1).waitFor();
    expect(await shutsOut(page)).toEqual([]);
    await page.getByRole("button", { name: "Items" }).click();
    await page.getByRole("treeitem").first().click();
    await page.getByRole("treeitem").filter({ hasText: "zone" }).first().click();
    await page.getByRole("treeitem").filter({ hasText: "L1a" }).first().click();
    await page.locator(".take-off-fold").last().click();
    await page.locator(".take-off-step:visible").first().waitFor();
    expect(await shutsOut(page)).toEqual([]);
    await page.locator(".margin").getByRole("button", { name: "Cutting" }).click();
    await page.locator(".scene-picture").first().waitFor();
    expect(await shutsOut(page)).toEqual([]);
    await page.locator(".margin").getByRole("button", { name: "Proof" }).click();
    await page.locator(".bar-row").first().waitFor();
    await page.setInputFiles("input[type=file]", {
      name: "torn.json",
      mimeType: "application/json",
      buffer: Buffer.from("{"),
    });
    await page.locator(".refused").waitFor();
    expect(await shutsOut(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });

  it.each([
    [1680, 1050],
    [1280, 800],
    [390, 844],
  ])(
    "at %i × %i no word is cut off and nothing reaches past the sheet, in any reading",
    async (width, height) => {
      const { page, close } = await openPage(browser(), serving, { viewport: { width, height } });
      for (const language of ["Français", "English"] as const) {
        await page.getByRole("button", { name: language }).click();
        for (const units of [1, 0]) {
          await page.locator(".field-units button").nth(units).click();
          await soon(() => reading(page)).toEqual([LANGUAGES[language], units]);
          await restingBox(page, DRAWN);
          expect({ language, units, cut: await cutOff(page) }).toEqual({ language, units, cut: [] });
        }
      }
      await close();
    },
  );

  it("lights itself as it is told, and else as the system is", async () => {
    const { page, close } = await openPage(browser(), serving, { colorScheme: "dark" });
    await soon(() => paper(page)).toBe(PAPERS.dark);
    await page.getByRole("button", { name: "day", exact: true }).click();
    await soon(() => paper(page)).toBe(PAPERS.light);
    await page.emulateMedia({ colorScheme: "light" });
    await page.getByRole("button", { name: "night", exact: true }).click();
    await soon(() => paper(page)).toBe(PAPERS.dark);
    await page.emulateMedia({ media: "print" });
    await soon(() => paper(page)).toBe("rgb(255, 255, 255)");
    await soon(() => page.locator(".margin").isVisible()).toBe(false);
    await close();
  });

  it("on a phone is one column in the order of need, and is picked from by touch", async () => {
    const { page, close } = await openPage(browser(), serving, PHONE);
    const tops = await Promise.all(
      [".drawing-area", ".notes", ".detail-band", ".title-block"].map(
        async (part) => (await restingBox(page, part)).y,
      ),
    );
    expect(tops).toEqual([...tops].sort((a, b) => a - b));
    const door = await restingBox(page, drawn("D1"));
    await page.touchscreen.tap(door.x + 20, door.y + 40);
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
    await soon(() => link.getAttribute("href")).toBe("/documents/cut-list.csv");
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
    await soon(() => page.locator(".drawing-area").textContent()).toContain("No project is on the sheet");
    await page.setInputFiles("input[type=file]", "examples/l-plan.outerleaf.json");
    await page.locator(DRAWN).first().waitFor();
    // The notes follow the drawing when it leaves them time.
    await page.locator(".refused").waitFor({ state: "detached" });
    await context.close();
    await empty.close();
  });
});

const LANGUAGES = { Français: "fr", English: "en" };

/** In which language and units the page stands. */
const reading = (page: Page): Promise<unknown> =>
  page.evaluate(() => [
    document.documentElement.lang,
    [...document.querySelectorAll(".field-units button")].findIndex(
      (button) => button.getAttribute("aria-pressed") === "true",
    ),
  ]);

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

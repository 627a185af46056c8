/** Faces reshaped on the sheet: a corner dragged, a height typed, one set beside the last and taken out. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { DRAWN, openPage, restingBox, serveExample, soon } from "./page-harness.ts";

const picked = (page: Page): Promise<string | null> => page.locator(".facts h2").textContent();
const history = (page: Page): Promise<string | null> => page.locator(".field-history").textContent();
const place = (page: Page, label: string): Promise<string> =>
  page.getByLabel(label, { exact: true }).inputValue();

async function pickFace(page: Page, name: string): Promise<void> {
  await page.getByRole("button", { name: "Items" }).click();
  await page.getByRole("treeitem").filter({ hasText: name }).first().click();
  await soon(() => picked(page)).toBe(name);
}

describeInBrowser("faces on the sheet", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());

  it("a corner of the outline is dragged, and its height typed", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    await page.locator(".view-controls").getByRole("button", { name: "North" }).click();
    await pickFace(page, "North");
    await soon(() => place(page, "top at the right end")).toBe("2290");
    const outline = await restingBox(page, ".pick-outline");
    const corner = [outline.x + outline.width, outline.y] as const;
    await page.mouse.move(...corner);
    await page.mouse.down();
    await page.mouse.move(corner[0], corner[1] - 40, { steps: 6 });
    await page.mouse.up();
    await soon(async () => Number(await place(page, "top at the right end"))).toBeGreaterThan(2320);
    await soon(() => history(page)).toContain("Reshape face north");
    // The last places of the drag are still on their way: what is typed before them would be written over.
    await restingBox(page, ".pick-outline");
    await soon(() => place(page, "top at the left end")).toBe("2290");
    const top = page.getByLabel("top at the right end", { exact: true });
    await top.fill("2290");
    await top.press("Enter");
    await soon(() => place(page, "top at the right end")).toBe("2290");
    await soon(() => page.locator(".edit-why").first().textContent()).toContain("The plan is closed");
    expect(complaints).toEqual([]);
    await close();
  });

  it("a face is set beside one whose right end is free, its size typed, its rules given, and taken out", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    await pickFace(page, "Recess-right");
    await page.getByRole("button", { name: "Add it at the right end" }).click();
    await soon(() => picked(page)).toBe("Face1");
    const width = page.getByLabel("width", { exact: true });
    await width.fill("1500");
    await width.press("Enter");
    await soon(() => history(page)).toContain("Make face face1 1500 mm wide");
    await page.getByLabel("give its rules to").selectOption("north");
    await soon(() => page.locator(".refused, .field-history").allTextContents()).toContainEqual(
      expect.stringMatching(/Give the rules of face face1 to north|F\d{3}/),
    );
    await page.getByRole("button", { name: "Remove", exact: true }).click();
    await soon(() => history(page)).toContain("Remove face face1");
    expect(complaints).toEqual([]);
    await close();
  });

  it("where no file is served a wall is started by its size, and an opening added", async () => {
    const bare = await serveExample("nothing-of-this-name");
    const context = await browser().newContext();
    const page = await context.newPage();
    await page.goto(bare.url);
    const width = page.getByLabel("width", { exact: true });
    await width.fill("6100");
    await width.press("Enter");
    await page.getByRole("button", { name: "Start a wall" }).click();
    await page.locator(DRAWN).first().waitFor();
    await page.getByRole("button", { name: "Add: window" }).click();
    await page.getByRole("button", { name: "Place it on Front" }).click();
    await soon(() => picked(page)).toBe("W1");
    // 900 mm in the middle of 6100.
    await soon(() => place(page, "from the left end")).toBe("2600");
    await context.close();
    await bare.close();
  });
});

/** A window moved on the sheet: the facade follows, each step can be taken back, and nothing is lost. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { drawn, exampleFile, openPage, pickDrawn, restingBox, serveExample, soon } from "./page-harness.ts";

const places = (page: Page): Promise<string[]> =>
  page
    .locator(".place-fields input")
    .evaluateAll((inputs) => inputs.map((one) => (one as HTMLInputElement).value));

const pickW2 = (page: Page) => pickDrawn(page, "W2");

/** All that is drawn on the elevation. */
const drawing = (page: Page): Promise<string[]> =>
  page.locator(".drawing-host > svg").evaluateAll((leaves) => leaves.map(({ innerHTML }) => innerHTML));

const history = (page: Page): Promise<string | null> => page.locator(".field-history").textContent();
/** The same once nothing more is drawn: the symbols of findings follow the facade. */
async function restingDrawing(page: Page): Promise<string[]> {
  let now = await drawing(page);
  for (let before: string[] = []; before.join() !== now.join(); now = await drawing(page)) {
    before = now;
    await page.waitForTimeout(400);
  }
  return now;
}

const kept = (page: Page): Promise<string | null> => page.locator(".kept-state").textContent();
const sheets = (page: Page): Promise<string | null> => page.locator(".field-totals").textContent();

describeInBrowser("editing on the sheet", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());

  it("a window is dragged, the facade follows, and the drag is one step to take back and do again", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    const [x, y] = await pickW2(page);
    const { width } = await restingBox(page, drawn("W2"));
    await soon(() => sheets(page)).toContain("sheets");
    const before = await sheets(page);
    await soon(() => places(page)).toEqual(["750", "920", "900", "1180"]);
    const unmoved = await restingDrawing(page);
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let step = 1; step <= 10; step++) await page.mouse.move(x + (30 * step * width) / 900, y);
    await page.mouse.up();
    await soon(async () => Number((await places(page))[0])).toBeGreaterThan(900);
    await soon(() => sheets(page)).not.toBe(before);
    // The fields follow the drag at a distance: its last place is read when they have come to rest.
    let left: string | undefined;
    await soon(async () => {
      const held = left;
      await restingBox(page, drawn("W2"));
      [left] = await places(page);
      return left === held;
    }).toBe(true);
    await page.keyboard.press("Control+z");
    await soon(() => places(page)).toEqual(["750", "920", "900", "1180"]);
    await soon(() => sheets(page)).toBe(before);
    await soon(() => drawing(page)).toEqual(unmoved);
    await page.keyboard.press("Control+Shift+z");
    await soon(async () => (await places(page))[0]).toBe(left);
    // What was drawn over the former drawing is what a new page draws.
    await soon(() => kept(page)).toBe("in this browser alone");
    const moved = await restingDrawing(page);
    await page.reload();
    await soon(() => history(page)).toContain("kept");
    await pickW2(page);
    await soon(() => drawing(page)).toEqual(moved);
    expect(complaints).toEqual([]);
    await close();
  });

  it("keys move it a millimetre, and its place can be typed in either system", async () => {
    const { page, close } = await openPage(browser(), serving);
    await pickW2(page);
    await page.locator(".drawing-host").focus();
    await page.keyboard.press("Alt+ArrowRight");
    await soon(async () => (await places(page))[0]).toBe("751");
    const sill = page.getByLabel("sill over the datum");
    await sill.fill("3 ft");
    await sill.press("Enter");
    await soon(async () => (await places(page))[1]).toBe("914.4");
    await sill.fill("a yard");
    await soon(() => page.locator(".wrong").count()).toBe(1);
    await sill.press("Enter");
    await sill.press("Escape");
    await soon(() => places(page)).toEqual(["751", "914.4", "900", "1180"]);
    // Two presses before the page has followed the first are two steps.
    await page.getByRole("button", { name: "Undo" }).evaluate((undo: HTMLElement) => {
      undo.click();
      undo.click();
    });
    await soon(() => places(page)).toEqual(["750", "920", "900", "1180"]);
    await close();
  });

  it("an edit that the file cannot hold is told and not made", async () => {
    const { page, close } = await openPage(browser(), serving);
    await pickW2(page);
    const left = page.getByLabel("from the left end");
    await left.fill("4000");
    await left.press("Enter");
    await soon(() => page.locator(".refused").textContent()).toContain("F013");
    await soon(async () => (await places(page))[0]).toBe("750");
    await soon(() => history(page)).toContain("none");
    await close();
  });

  it("what was edited is there after the page was closed, and can be saved as a file that is the edited project", async () => {
    const { page, close } = await openPage(browser(), serving);
    await pickW2(page);
    const width = page.getByLabel("width", { exact: true });
    await width.fill("950");
    await width.press("Enter");
    await soon(async () => (await places(page))[2]).toBe("950");
    await soon(() => page.locator(".field-file").textContent()).toContain("edited");
    await soon(() => kept(page)).toBe("in this browser alone");
    await page.reload();
    await soon(() => history(page)).toContain("kept");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save a copy" }).click(),
    ]);
    const saved = JSON.parse(readFileSync(await download.path(), "utf8"));
    const asServed = JSON.parse(readFileSync(exampleFile("atelier-bouleau"), "utf8"));
    asServed.faces[1].openings[1].x = [750, 1700];
    expect(saved).toEqual(asServed);
    await soon(() => page.locator(".unsaved").count()).toBe(0);
    await close();
  });

  it("a mend that is safe is done in one press", async () => {
    const { page, close } = await openPage(browser(), serving);
    const project = JSON.parse(readFileSync(exampleFile("atelier-bouleau"), "utf8"));
    project.claddings[0].gapBand = [9, 9.2];
    await page.locator('input[type="file"]').setInputFiles({
      name: "tight.outerleaf.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify(project)),
    });
    // It is the project on the sheet in another state: what it would change is seen first.
    await page.getByRole("button", { name: "Open the file by itself" }).click();
    await soon(() => page.locator(".file-name").textContent()).toContain("tight");
    const note = page.locator(".note-press", { hasText: "Storey rod" }).first();
    await note.click();
    await page.locator(".mends button").first().click();
    await soon(() => history(page)).toContain("Mended: Storey rod");
    await soon(() => page.locator(".mends button").count()).toBe(0);
    await close();
  });

  it("windows picked with Shift are moved and brought into line together", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    await pickDrawn(page, "W3");
    await page.keyboard.down("Shift");
    await pickDrawn(page, "W2");
    await page.keyboard.up("Shift");
    await page.getByRole("button", { name: "sills", exact: true }).click();
    await soon(() => history(page)).toContain("Align sills with W2");
    await page.locator(".drawing-host").focus();
    await page.keyboard.press("Alt+Shift+ArrowUp");
    await soon(() => history(page)).toContain("Place W2, W3");
    await soon(async () => (await places(page))[1]).toBe("930");
    await pickDrawn(page, "W3");
    await soon(async () => (await places(page))[1]).toBe("930");
    expect(complaints).toEqual([]);
    await close();
  });
});

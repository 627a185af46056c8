/** Something new drawn on a face of the sheet, by hand and by keys; copied, made another kind, and taken out. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { drawn, openPage, pickDrawn, restingBox, serveExample, soon } from "./page-harness.ts";

const places = (page: Page): Promise<string[]> =>
  page
    .locator(".place-fields input")
    .evaluateAll((inputs) => inputs.map((one) => (one as HTMLInputElement).value));

const picked = (page: Page): Promise<string | null> => page.locator(".facts h2").textContent();
const history = (page: Page): Promise<string | null> => page.locator(".field-history").textContent();

/** Where W4 of the north face stands on the screen, from 2400 to 4800 along it, and pixels for a millimetre. */
async function northFace(page: Page): Promise<{ left: number; sill: number; k: number }> {
  await page.getByRole("button", { name: "North", exact: true }).click();
  const box = await restingBox(page, drawn("W4"));
  const k = box.width / 2400;
  return { left: box.x - 2400 * k, sill: box.y + box.height + 1720 * k, k };
}

describeInBrowser("drawing on the sheet", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());

  it("a window is drawn by hand, picked, and is one step with a name to take back", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    const at = await northFace(page);
    await page.getByRole("button", { name: "Add: window" }).click();
    await page.mouse.move(at.left + 5300 * at.k, at.sill - 900 * at.k);
    await page.mouse.down();
    for (let step = 1; step <= 8; step++)
      await page.mouse.move(at.left + (5300 + 120 * step) * at.k, at.sill - (900 + 140 * step) * at.k);
    await page.mouse.up();
    await soon(() => picked(page)).toBe("W5");
    await soon(() => history(page)).toContain("Add window W5");
    const place = async (i: number): Promise<number> => Number((await places(page))[i]);
    await soon(async () => Math.abs((await place(0)) - 5300)).toBeLessThan(120);
    await soon(async () => Math.abs((await place(1)) - 900)).toBeLessThan(120);
    await soon(async () => Math.abs((await place(2)) - 960)).toBeLessThan(200);
    await soon(async () => Math.abs((await place(3)) - 1120)).toBeLessThan(200);
    await page.keyboard.press("Control+z");
    await soon(() => page.locator(drawn("W5")).count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });

  it("digits typed while the hand draws go to the field at the drawing", async () => {
    const { page, close } = await openPage(browser(), serving);
    const at = await northFace(page);
    await page.getByRole("button", { name: "Add: window" }).click();
    await page.mouse.move(at.left + 5300 * at.k, at.sill - 700 * at.k);
    await page.mouse.down();
    await page.mouse.move(at.left + 5700 * at.k, at.sill - 1000 * at.k, { steps: 4 });
    await page.keyboard.type("850");
    await page.keyboard.press("Tab");
    await page.keyboard.type("1000");
    await soon(() => page.locator(".ghost text").nth(1).textContent()).toBe("850 × 1000");
    await page.keyboard.press("Enter");
    await page.mouse.up();
    await soon(() => picked(page)).toBe("W5");
    await soon(async () => (await places(page)).slice(2)).toEqual(["850", "1000"]);
    await close();
  });

  it("by keys alone a door goes where the picked face has room, is nudged, and deleted", async () => {
    const { page, close } = await openPage(browser(), serving);
    await page.getByRole("button", { name: "North", exact: true }).click();
    await page.getByRole("button", { name: "Add: door" }).focus();
    await page.keyboard.press("Enter");
    await page.keyboard.type("1000");
    await page.keyboard.press("Enter");
    await soon(() => picked(page)).toBe("D3");
    await soon(async () => (await places(page)).slice(1)).toEqual(["0", "1000", "2100"]);
    const [left] = await places(page);
    await page.keyboard.press("Alt+Shift+ArrowLeft");
    await soon(async () => (await places(page))[0]).toBe(String(Number(left) - 10));
    await page.keyboard.press("Delete");
    await soon(() => history(page)).toContain("Remove door D3");
    await soon(() => page.locator(drawn("D3")).count()).toBe(0);
    await close();
  });

  it("what is drawn over another is refused with the reason, and nothing is added", async () => {
    const { page, close } = await openPage(browser(), serving);
    const at = await northFace(page);
    await page.getByRole("button", { name: "Add: window" }).click();
    await page.mouse.click(at.left + 3600 * at.k, at.sill - 1800 * at.k);
    await soon(() => page.locator(".refused").textContent()).toContain("F013");
    await soon(() => history(page)).toContain("none");
    await close();
  });

  it("a window is copied beside itself, made a door, and taken out by a press", async () => {
    const { page, close } = await openPage(browser(), serving);
    await pickDrawn(page, "W3");
    await page.getByRole("button", { name: "Copy", exact: true }).click();
    await soon(() => picked(page)).toBe("W5");
    await soon(async () => (await places(page)).slice(1)).toEqual(["1500", "600", "600"]);
    await page.getByLabel("kind").selectOption("door");
    await soon(() => history(page)).toContain("Make W5 a door");
    await page.getByRole("button", { name: "Remove", exact: true }).click();
    await soon(() => history(page)).toContain("Remove door W5");
    await close();
  });

  it("a line of one's own is added, dragged, typed and taken out, and the rod follows", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    await page.getByRole("button", { name: "Front", exact: true }).click();
    await page.getByRole("button", { name: "Add: line" }).click();
    await soon(() => picked(page)).toBe("L1");
    const line = page.locator('.drawing-host [data-of="front own L1"]');
    const before = Number((await places(page))[0]);
    // W2 is 900 wide, from 750 along the face, and its head 2100 high.
    const window = await restingBox(page, drawn("W2"));
    const k = window.width / 900;
    const at = [window.x + (2600 - 750) * k, window.y + (2100 - before) * k] as const;
    await page.mouse.move(...at);
    await page.mouse.down();
    await page.mouse.move(at[0], at[1] + 30, { steps: 5 });
    await page.mouse.up();
    await soon(async () => Number((await places(page))[0])).toBeLessThan(before);
    await page.locator(".place-fields input").fill("411");
    await page.keyboard.press("Enter");
    await soon(() => page.locator(".column").textContent()).toContain("nothing fits segment 2");
    await soon(() => history(page)).toContain("Place L1");
    await page.getByRole("button", { name: "Remove" }).click();
    await soon(() => line.count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });

  it("a duct is set by a tap, dragged, typed and deleted", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    const at = await northFace(page);
    await page.getByRole("button", { name: "Add: duct" }).click();
    await page.mouse.click(at.left + 1200 * at.k, at.sill - 1500 * at.k);
    await soon(() => picked(page)).toBe("NP1");
    await soon(async () => Math.abs(Number((await places(page))[0]) - 1200)).toBeLessThan(20);
    await page.mouse.move(at.left + 1200 * at.k, at.sill - 1500 * at.k);
    await page.mouse.down();
    await page.mouse.move(at.left + 1500 * at.k, at.sill - 1500 * at.k, { steps: 6 });
    await page.mouse.up();
    await soon(async () => Number((await places(page))[0])).toBeGreaterThan(1400);
    const diameter = page.getByLabel("diameter");
    await diameter.fill("125");
    await diameter.press("Enter");
    await soon(async () => (await places(page))[2]).toBe("125");
    await page.locator(".drawing-host").focus();
    await page.keyboard.press("Delete");
    await soon(() => history(page)).toContain("Remove NP1");
    expect(complaints).toEqual([]);
    await close();
  });
});

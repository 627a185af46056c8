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
    // Over the elevation the same packing stands, to the plane that is chosen; the room there is less.
    const over = page.locator('.drawing-host [data-layer="A-SURVEYT-"] [data-of]');
    expect(await over.count()).toBe(0);
    await page.locator(".layer-controls").getByRole("button", { name: "survey", exact: true }).click();
    await expect.poll(() => over.count()).toBeGreaterThan(0);
    const painted = async () => (await over.allTextContents()).join(" ");
    const outerPlane = await painted();
    await planes.getByRole("radio", { name: "plumb plane" }).check();
    await expect.poll(packed).not.toBe(map);
    await expect.poll(painted).not.toBe(outerPlane);
    expect(await violations(page)).toEqual([]);
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
    // What packing costs is asked of the reader: one packer at 2.50, and an hour at nothing but what it takes.
    const price = page.locator(".survey-costs tbody tr").first().locator("td").last();
    await expect.poll(() => price.textContent()).toBe("?");
    for (const [label, value] of [
      ["minutes a packer", "2"],
      ["minutes a spot planed", "20"],
      ["price of a packer", "2.5"],
      ["price of an hour", "0"],
    ] as const) {
      await page.getByLabel(label, { exact: true }).fill(value);
      await page.getByLabel(label, { exact: true }).press("Enter");
    }
    const count = page.locator(".survey-costs tbody tr").first().locator("td").first();
    const packers = Number(await count.textContent());
    await expect.poll(() => price.textContent()).toBe(`${(2.5 * packers).toFixed(2)} CAD`);
    await page.locator(".survey-faces").getByRole("button", { name: "North" }).click();
    await page.getByRole("button", { name: "Read it on a grid" }).click();
    await page.locator(".survey-readings").waitFor();
    await expect.poll(() => page.locator(".survey-map text").count()).toBeGreaterThan(10);
    expect(await violations(page)).toEqual([]);
    await close();
  });

  it("says on the elevation, in French, that no wall was read where none was", async () => {
    const french = await serveExample("l-plan");
    const { page, close } = await openPage(browser(), french);
    const says = page.locator(".layer-says");
    await page.locator(".layer-controls").getByRole("button", { name: "relevé", exact: true }).click();
    await expect.poll(() => says.textContent()).toBe("Aucun mur n’a encore été relevé.");
    expect(await page.locator('.drawing-host [data-layer^="A-SURVEY"]').count()).toBe(0);
    await page.locator(".layer-controls").getByRole("button", { name: "relevé", exact: true }).click();
    await expect.poll(() => says.textContent()).toBe("");
    await close();
    await french.close();
  });

  it("lays a face again for a window as measured, in one press that one step takes back", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    await page.getByRole("button", { name: "Survey", exact: true }).click();
    await page.locator(".survey-faces").getByRole("button", { name: "West" }).click();
    const left = page.getByLabel("W3, left jamb as measured");
    await left.fill("2094");
    await left.press("Enter");
    const rows = () => page.locator(".built-pieces tbody tr").allTextContents();
    await expect.poll(async () => (await rows()).length).toBe(5);
    const width = page.getByLabel("W3, width as measured");
    await width.fill("606");
    await width.press("Enter");
    // Both jambs are known now: the right one stands as drawn.
    await expect.poll(() => page.locator(".built-findings", { hasText: "right jamb" }).count()).toBe(0);
    await expect.poll(async () => (await rows()).length).toBe(5);
    expect((await rows())[0]).toContain("W-B206a");
    await page
      .locator(".survey-map text", { hasText: /^[−-]6/ })
      .first()
      .waitFor();
    expect(await violations(page)).toEqual([]);
    const press = page.getByRole("button", { name: "Lay it so: 5 pieces" });
    await press.click();
    await page.getByText("Nothing has to move.").waitFor();
    await page.keyboard.press("Control+z");
    await press.waitFor();
    const end = page.getByLabel("left end as measured");
    expect(await end.getAttribute("class")).toContain("faint");
    await end.fill("-4");
    await end.press("Enter");
    await expect.poll(() => end.getAttribute("class")).not.toContain("faint");
    expect(await end.inputValue()).toContain("4");
    expect(complaints).toEqual([]);
    await close();
  });
});

/** A file of the project on the sheet in another state: what it would change is seen before anything is done with it. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { exampleFile, openPage, serveExample, violations } from "./page-harness.ts";

describeInBrowser("a file of the project on the sheet", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("l-plan");
  });
  afterAll(() => serving.close());

  const text = readFileSync(exampleFile("l-plan"), "utf8");
  const give = (page: Page, name: string, content: unknown) =>
    page.setInputFiles(".field-file input[type=file]", {
      name,
      mimeType: "application/json",
      buffer: Buffer.from(typeof content === "string" ? content : JSON.stringify(content)),
    });
  const fileName = (page: Page) => page.locator(".file-name").textContent();

  it.each([
    ["at a desk", { viewport: { width: 1440, height: 900 } }],
    ["on a phone by night", { viewport: { width: 390, height: 844 }, colorScheme: "dark" as const }],
  ])("%s: is seen, left, taken as one step, or opened by itself", async (_, options) => {
    const { page, complaints, close } = await openPage(browser(), serving, options);
    await page.locator(".field-language").getByRole("button", { name: "English" }).click();
    const other = JSON.parse(text) as { faces: { azimuthDeg: number }[] };
    const [first] = other.faces;
    if (!first) throw new Error("no face");
    const was = first.azimuthDeg;
    first.azimuthDeg = was + 1;
    const dialog = page.getByRole("dialog", { name: "other.json: another state of" });
    const wasOpened = await fileName(page);

    await give(page, "other.json", other);
    await dialog.waitFor();
    expect(await dialog.textContent()).toContain("1 thing differs");
    expect(await dialog.locator("del").textContent()).toContain(String(was));
    expect(await dialog.locator("ins").textContent()).toContain(String(was + 1));
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press("Escape");
    await dialog.waitFor({ state: "detached" });
    expect(await fileName(page)).toBe(wasOpened);
    expect(await page.locator(".edit-name").textContent()).toContain("none");

    await give(page, "other.json", other);
    await dialog.getByRole("button", { name: "Take these changes, as one step" }).press("Enter");
    await dialog.waitFor({ state: "detached" });
    await expect.poll(() => page.locator(".edit-name").textContent()).toContain("Changes of other.json");
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => page.locator(".edit-name").textContent()).toContain("none");

    await give(page, "other.json", other);
    await dialog.getByRole("button", { name: "Open the file by itself" }).click();
    await expect.poll(() => fileName(page)).toContain("other.json");
    // Now it is the one on the sheet, and the same again changes nothing.
    await give(page, "other.json", other);
    await give(page, "torn.json", "{");
    await page.locator(".refused").waitFor();
    expect(await dialog.count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });
});

/** Readings chosen from disk: columns and unit said on the page, what would change shown, bad rows told, taken in one step. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { allBytes } from "../../src/output/pieces.ts";
import { writeWorkbook } from "../../src/output/xlsx/workbook.ts";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { openPage, serveExample, violations } from "./page-harness.ts";

describeInBrowser("readings that are taken in", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());

  const opened = async (options: Parameters<typeof openPage>[2]) => {
    const { page, complaints, close } = await openPage(browser(), serving, options);
    await page.getByRole("button", { name: "Survey", exact: true }).click();
    await page.getByRole("button", { name: "Take readings in from a table …" }).click();
    await page.getByLabel("Table of readings (CSV, XLSX)").waitFor();
    return { page, complaints, close };
  };
  const give = (page: Page, name: string, content: string | Uint8Array) =>
    page
      .getByLabel("Table of readings (CSV, XLSX)")
      .setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(content) });
  const tells = (page: Page) => page.locator(".survey-told .intake-tells");
  const take = (page: Page) => page.getByRole("button", { name: "Take these readings" });
  const readings = (page: Page) => page.locator(".survey-readings input").count();

  it.each([
    ["at a desk", { viewport: { width: 1440, height: 900 } }],
    ["on a phone by night", { viewport: { width: 390, height: 844 }, colorScheme: "dark" as const }],
  ])(
    "%s: columns are named, the unit is told, and what changes is seen before one press",
    async (_, options) => {
      const { page, complaints, close } = await opened(options);
      const before = await readings(page);
      await give(
        page,
        "laser.csv",
        "wall,along,up,dev\nfront,0.9,0.7,0.006\nfront,0,0,0.004\nfront,1.83,0,5 mm\n",
      );
      await expect.poll(() => tells(page).textContent()).toContain("laser.csv has no column for: Face, x");
      expect(await take(page).isDisabled()).toBe(true);
      for (const [column, title] of [
        ["Face", "wall"],
        ["x from the left end", "along"],
        ["y from the datum", "up"],
        ["Outward", "dev"],
      ] as const)
        await page.locator(".intake").getByLabel(column, { exact: true }).selectOption({ label: title });
      // Metres read as millimetres lie all in the corner: 0.9 mm from it is a reading like any other, so the unit is asked for.
      await page.getByLabel("lengths without a unit are in", { exact: true }).selectOption("m");
      await expect.poll(() => tells(page).textContent()).toContain("front: 1 new reading.");
      expect(await tells(page).textContent()).toContain("front: 1 reading is replaced.");
      expect(await tells(page).textContent()).toContain("front: 1 reading is the same.");
      expect(await tells(page).textContent()).toContain(
        "front: 13 readings that the table does not name stay.",
      );
      const rows = page.locator(".intake-places tbody tr");
      expect(await rows.allTextContents()).toEqual(["Front900700–6", "Front0024"]);
      expect(
        await page.getByRole("img", { name: "Front with 3 places of the table" }).locator("circle").count(),
      ).toBe(3);
      expect(await violations(page)).toEqual([]);
      await take(page).press("Enter");
      await expect.poll(() => readings(page)).toBe(before + 1);
      expect(await page.locator(".survey-places").getByLabel("reading at 900, 700").inputValue()).toBe("6");
      // The table says nothing more that the file has not.
      await expect.poll(() => take(page).isDisabled()).toBe(true);
      await page.keyboard.press("Control+z");
      await expect.poll(() => readings(page)).toBe(before);
      await expect.poll(() => tells(page).textContent()).toContain("front: 1 new reading.");
      expect(complaints).toEqual([]);
      await close();
    },
  );

  it("takes nothing of a table with a bad row, and all of it once that is mended, from a workbook too", async () => {
    const { page, complaints, close } = await opened({});
    const titles = ["Face", "x (mm)", "y (mm)", "Outward (mm)"];
    const workbook = (rows: (string | number)[][]) =>
      allBytes(writeWorkbook([{ name: "readings", titles, rows }], { title: "", paper: "A4" }));
    const good: (string | number)[] = ["north", 0, 0, 3];
    await give(
      page,
      "north.xlsx",
      workbook([good, ["norht", 1000, 0, 4], ["north", 1000, 0, "deep"], ["north", 0, 1e6, 1]]),
    );
    await expect.poll(() => tells(page).locator("li").count()).toBe(3);
    const told = await tells(page).textContent();
    for (const says of [
      "north.xlsx, row 3, column “Face”: the project has no face “norht”. The faces are",
      "row 4, column “Outward (mm)”: “deep” is no length. Write a length such as",
      "row 5, column “y (mm)”: 1000000 is further than any building reaches.",
    ])
      expect(told).toContain(says);
    expect(await take(page).isDisabled()).toBe(true);
    expect(await page.locator(".intake-places").count()).toBe(0);
    expect(await violations(page)).toEqual([]);
    await give(page, "none.xlsx", "PK and nothing more");
    await expect.poll(() => tells(page).textContent()).toContain("none.xlsx is no workbook that can be read");
    await give(page, "north.xlsx", workbook([good, ["north", 1000, 0, 4]]));
    await expect.poll(() => tells(page).textContent()).toContain("north: 2 new readings.");
    await take(page).click();
    await page.locator(".survey-faces").getByRole("button", { name: "North" }).click();
    await expect.poll(() => readings(page)).toBe(2);
    expect(complaints).toEqual([]);
    await close();
  });

  it("hands out a table to fill in: what was read, and the places that are not read yet", async () => {
    const { page, complaints, close } = await opened({});
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save the readings as a table to fill in" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("readings.csv");
    const text = readFileSync(await download.path(), "utf8");
    expect(text).toContain("Face,x from the left end (mm),y from the datum (mm),Outward (mm)");
    expect(text).toMatch(/^front,1830,1500,11\r$/m);
    expect(text).toMatch(/^north,0,-50,\r$/m);
    await give(page, "readings.csv", text.replace(/^north,0,-50,\r$/m, "north,0,-50,2.5\r"));
    await expect.poll(() => tells(page).textContent()).toContain("north: 1 new reading.");
    expect(await tells(page).textContent()).toContain("rows have no reading and are passed over");
    expect(complaints).toEqual([]);
    await close();
  });
});

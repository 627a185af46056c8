/** Who works where, typed in the part Site; and faces joined at their corner, as readings typed in the part Survey tell. */
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { openPage, serveExample, soon, violations } from "./page-harness.ts";

const SIZES = [
  ["at a desk", {}],
  ["on a phone by night", { viewport: { width: 390, height: 844 }, colorScheme: "dark" as const }],
] as const;

describeInBrowser("crews and corners", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());

  it.each(SIZES)(
    "%s: a crew is typed with help, known ones are offered, and a step takes it back",
    async (_, options) => {
      const { page, complaints, close } = await openPage(browser(), serving, options);
      await page.getByRole("button", { name: "Site", exact: true }).click();
      const crews = page.getByRole("form", { name: "Who works where" });
      const west = crews.getByLabel("West: crew", { exact: true });
      expect(await west.inputValue()).toBe("crew A");
      expect(
        await crews
          .locator("datalist option")
          .evaluateAll((all) => all.map((one) => one.getAttribute("value"))),
      ).toEqual(["crew A", "crew B"]);
      await crews.getByRole("button", { name: "About: West: crew" }).click();
      await crews.getByText("The crew that works on this face.").waitFor();
      expect(await violations(page)).toEqual([]);
      await page.keyboard.press("Escape");
      // No name is longer than the field takes, however much is typed.
      await west.fill("");
      await west.pressSequentially("x".repeat(45));
      expect(await west.inputValue()).toBe("x".repeat(40));
      await west.press("Escape");
      expect(await west.inputValue()).toBe("crew A");
      await west.fill("  crew C ");
      await west.press("Enter");
      await soon(() => west.inputValue()).toBe("crew C");
      await soon(() => page.locator(".field-history").textContent()).toContain("west");
      await soon(() => crews.locator("datalist option").count()).toBe(3);
      await page.getByRole("button", { name: "Undo" }).click();
      await soon(() => west.inputValue()).toBe("crew A");
      await soon(() => crews.locator("datalist option").count()).toBe(2);
      await west.fill("");
      await west.press("Enter");
      await soon(() => page.getByRole("button", { name: "Undo" }).isEnabled()).toBe(true);
      expect(await west.inputValue()).toBe("");
      expect(complaints).toEqual([]);
      await close();
    },
  );

  it.each(SIZES)(
    "%s: a corner of two faces that were read says by what they differ, and follows a reading",
    async (_, options) => {
      const { page, complaints, close } = await openPage(browser(), serving, options);
      await page.getByRole("button", { name: "Survey", exact: true }).click();
      const faces = page.locator(".survey-faces");
      const corner = page.getByText(/^Corner of West and Front: /);
      expect(await corner.count()).toBe(0);
      await faces.getByRole("button", { name: "West" }).click();
      await page.getByRole("button", { name: "Read it on a grid" }).click();
      await corner.waitFor();
      const before = await corner.textContent();
      // The west ends where the front begins: its last column is at the corner.
      const reading = page.locator(".survey-readings tbody tr").first().locator("input").last();
      await reading.fill("twelve");
      await soon(() => reading.getAttribute("aria-invalid")).toBe("true");
      await page.getByText("Not a length").waitFor();
      expect(await corner.textContent()).toBe(before);
      await reading.fill("18");
      await reading.press("Enter");
      await soon(() => corner.textContent()).not.toBe(before);
      expect(await violations(page)).toEqual([]);
      // The same corner is told of the face on its other side.
      const told = await corner.textContent();
      await faces.getByRole("button", { name: "Front" }).click();
      await soon(() => corner.textContent()).toBe(told);
      await page.getByRole("button", { name: "Undo" }).click();
      await soon(() => corner.textContent()).toBe(before);
      await page.getByRole("button", { name: "Undo" }).click();
      await soon(() => corner.count()).toBe(0);
      expect(complaints).toEqual([]);
      await close();
    },
  );
});

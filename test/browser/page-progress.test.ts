/** What phones tell of the site is seen on the sheet as it comes: progress, hold points, what was raised, moisture at fixing, upkeep done. */
import { expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { example } from "../contract/cut-facade-examples.ts";
import { PHOTO, told } from "../helpers/journal.ts";
import { describeWithStore, storeFolder } from "../helpers/store.ts";
import { describeInBrowser } from "./browser.ts";
import { openPage, serveExample, soon, violations } from "./page-harness.ts";

const { facade } = design(example("atelier-bouleau").project);
const west = facade.faces.find(({ id }) => id === "west");
const boards = west?.pieces.filter(({ kind }) => kind === "board").map(({ mark }) => mark) ?? [];

describeInBrowser("the site on the sheet", (browser) => {
  describeWithStore("as its journal tells", () => {
    it("is shown at once, painted on the facade, and feeds the gaps and the upkeep", async () => {
      const place = storeFolder();
      const serving = await serveExample("atelier-bouleau", { store: await place.open() });
      const { page, complaints, close } = await openPage(browser(), serving);
      await page.locator(".part", { hasText: "Site" }).click();
      const row = page.locator(".progress-table tr", { hasText: "West" });
      await soon(() => row.textContent()).toContain(`0 of ${boards.length}`);
      expect(await page.locator(".progress-told").textContent()).toContain("Nothing was told");
      const id = (await fetch(new URL("/api/design", serving.url))).headers.get("Outerleaf-Kept-As");
      const post = async (...entries: unknown[]): Promise<void> => {
        const answer = await fetch(new URL(`/api/projects/${id}/journal`, serving.url), {
          method: "POST",
          headers: { "Content-Type": "application/json" },
          body: JSON.stringify({ entries }),
        });
        expect(answer.status).toBe(201);
      };
      const [first = "", second = ""] = boards;
      await post(
        told(1, { place: { face: "west", piece: first }, body: { stage: "fixed" } }),
        told(2, { place: { face: "west", piece: second }, body: { stage: "cut" } }),
        told(3, {
          kind: "hold-point",
          place: { face: "west" },
          body: { point: "H1", signed: "Ada", seen: ["laps"], photos: [PHOTO] },
        }),
        told(4, { kind: "finding", place: { face: "west" }, body: { says: "a lap is open at the sill" } }),
        told(5, { kind: "moisture", place: { piece: first }, body: { meterPercent: 19, temperatureC: 12 } }),
        told(6, {
          kind: "upkeep",
          place: { face: "west" },
          body: { task: "look" },
          told: "2030-05-02T08:00:00Z",
        }),
      );
      const third = boards[2] ?? "";
      await post(told(7, { kind: "short", place: { face: "west", piece: third }, body: { why: "broken" } }));
      await soon(() => page.locator(".progress-beside").textContent()).toContain(
        `Missing or broken on site${third}`,
      );
      await soon(() => row.textContent()).toContain(`2 of ${boards.length}`);
      expect(await row.textContent()).toContain(`1 of ${boards.length}`);
      expect(await row.textContent()).toContain("H1: signed by Ada");
      const beside = page.locator(".progress-beside");
      expect(await beside.textContent()).toContain("a lap is open at the sill");
      expect(await beside.textContent()).toContain("One meter reading cannot be corrected");
      expect(await page.locator('[data-layer^="A-WORK"] [data-of]').count()).toBe(0);
      await page.getByRole("button", { name: "progress", exact: true }).click();
      await soon(() => page.locator(`[data-layer="A-WORK--E-"] [data-of="${first}"]`).count()).toBe(1);
      expect(await page.locator(`[data-layer="A-WORK--H-"] [data-of="${second}"]`).count()).toBe(1);
      expect(await violations(page)).toEqual([]);
      await beside.getByRole("button", { name: `${first}: fixed` }).press("Enter");
      await soon(() => page.locator(`.drawing-host [data-of="${first}"].picked`).count()).toBeGreaterThan(0);
      await page.locator(".part", { hasText: "Upkeep" }).click();
      const look = page.locator("td", { has: page.getByLabel("West, Look over: months between") });
      await soon(() => look.textContent()).toBe("2031-05-02");
      expect(complaints).toEqual([]);
      await close();
      await serving.close();
      place.clear();
    });
  });
});

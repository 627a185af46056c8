/** An older revision opened to be looked at: marked, saved, not edited, left, made current, and by its address. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterEach, beforeEach, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import type { Store } from "../../src/store/store.ts";
import { message } from "../../src/text/message.ts";
import { describeWithStore, type StoreFolder, storeFolder } from "../helpers/store.ts";
import { describeInBrowser } from "./browser.ts";
import { openPage, pickDrawn, serveExample, soon, violations } from "./page-harness.ts";

const SIZES = [
  ["at a desk", {}],
  ["on a phone by night", { viewport: { width: 390, height: 844 }, colorScheme: "dark" as const }],
] as const;

const width = (page: Page) => page.getByLabel("width", { exact: true });
const banner = (page: Page) => page.getByRole("region", { name: "An older state" });
const kept = (page: Page) => page.locator(".kept-state").textContent();

async function widen(page: Page, to: string): Promise<void> {
  await width(page).fill(to);
  await width(page).press("Enter");
  await soon(() => width(page).inputValue()).toBe(to);
}

describeInBrowser("an older state", (browser) => {
  describeWithStore("of the server's list", () => {
    let place: StoreFolder;
    let store: Store;
    let serving: Serving;
    let id: string;
    beforeEach(async () => {
      place = storeFolder();
      store = await place.open();
      serving = await serveExample("atelier-bouleau", { store });
      const { page, close } = await openPage(browser(), serving);
      await pickDrawn(page, "W2");
      await widen(page, "950");
      await soon(() => kept(page)).toContain("revision 2");
      await close();
      const [project] = await store.list();
      const second = project && (await store.revision(project.id, 2));
      if (!project || !second) throw new Error("two revisions are kept");
      const document = structuredClone(second.document) as { title: string };
      document.title = "Atelier Bouleau, east wing";
      id = project.id;
      await store.put(id, {
        name: project.name,
        title: document.title,
        document,
        says: message("page.edit.place", { id: "W2" }),
        time: "2027-03-01T10:00:00.000Z",
        who: "Ada",
        onto: second.tag,
      });
    });
    afterEach(async () => {
      await serving.close();
      place.clear();
    });

    it.each(SIZES)("%s is marked, cannot be edited, and leads back", async (_, options) => {
      const { page, complaints, close } = await openPage(browser(), serving, options);
      await soon(() => kept(page)).toContain("revision 3");
      await page.getByRole("button", { name: "Revisions …" }).click();
      await page.getByRole("link", { name: "Look at it: revision 1 as it was" }).click();
      await banner(page)
        .getByText(/^Revision 1 as it was: /)
        .waitFor();
      expect(page.url()).toBe(`${serving.url}#revision/${id}/1`);
      expect(await page.locator(".project-title").textContent()).toBe("Atelier Bouleau");
      expect(await kept(page)).toBe("An older state");
      await page.evaluate(() => scrollTo(0, 0));
      await pickDrawn(page, "W2");
      await soon(() => width(page).inputValue()).toBe("900");
      expect(await width(page).getAttribute("readonly")).not.toBeNull();
      await page.locator(".facts").getByRole("button", { name: "Remove", exact: true }).click();
      await page.getByText("This is an older state: nothing of it can be changed.").waitFor();
      expect(await width(page).inputValue()).toBe("900");
      expect(await violations(page)).toEqual([]);
      // What is saved of it bears its number, and is what was kept.
      const [download] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: "Save a copy" }).click(),
      ]);
      expect(download.suggestedFilename()).toBe("atelier-bouleau.revision-1.outerleaf.json");
      const first = await store.revision(id, 1);
      expect(JSON.parse(readFileSync(await download.path(), "utf8"))).toEqual(first?.document);
      await page.getByRole("button", { name: "Sheets", exact: true }).click();
      expect(await page.getByRole("button", { name: "Issue", exact: true }).count()).toBe(0);
      await banner(page).getByRole("button", { name: "Back to the latest" }).click();
      await soon(() => page.locator(".project-title").textContent()).toBe("Atelier Bouleau, east wing");
      expect(await banner(page).count()).toBe(0);
      await soon(() => kept(page)).toContain("revision 3");
      expect(await store.revisions(id)).toHaveLength(3);
      expect(complaints).toEqual([]);
      await close();
    });

    it("opens by its address, says when and who, and is made current without the newer one being lost", async () => {
      const at = { ...serving, url: `${serving.url}#revision/${id}/2` };
      const { page, complaints, close } = await openPage(browser(), at);
      await banner(page)
        .getByText(/^Revision 2 as it was: .*workbench’s machine/)
        .waitFor();
      await pickDrawn(page, "W2");
      await soon(() => width(page).inputValue()).toBe("950");
      await banner(page).getByRole("button", { name: "Make it the current one" }).click();
      await soon(() => page.locator(".project-title").textContent()).toBe("Atelier Bouleau");
      await soon(() => kept(page)).toContain("revision 4");
      expect(await banner(page).count()).toBe(0);
      const [latest, before] = await store.revisions(id);
      expect(latest).toMatchObject({ number: 4, says: { key: "page.edit.back-to" } });
      expect(before).toMatchObject({ number: 3, who: "Ada" });
      // Now the third is the older one, by the browser's way back and forth as well.
      await page.goto(`${serving.url}#revision/${id}/3`);
      await banner(page)
        .getByText(/^Revision 3 as it was: .*Ada, Mar 1, 2027/)
        .waitFor();
      await page.goBack();
      await soon(() => banner(page).count()).toBe(0);
      // The latest is shown as what it is; one that is not kept is told.
      await page.goto(`${serving.url}#revision/${id}/4`);
      await soon(() => page.url()).toBe(serving.url);
      expect(await banner(page).count()).toBe(0);
      await page.goto(`${serving.url}#revision/${id}/99`);
      await page.getByText("This revision cannot be had").waitFor();
      expect(complaints.filter((one) => !one.includes("404"))).toEqual([]);
      await close();
    });
  });

  it.each(SIZES)(
    "%s of a window without a server's list is looked at, left and taken up",
    async (_, options) => {
      const alone = await serveExample("atelier-bouleau");
      const { page, complaints, close } = await openPage(browser(), alone, options);
      await pickDrawn(page, "W2");
      await widen(page, "950");
      await widen(page, "980");
      await page.getByRole("button", { name: "Revisions …" }).click();
      await page.getByText("Steps in this window").click();
      await page.getByRole("button", { name: "Look at it: step 2 as it was" }).click();
      await banner(page)
        .getByText(/^Step 2 of this window as it was: /)
        .waitFor();
      await pickDrawn(page, "W2");
      await soon(() => width(page).inputValue()).toBe("950");
      expect(await violations(page)).toEqual([]);
      await banner(page).getByRole("button", { name: "Back to the latest" }).click();
      await pickDrawn(page, "W2");
      await soon(() => width(page).inputValue()).toBe("980");
      await page.getByRole("button", { name: "Revisions …" }).click();
      await page.getByText("Steps in this window").click();
      await page.getByRole("button", { name: "Look at it: step 1 as it was" }).click();
      await banner(page).getByRole("button", { name: "Make it the current one" }).click();
      await pickDrawn(page, "W2");
      await soon(() => width(page).inputValue()).toBe("900");
      await page.getByRole("button", { name: "Undo" }).click();
      await soon(() => width(page).inputValue()).toBe("980");
      expect(complaints).toEqual([]);
      await close();
      await alone.close();
    },
  );
});

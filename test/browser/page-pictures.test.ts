/** Pictures of the pile's boards: kept by their bytes in the browser, sent to the server when there is one, named in the file. */
import { createHash } from "node:crypto";
import { expect, it } from "vitest";
import { PNG } from "../helpers/pictures.ts";
import { describeWithStore, storeFolder } from "../helpers/store.ts";
import { describeInBrowser } from "./browser.ts";
import { openPage, serveExample, soon, violations } from "./page-harness.ts";

describeInBrowser("pictures of boards", (browser) => {
  describeWithStore("beside the project", () => {
    it("are seen without a server, reach it later whole, and are taken away and back by their step", async () => {
      const place = storeFolder();
      const store = await place.open();
      const serving = await serveExample("atelier-bouleau", { store });
      // A context of its own: cut off, it tells so in its console.
      const { page, close } = await openPage(browser(), serving, { locale: "en" });
      await page.locator(".part", { hasText: "Cutting" }).click();
      await page.locator(".cutting-part", { hasText: "board by board" }).click();
      const row = page.locator(".pile-side tbody tr").first();
      const file = row.locator("input[type=file]");
      await page.context().setOffline(true);
      await file.setInputFiles({
        name: "note.txt",
        mimeType: "text/plain",
        buffer: Buffer.from("no picture"),
      });
      await soon(() => row.locator("[role=status]").textContent()).toContain("note.txt is no picture");
      await file.setInputFiles({ name: "board.png", mimeType: "image/png", buffer: Buffer.from(PNG) });
      const image = row.locator(".picture-small img");
      await soon(() => image.evaluate((one: HTMLImageElement) => one.naturalWidth)).toBe(1);
      expect(await row.locator("[role=status]").textContent()).toBe("");
      await page.context().setOffline(false);
      const latest = async () => {
        const [project] = await store.list();
        return project && (await store.revision(project.id, project.latest.number))?.document;
      };
      const names = async (): Promise<readonly string[] | undefined> =>
        ((await latest()) as { pile?: { boards: { pictures?: string[] }[] } } | undefined)?.pile?.boards[0]
          ?.pictures;
      await soon(async () => (await names())?.length).toBe(1);
      const [name = ""] = (await names()) ?? [];
      await soon(async () => (await store.attachments.known([name])).length).toBe(1);
      const held = await store.attachments.get(name);
      expect(
        createHash("sha256")
          .update(held?.content ?? "")
          .digest("hex"),
      ).toBe(name);
      expect(await violations(page)).toEqual([]);
      await row.locator(".picture-small").press("Enter");
      const dialog = page.locator(".picture-dialog");
      await dialog.getByRole("button", { name: "Take it away" }).press("Enter");
      await soon(() => image.count()).toBe(0);
      await page.getByRole("button", { name: "Undo" }).click();
      await soon(() => image.count()).toBe(1);
      await close();
      await serving.close();
      place.clear();
    });
  });
});

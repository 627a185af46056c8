/** Edits kept by the server and the browser: a killed page, another browser, another window, no server at all. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { BrowserContext, Page } from "playwright-core";
import { afterEach, beforeEach, expect, it } from "vitest";
import { printProject } from "../../src/project/print.ts";
import { starterProject } from "../../src/project/starter.ts";
import type { Serving } from "../../src/server/serve.ts";
import { message } from "../../src/text/message.ts";
import { describeWithStore, type StoreFolder, storeFolder } from "../helpers/store.ts";
import { describeInBrowser } from "./browser.ts";
import { exampleFile, openPage, pickDrawn, serveExample, soon, violations, whole } from "./page-harness.ts";

const width = (page: Page) => page.getByLabel("width", { exact: true });
const kept = (page: Page): Promise<string | null> => page.locator(".kept-state").textContent();
const lastEdit = (page: Page): Promise<string | null> => page.locator(".field-history").textContent();

/** Gives W2, which is picked, another width. */
async function widen(page: Page, to: string): Promise<void> {
  await width(page).fill(to);
  await width(page).press("Enter");
  await soon(() => lastEdit(page)).toContain("Place W2");
  await soon(() => width(page).inputValue()).toBe(to);
}

const open = async (context: BrowserContext, { url }: Serving): Promise<Page> => {
  const page = await context.newPage();
  await page.goto(url);
  await whole(page);
  return page;
};

const pickW2 = (page: Page) => pickDrawn(page, "W2");

/** Picks W2, whose width must be as expected. */
async function seeWidth(page: Page, expected: string): Promise<void> {
  await pickW2(page);
  await soon(() => width(page).inputValue()).toBe(expected);
}

describeInBrowser("edits that are kept", (browser) => {
  describeWithStore("by the server", () => {
    let place: StoreFolder;
    let serving: Serving;
    beforeEach(async () => {
      place = storeFolder();
      const outside = "https://192.0.2.7:4171";
      serving = await serveExample("atelier-bouleau", { store: await place.open(), outside });
    });
    afterEach(async () => {
      await serving.close();
      place.clear();
    });

    it("are there in another browser, and the file on disk stays as it was", async () => {
      const before = readFileSync(exampleFile("atelier-bouleau"));
      const { page, complaints, close } = await openPage(browser(), serving);
      await soon(() => kept(page)).toBe("nothing was edited yet");
      await pickW2(page);
      await widen(page, "950");
      await soon(() => kept(page)).toContain("revision 2");
      const other = await openPage(browser(), serving);
      await close();
      await soon(() => lastEdit(other.page)).toContain("Edits kept, the last: Place W2");
      await seeWidth(other.page, "950");
      await soon(() => kept(other.page)).toContain("revision 2");
      await other.page.getByRole("button", { name: "Undo" }).click();
      await soon(() => width(other.page).inputValue()).toBe("900");
      await soon(() => kept(other.page)).toContain("revision 3");
      expect([...complaints, ...other.complaints]).toEqual([]);
      await other.close();
      expect(readFileSync(exampleFile("atelier-bouleau")).equals(before)).toBe(true);
    });

    it("are there after the page was killed before they were sent", async () => {
      const context = await browser().newContext({ viewport: { width: 1680, height: 1050 } });
      const page = await open(context, serving);
      await pickW2(page);
      let isAway = true;
      await context.route("**/api/projects/*", (route) => (isAway ? route.abort() : route.continue()));
      await widen(page, "960");
      await soon(() => kept(page)).toBe("in this browser alone");
      const session = await context.newCDPSession(page);
      // No answer comes from a page that is gone.
      void session.send("Page.crash").catch(() => undefined);
      await page.waitForEvent("crash");
      isAway = false;
      const again = await open(context, serving);
      await soon(() => lastEdit(again)).toContain("Edits kept");
      await seeWidth(again, "960");
      await soon(() => kept(again)).toContain("revision 2");
      await context.close();
    });

    it("of two windows are both kept: the second is told, and chooses", async () => {
      const first = await openPage(browser(), serving);
      const second = await openPage(browser(), serving);
      await soon(() => kept(second.page)).toBe("nothing was edited yet");
      await pickW2(first.page);
      await widen(first.page, "950");
      await soon(() => kept(first.page)).toContain("revision 2");
      await pickW2(second.page);
      await widen(second.page, "970");
      await soon(() => kept(second.page)).toContain("Another window went on: revision 2");
      await soon(() => width(second.page).inputValue()).toBe("970");
      // Told again after a reload, with the other's on the sheet.
      await second.page.reload();
      await soon(() => kept(second.page)).toContain("Another window went on: revision 2");
      await soon(() => lastEdit(second.page)).toContain("Edits kept");
      await seeWidth(second.page, "950");
      await second.page.getByRole("button", { name: "Put mine on top" }).click();
      await soon(() => width(second.page).inputValue()).toBe("970");
      await soon(() => kept(second.page)).toContain("revision 3");
      // Now the first is behind, and goes on with the other: its own goes into the list first.
      await widen(first.page, "980");
      await soon(() => kept(first.page)).toContain("Another window went on: revision 3");
      await first.page.getByRole("button", { name: "Go on with the other" }).click();
      await soon(() => width(first.page).inputValue()).toBe("970");
      await soon(() => kept(first.page)).toContain("revision 5");
      await first.page.getByRole("button", { name: "Revisions …" }).click();
      await soon(() => first.page.locator(".kept-revisions li").count()).toBe(5);
      await first.close();
      await second.close();
    });

    it("of two people are joined field by field, what both changed by choice", async () => {
      const { page, complaints, close } = await openPage(browser(), serving);
      await pickW2(page);
      await widen(page, "950");
      await soon(() => kept(page)).toContain("revision 2");
      // Somebody else widens the same window otherwise, and gives the project another title.
      const store = await place.open();
      const [project] = await store.list();
      const second = project && (await store.revision(project.id, 2));
      if (!project || !second) throw new Error("revision 2 is kept");
      const document = structuredClone(second.document) as {
        title: string;
        faces: { openings: { id: string; x: number[] }[] }[];
      };
      document.title = "Atelier Bouleau, east wing";
      const theirs = document.faces.flatMap(({ openings }) => openings).find(({ id }) => id === "W2");
      const [from = 0] = theirs?.x ?? [];
      if (theirs) theirs.x = [from, from + 940];
      const says = message("page.edit.place", { id: "W2" });
      const time = "2026-03-01T10:00:00.000Z";
      const { id, name } = project;
      const title = document.title;
      await store.put(id, { name, title, document, says, time, who: "Ada", onto: second.tag });

      await widen(page, "970");
      await soon(() => kept(page)).toContain("Another window went on: revision 3");
      await page.getByRole("button", { name: "See what differs …" }).click();
      const dialog = page.getByRole("dialog", { name: "Two edits of one project" });
      await dialog.getByText("title Atelier Bouleau → Atelier Bouleau, east wing").waitFor();
      expect(await dialog.textContent()).toContain("Revision 3 by Ada");
      await dialog.getByText("1 still to be chosen").waitFor();
      expect(await violations(page)).toEqual([]);
      const join = dialog.getByRole("button", { name: "Join them" });
      expect(await join.isDisabled()).toBe(true);
      const choice = dialog.getByRole("group", { name: /W2: from its left to its right edge/ });
      await choice.getByRole("radio", { name: new RegExp(`the other’s: .*${from + 940}`) }).waitFor();
      await choice.getByRole("radio", { name: new RegExp(`mine: .*${from + 970}`) }).check();
      await join.click();
      await soon(() => kept(page)).toContain("revision 4");
      const sheeted = page.locator(".project-title");
      await soon(() => sheeted.textContent()).toBe("Atelier Bouleau, east wing");
      expect(await width(page).inputValue()).toBe("970");
      expect(await lastEdit(page)).toContain("Joined with revision 3");
      // The own edit alone is a step back from there.
      await page.getByRole("button", { name: "Undo" }).click();
      await soon(() => sheeted.textContent()).toBe("Atelier Bouleau");

      // The list tells who did it and what changed, and lets people in and shuts them out.
      await page.getByRole("button", { name: "Revisions …" }).click();
      await page.getByLabel("What changed in revision 3").click();
      await page.getByText("title Atelier Bouleau → Atelier Bouleau, east wing").waitFor();
      expect(await page.locator(".kept-revisions").textContent()).toContain("Ada, Mar 1, 2026");
      await page.getByText("People and their roles").click();
      await page.getByLabel("Name", { exact: true }).fill("Ben");
      await page.locator(".kept-others").getByRole("combobox").selectOption("reader");
      await page.getByRole("button", { name: "Invite", exact: true }).click();
      await page.getByRole("img", { name: "The link for Ben as a code for a camera" }).waitFor();
      await page.getByText(/^https:\/\/192\.0\.2\.7:4171\/join#/).waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole("button", { name: "Shut out Ben …" }).click();
      await page.getByRole("button", { name: "Shut out now: all devices of Ben" }).click();
      await page.getByText(/^shut out, /).waitFor();
      expect(await store.people.list({ time })).toMatchObject([{ name: "Ben", role: "reader", sessions: 0 }]);
      expect(complaints.filter((one) => !one.includes("409"))).toEqual([]);
      await close();
    });

    it("are issued with a revision, whose documents stay as they went out", async () => {
      await serving.close();
      const projectFile = join(place.folder, "wall.outerleaf.json");
      writeFileSync(projectFile, printProject(starterProject()));
      serving = await serveExample("", { store: await place.open(), projectFile });
      const { page, complaints, close } = await openPage(browser(), serving);
      await page.getByRole("button", { name: "Sheets", exact: true }).click();
      await page.getByLabel("What it is for").fill("for the saw");
      await page.getByRole("button", { name: "Issue", exact: true }).click();
      await soon(() => page.locator(".issue-form [role=status]").textContent()).toContain(
        "kept as they went out",
      );
      await page.locator("details.written summary", { hasText: "for the saw" }).click();
      const store = await place.open();
      const [project] = await store.list();
      const [set] = await store.issued.list(project?.id ?? "");
      expect(set).toMatchObject({ number: 1, note: "for the saw", hash: project?.latest.hash });
      expect(await violations(page)).toEqual([]);
      const link = page.locator('.written a[download="drawings.pdf"]');
      const [download] = await Promise.all([page.waitForEvent("download"), link.click()]);
      const held = await store.issued.file(project?.id ?? "", 1, "drawings.pdf");
      expect(readFileSync(await download.path()).equals(held ?? Buffer.alloc(0))).toBe(true);
      expect(held?.subarray(0, 5).toString()).toBe("%PDF-");
      expect(complaints).toEqual([]);
      await close();
    });

    it("can be gone back to by a step of its own, opened from the list, and removed by their name", async () => {
      const { page, complaints, close } = await openPage(browser(), serving);
      await pickW2(page);
      await widen(page, "950");
      await soon(() => kept(page)).toContain("revision 2");
      await widen(page, "990");
      await soon(() => kept(page)).toContain("revision 3");
      await page.getByRole("button", { name: "Revisions …" }).click();
      await page.getByRole("button", { name: "Go back to revision 2" }).waitFor();
      expect(await violations(page)).toEqual([]);
      await page
        .getByRole("button", { name: "night", exact: true, includeHidden: true })
        .evaluate((night) => (night as HTMLButtonElement).click());
      await page.locator('html[data-light="night"]').waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole("button", { name: "Go back to revision 2" }).click();
      await soon(() => width(page).inputValue()).toBe("950");
      await soon(() => lastEdit(page)).toContain("Back to revision 2: Place W2");
      await soon(() => kept(page)).toContain("revision 4");
      await page.getByRole("button", { name: "Undo" }).click();
      await soon(() => width(page).inputValue()).toBe("990");
      await soon(() => kept(page)).toContain("revision 5");

      await page.locator('input[type="file"]').setInputFiles(exampleFile("porch"));
      await soon(() => page.locator(".file-name").textContent()).toContain("porch");
      await page.getByRole("button", { name: "Revisions …" }).click();
      await page.getByRole("button", { name: /Atelier Bouleau/ }).click();
      await page.getByRole("button", { name: "Open", exact: true }).click();
      await soon(() => page.locator(".file-name").textContent()).toContain("atelier-bouleau");
      await seeWidth(page, "990");
      await soon(() => kept(page)).toContain("revision 5");

      await page.getByRole("button", { name: "Revisions …" }).click();
      await page.getByRole("button", { name: "Remove …" }).click();
      const now = page.getByRole("button", { name: "Remove it" });
      await page.locator(".kept-remove input").fill("atelier");
      await soon(() => now.isDisabled()).toBe(true);
      await page.locator(".kept-remove input").fill("atelier-bouleau.outerleaf.json");
      await now.click();
      await soon(() => page.locator(".kept").textContent()).toContain("No project is kept yet");
      expect(complaints).toEqual([]);

      // What stands on the sheet is kept again if its reader says so.
      await page.getByRole("button", { name: "Close", exact: true }).click();
      await widen(page, "930");
      await soon(() => kept(page)).toContain("no longer there");
      await page.getByRole("button", { name: "Put mine on top" }).click();
      await soon(() => kept(page)).toContain("revision 2");
      await close();
    });

    it("of a file that was changed elsewhere stay in the list, and the file is shown", async () => {
      const projectFile = join(place.folder, "atelier.outerleaf.json");
      const text = readFileSync(exampleFile("atelier-bouleau"), "utf8");
      writeFileSync(projectFile, text);
      await serving.close();
      serving = await serveExample("", { store: await place.open(), projectFile });
      const { page, close } = await openPage(browser(), serving);
      await pickW2(page);
      await widen(page, "950");
      await soon(() => kept(page)).toContain("revision 2");
      writeFileSync(projectFile, text.replace('"Atelier Bouleau"', '"Atelier Bouleau, east"'));
      await page.reload();
      await soon(() => kept(page)).toContain("The file was changed elsewhere");
      await seeWidth(page, "900");
      await widen(page, "940");
      await soon(() => kept(page)).toContain("revision 4");
      await page.getByRole("button", { name: "Revisions …" }).click();
      await soon(() => page.locator(".kept-revisions li").count()).toBe(4);
      await soon(async () => {
        const names = await page.locator(".kept-revisions li").allTextContents();
        return names.map((name) => name.includes("as it was read"));
      }).toEqual([false, true, false, true]);
      await close();
      expect(readFileSync(projectFile, "utf8")).toContain("Atelier Bouleau, east");
    });

    it("stay in the browser while the server is away, and are sent when it is back", async () => {
      const context = await browser().newContext({ viewport: { width: 1680, height: 1050 } });
      const page = await open(context, serving);
      await pickW2(page);
      await widen(page, "950");
      await soon(() => kept(page)).toContain("revision 2");
      const { port } = serving;
      await serving.close();
      await widen(page, "960");
      await soon(() => kept(page)).toBe("in this browser alone");
      await page.getByRole("button", { name: "Undo" }).click();
      await soon(() => width(page).inputValue()).toBe("950");
      await page.getByRole("button", { name: "Redo" }).click();
      await soon(() => width(page).inputValue()).toBe("960");
      serving = await serveExample("atelier-bouleau", { store: await place.open(), port });
      expect(serving.port).toBe(port);
      await soon(() => kept(page)).toContain("revision 3");
      await context.close();
    });
  });
});

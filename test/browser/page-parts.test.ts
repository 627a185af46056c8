/** Each part of the job shows the facade at hand: its cuts, its order, its sheets, its build-ups; variants show what differs. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { example } from "../contract/cut-facade-examples.ts";
import { PNG } from "../helpers/pictures.ts";
import { describeInBrowser } from "./browser.ts";
import { type OpenPage, openPage, pickDrawn, serveExample, soon, violations, whole } from "./page-harness.ts";

const go = (page: Page, part: string) => page.locator(".part", { hasText: part }).click();

describeInBrowser("the parts of the job", (browser) => {
  let serving: Serving;
  let open: OpenPage;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
    open = await openPage(browser(), serving);
  });
  afterAll(async () => {
    await open.close();
    await serving.close();
  });

  it("cutting draws every stock sheet of the plan, and a piece on it is a press from its place on the wall", async () => {
    const { page } = open;
    const { plan } = example("atelier-bouleau").cut;
    await go(page, "Cutting");
    await soon(() => page.locator(".scene-picture").count()).toBe(plan?.sheets[0]?.result.plan.sheets.length);
    const mark = plan?.sheets[0]?.result.plan.sheets[0]?.placements[0]?.demandId ?? "";
    await page.locator(`.scene-picture text[data-of="${mark}"]`).first().click();
    await soon(() => page.locator(`.drawing-host [data-of="${mark}"].picked`).count()).toBeGreaterThan(0);
    const other = plan?.sheets[0]?.result.plan.sheets[1]?.placements[0]?.demandId ?? "";
    const lit = page.locator(`.drawing-host [data-of="${other}"].picked`);
    expect(await lit.count()).toBe(0);
    await page.locator(`.scene-picture text[data-of="${other}"]`).first().hover();
    await soon(() => lit.count()).toBeGreaterThan(0);
    await page.mouse.move(0, 0);
    await soon(() => lit.count()).toBe(0);
    expect(await violations(page)).toEqual([]);
  });

  it("cuts in two workers, and comes to the plan of one, cost and bound and all", async () => {
    const own = await serveExample("atelier-bouleau");
    const { page, close } = await openPage(browser(), own);
    const answers = await page.evaluateHandle(() => {
      const plans: unknown[] = [];
      const { Worker } = window;
      window.Worker = class extends Worker {
        constructor(...given: ConstructorParameters<typeof Worker>) {
          super(...given);
          this.addEventListener("message", ({ data }) => {
            if (data.last && data.answer?.plan) plans.push(data.answer.plan);
          });
        }
      };
      return plans;
    });
    await go(page, "Cutting");
    await soon(() => answers.evaluate((plans) => plans.length)).toBeGreaterThan(0);
    expect(page.workers().some((worker) => worker.url().includes("second.worker"))).toBe(true);
    const [plan] = await answers.jsonValue();
    expect(JSON.stringify(plan)).toBe(JSON.stringify(example("atelier-bouleau").cut.plan));
    await close();
    await own.close();
  });

  it("searches on for cheaper cuts until it is told to stop", async () => {
    const { page } = open;
    await go(page, "Cutting");
    await page.locator(".search-on button", { hasText: "Search on" }).click();
    const stop = page.locator(".search-on button", { hasText: "Stop and keep" });
    await soon(() => page.locator(".search-on .closing").count()).toBe(1);
    const said = await page.locator(".search-on p").first().textContent();
    const { plan } = example("atelier-bouleau").cut;
    expect(said).toContain(`${plan?.cost.toFixed(2)} CAD so far`);
    expect(await violations(page)).toEqual([]);
    await stop.click();
    await soon(() => stop.count()).toBe(0);
    expect(await page.locator(".search-on").textContent()).toContain("Nothing cheaper");
  });

  it("shows a whole plan while better are searched for, its bound closing in, and an edit cuts anew without waiting for the last", async () => {
    const folder = mkdtempSync(join(tmpdir(), "outerleaf-effort-"));
    const projectFile = join(folder, "effort.outerleaf.json");
    const project = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
    // A search of a minute and more.
    project.cutting = { effort: 64 };
    writeFileSync(projectFile, JSON.stringify(project));
    const own = await serveExample("atelier-bouleau", { projectFile });
    const { page, complaints, close } = await openPage(browser(), own);
    await go(page, "Cutting");
    const state = page.locator(".cutting-parts > .sub");
    await soon(() => state.textContent()).toMatch(/[\d.]+ CAD so far; no cuts cost under [\d.]+ CAD/);
    const costOf = async () => Number.parseFloat((await state.textContent()) ?? "");
    const before = await costOf();
    await soon(() => page.locator(".cutting-parts > .closing").count()).toBe(1);
    const { plan } = example("atelier-bouleau").cut;
    // On the way as at the end, every piece is on one of the sheets that are drawn.
    const marks = plan?.sheets[0]?.result.plan.sheets.flatMap(({ placements }) => placements) ?? [];
    const drawn = await page
      .locator(".scene-picture text[data-of]")
      .evaluateAll((texts) => texts.map((text) => text.getAttribute("data-of")));
    expect(new Set(drawn)).toEqual(new Set(marks.map(({ demandId }) => demandId)));
    // What is spoiled is told of the last plan alone.
    const waits = await page
      .locator(".cut-picture .spoil")
      .evaluateAll((presses) => presses.map((press) => press.getAttribute("aria-disabled")));
    expect(new Set(waits)).toEqual(new Set(["true"]));
    expect(await page.locator(".search-on").count()).toBe(0);
    await page.locator(".saw-limits summary").click();
    const kerf = page.locator(".saw-limits input").first();
    await kerf.fill("60");
    await kerf.press("Enter");
    // What the wider cut costs is told before the search for the narrower could end.
    await soon(() => state.textContent()).toContain("as it now stands");
    expect(await page.locator(".cutting-band[aria-busy=true]").count()).toBe(1);
    await soon(() => state.textContent()).toContain("so far");
    expect(await costOf()).toBeGreaterThan(before);
    expect(await violations(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
    await own.close();
    rmSync(folder, { recursive: true });
  });

  it("takes a board's grade, and a picture of it does not end the search for cheaper cuts", async () => {
    const own = await serveExample("atelier-bouleau");
    const { page, close } = await openPage(browser(), own);
    await go(page, "Cutting");
    await page.locator(".cutting-part", { hasText: "board by board" }).click();
    const row = page.locator(".pile-side tbody tr").first();
    const grade = row.getByLabel("Grade of board", { exact: false });
    await grade.fill("dark");
    await grade.press("Enter");
    await soon(() => page.locator(".field-history").textContent()).toContain("Grade of board");
    expect(await grade.inputValue()).toBe("dark");
    await page.locator(".pile-table .help-press").click();
    await soon(() => page.locator(".pile-side .help-note").textContent()).toContain("depth of char");
    await page.locator(".search-on button", { hasText: "Search on" }).click();
    await page.locator(".search-on .closing").waitFor();
    await row
      .locator("input[type=file]")
      .setInputFiles({ name: "board.png", mimeType: "image/png", buffer: Buffer.from(PNG) });
    await soon(() => row.locator(".picture-small").count()).toBe(1);
    await page.locator(".cutting-parts > .sub", { hasText: "Cuts are numbered" }).waitFor();
    const stop = page.locator(".search-on button", { hasText: "Stop and keep" });
    expect(await stop.count()).toBe(1);
    expect(await page.locator(".search-on .closing").count()).toBe(1);
    // Another grade changes what is asked.
    await grade.fill("");
    await grade.press("Enter");
    await soon(() => stop.count()).toBe(0);
    expect(await violations(page)).toEqual([]);
    await close();
    await own.close();
  });

  it("weighs the widths to rip to by rod and pile, and takes a pair in one press", async () => {
    const folder = mkdtempSync(join(tmpdir(), "outerleaf-pile-"));
    const projectFile = join(folder, "few-boards.outerleaf.json");
    const project = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
    project.pile.boards = project.pile.boards.slice(0, 6);
    writeFileSync(projectFile, JSON.stringify(project));
    const own = await serveExample("atelier-bouleau", { projectFile });
    const { page, close } = await openPage(browser(), own);
    await go(page, "Cutting");
    await page.locator(".cutting-part", { hasText: "board by board" }).click();
    await page.getByRole("button", { name: "Weigh the widths to rip to" }).click();
    await page.locator(".rip-curve").waitFor({ timeout: 60_000 });
    expect(await page.locator(".rip-widths tr", { hasText: "as it stands" }).count()).toBe(1);
    expect(await violations(page)).toEqual([]);
    const first = page.locator(".rip-widths tbody tr", { hasText: "take" }).first();
    const widths = (await first.locator("th").textContent())?.split(" + ").map(Number) ?? [];
    await first.getByRole("button").click();
    await soon(() => page.locator(".field-history").textContent()).toContain(`Rip boards to ${widths[0]}`);
    await close();
    await own.close();
    rmSync(folder, { recursive: true });
  });

  it("tells by the keyboard that a sheet broke and a board is rotten, shows both counts, and takes each back", async () => {
    const own = await serveExample("atelier-bouleau");
    const { page, close } = await openPage(browser(), own);
    const { plan } = example("atelier-bouleau").cut;
    const counts = page.locator(".spoiled-stock .sub");
    const settled = () => page.locator(".cutting-parts > .sub", { hasText: "Cuts are numbered" }).waitFor();
    await go(page, "Cutting");
    await settled();
    const sheets = plan?.sheets[0]?.result.plan.sheets ?? [];
    const press = page.locator(".cut-picture .spoil");
    expect(await press.count()).toBe(sheets.length);
    const seventh = press.nth(6);
    expect(await seventh.textContent()).toBe(
      `${sheets[6]?.stockId}, number ${(sheets[6]?.index ?? 0) + 1} is spoiled`,
    );
    await seventh.focus();
    await page.keyboard.press("Enter");
    await soon(() => counts.count()).toBe(1);
    const all = plan?.sheets.reduce((sum, { result }) => sum + result.plan.sheets.length, 0);
    expect(await counts.textContent()).toContain(`Before: ${all} sheets,`);
    await soon(() => page.locator(".field-history").textContent()).toContain("is spoiled");
    expect(await violations(page)).toEqual([]);
    await page.locator(".cutting-part", { hasText: "board by board" }).click();
    await settled();
    const row = page.locator(".pile-side tbody tr").first();
    await row.locator(".spoil").focus();
    await page.keyboard.press("Enter");
    await soon(() => row.textContent()).toContain("spoiled");
    await soon(() => page.locator(".spoiled-stock li").count()).toBe(2);
    await settled();
    expect(await violations(page)).toEqual([]);
    for (const left of [1, 0]) {
      await page.locator(".spoiled-stock li .spoil").last().press("Enter");
      await soon(() => page.locator(".spoiled-stock li").count()).toBe(left);
    }
    await close();
    await own.close();
  });

  it("the order on the page is the order of the take-off, and is handed out as a file", async () => {
    const { page } = open;
    await go(page, "Order");
    const rows = page.locator(".order-tables table").first().locator("tbody tr");
    await soon(() => rows.count()).toBeGreaterThan(10);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.locator(".order-head button").click(),
    ]);
    const lines = readFileSync(await download.path(), "utf8")
      .trim()
      .split("\r\n");
    // A head and the sum stand round the lines.
    await soon(() => rows.count()).toBe(lines.length - 2);
    expect(await violations(page)).toEqual([]);
  });

  it("the sheets are those that are issued", async () => {
    const { page } = open;
    await go(page, "Sheets");
    await soon(() => page.locator(".cutting-part").count()).toBeGreaterThan(10);
    await soon(() =>
      page.locator(".sheet-preview").evaluate((image) => (image as HTMLImageElement).naturalWidth),
    ).toBeGreaterThan(100);
    expect(await violations(page)).toEqual([]);
  });

  it("a sheet is taken out of the set and in again, and labels are set to their paper", async () => {
    const { page } = open;
    await go(page, "Sheets");
    const sheets = page.locator(".sheet-list .cutting-part");
    const settled = () => page.locator(".cutting-parts > .sub", { hasText: "As they are printed" }).waitFor();
    await settled();
    const all = await sheets.count();
    const tick = page.locator(".sheet-list input").nth(1);
    await tick.focus();
    await page.keyboard.press("Space");
    await soon(() => page.locator(".sheet-list .left-out").count()).toBe(1);
    await settled();
    expect(await sheets.count()).toBe(all - 1);
    // It keeps its place, and the focus.
    expect(await tick.evaluate((one) => one === document.activeElement)).toBe(true);
    expect(await tick.isChecked()).toBe(false);
    await page.getByText("Papers and labels").press("Enter");
    const columns = page.getByLabel("labels across", { exact: true });
    await columns.fill("3");
    await columns.press("Enter");
    // A4 is 210 mm wide (ISO 216); by hand: 4.5 + 3 × 99 + 2 × 3 - 210.
    await soon(() => page.locator(".papers-past").textContent()).toContain("97.5 mm past the right edge");
    await page.getByRole("button", { name: "About: label, width" }).click();
    await page.locator(".help-note").waitFor();
    expect(await violations(page)).toEqual([]);
    await columns.focus();
    await page.locator("h2", { hasText: "Sheets" }).click();
    for (const _ of ["columns", "sheet"]) await page.keyboard.press("Control+z");
    await soon(() => columns.inputValue()).toBe("2");
    await soon(() => sheets.count()).toBe(all);
  });

  it("all sheets are handed out as one PDF, a page each", async () => {
    const { page } = open;
    await go(page, "Sheets");
    const sheets = page.locator(".cutting-part");
    await soon(() => sheets.count()).toBeGreaterThan(10);
    const [download] = await Promise.all([
      page.waitForEvent("download", { timeout: 60_000 }),
      page.getByRole("button", { name: "Save all sheets as a PDF" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("atelier-bouleau.pdf");
    const bytes = readFileSync(await download.path(), "latin1");
    expect(bytes.startsWith("%PDF-1.7")).toBe(true);
    expect(bytes.match(/\/Type \/Page\n/g)?.length).toBe(await sheets.count());
  });

  it("upkeep tells each face's next day, takes an interval and gives the calendar", async () => {
    const own = await serveExample("atelier-bouleau");
    const { page, close } = await openPage(browser(), own);
    await go(page, "Upkeep");
    const months = page.getByLabel("West, Wash: months between");
    const cell = page.locator("td", { has: months });
    await soon(() => cell.textContent()).toBe("2029-09-30");
    await months.fill("6");
    await months.press("Enter");
    await soon(() => cell.textContent()).toBe("2028-03-30");
    await soon(() => page.locator(".field-history").textContent()).toContain("How often on west: Wash");
    expect(await violations(page)).toEqual([]);
    const saved = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save the calendar" }).press("Enter");
    const file = await saved;
    expect(file.suggestedFilename()).toBe("atelier-bouleau-upkeep.ics");
    const text = readFileSync(await file.path(), "utf8");
    // The 28th, since no month may be left out.
    expect(text).toContain("DTSTART;VALUE=DATE:20280328\r\n");
    expect(text).toContain("RRULE:FREQ=MONTHLY;INTERVAL=6\r\n");
    await months.fill("");
    await months.press("Enter");
    await soon(() => cell.textContent()).toBe("2029-09-30");
    await close();
    await own.close();
  });

  it("a build-up is taken in one press and taken back", async () => {
    const { page } = open;
    await go(page, "Build-up");
    const take = page.locator(".planes-passing button");
    await soon(() => take.count()).toBeGreaterThan(3);
    const plane = () => page.locator(".section svg text", { hasText: "plane" }).textContent();
    await soon(plane).toContain("plane");
    const before = await plane();
    await take.first().click();
    await soon(() => page.locator(".field-history").textContent()).toContain("Take a build-up");
    await soon(plane).not.toBe(before);
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press("Control+z");
    await soon(plane).toBe(before);
  });

  it("a variant is kept, differs after an edit, and comes back to the sheet", async () => {
    const { page, complaints } = open;
    await go(page, "Setting out");
    await page.locator(".notes-tab", { hasText: "Variants" }).click();
    await page.locator(".variants .fold").click();
    await page.locator(".variant").first().waitFor();
    await pickDrawn(page, "W2");
    const left = page.locator(".place-fields input").first();
    await left.fill("1200");
    await left.press("Enter");
    await soon(() => page.locator(".variants .differs").count()).toBeGreaterThan(0);
    expect(await violations(page)).toEqual([]);
    await page.reload();
    await whole(page);
    await page.locator(".notes-tab", { hasText: "Variants" }).click();
    await soon(() => page.locator(".variants .differs").count()).toBeGreaterThan(0);
    await pickDrawn(page, "W2");
    await page.locator(".variant button").first().click();
    await soon(() => left.inputValue()).toBe("750");
    await soon(() => page.locator(".variants .differs").count()).toBe(0);
    await page.locator(".variant button").nth(1).click();
    await soon(() => page.locator(".variant").count()).toBe(0);
    expect(complaints).toEqual([]);
  });
});

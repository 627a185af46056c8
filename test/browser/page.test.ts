/** The workbench as a builder uses it: by mouse, by keys, in both languages and units, with good files and bad ones. */
import { readFileSync } from "node:fs";
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { readProject } from "../../src/project/read.ts";
import type { Serving } from "../../src/server/serve.ts";
import { say } from "../../src/text/say.ts";
import { describeInBrowser } from "./browser.ts";
import { exampleFile, type OpenPage, openPage, serveExample } from "./page-harness.ts";

const text = readFileSync(exampleFile("atelier-bouleau"), "utf8");
const read = readProject(text, "atelier-bouleau.outerleaf.json");
if (!read.ok) throw new Error("the demo cannot be read");
const demo = design(read.project);
const expected = [...read.findings, ...demo.findings];
const english = { ...read.project.display, language: "en" } as const;

describeInBrowser("the workbench", (browser) => {
  let serving: Serving;
  let open: OpenPage;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());
  beforeEach(async () => {
    open = await openPage(browser(), serving);
  });
  afterEach(async () => {
    expect(open.complaints).toEqual([]);
    await open.close();
  });

  const heading = (): Promise<string | null> => open.page.locator(".facts h2").textContent();
  /** The middle of what is drawn of a thing, pixels of the page. */
  const middleOf = async (id: string): Promise<{ x: number; y: number }> => {
    const box = await open.page.locator(`.drawing-host [data-of="${id}"]`).first().boundingBox();
    if (!box) throw new Error(`${id} is not drawn`);
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  };

  it("shows every face with its direction, and every sheet that design() sets out", async () => {
    const drawn = await open.page.locator(".drawing-host").textContent();
    // A face as narrow as a side of the recess is named by its code, a soffit has no direction.
    const named = demo.facade.faces.filter(({ id, azimuthDeg }) => {
      const name = `${id.slice(0, 1).toUpperCase()}${id.slice(1)}`;
      return drawn?.includes(azimuthDeg === undefined ? `${name} · from below` : `${name} · ${azimuthDeg}°`);
    });
    for (const { id, code } of demo.facade.faces)
      expect([id, named.some((one) => one.id === id) || drawn?.includes(code)]).toEqual([id, true]);
    expect(named.map(({ id }) => id)).toEqual(expect.arrayContaining(["west", "front", "east", "north"]));
    expect(demo.facade.faces).toHaveLength(8);
    const marks = await open.page
      .locator(".drawing-host [data-of]")
      .evaluateAll((found) => found.map((element) => element.getAttribute("data-of")));
    const cladding = demo.facade.faces
      .flatMap(({ pieces }) => pieces)
      .filter(({ kind }) => kind === "sheet" || kind === "board");
    expect(cladding.filter(({ mark }) => !marks.includes(mark))).toEqual([]);
  });

  it("tells as many findings as design() finds, those to settle first in front", async () => {
    const count = open.page.locator(".count");
    expect(Number(await count.getAttribute("data-count"))).toBe(expected.length);
    const settle = expected.filter(
      ({ outcome }) => outcome !== "pass" && outcome !== "not applicable",
    ).length;
    expect(await count.textContent()).toBe(`${settle} to settle · ${expected.length - settle} hold`);
    expect(await open.page.locator(".note-says").first().textContent()).toBe(
      say(expected[0]?.says ?? { key: "", values: {} }, english),
    );
    await open.page.locator(".fold").last().click();
    const told = new Set(await open.page.locator(".note-says").allTextContents());
    const lines = expected.map(({ says }) => say(says, english));
    expect(lines.filter((line) => !told.has(line))).toEqual([]);
  });

  it("stands with its section at the sill of the lead opening until something is picked", async () => {
    expect(await heading()).toBe("W2");
    await expect.poll(() => open.page.locator(".section h2").textContent()).toBe("Section at W2, sill");
    expect(await open.page.locator(".section .sub").textContent()).toBe("1 : 5");
    expect(await open.page.locator(".section svg text").allTextContents()).toContain("sill W2 900");
  });

  it("picks an opening and a sheet by mouse, and lets go of them", async () => {
    const door = await middleOf("D1");
    await open.page.mouse.click(door.x, door.y);
    expect(await heading()).toBe("D1");
    expect(await open.page.locator(".pick text").allTextContents()).toEqual(["2387", "2100"]);
    expect(await open.page.locator('.drawing-host [data-of="D1"].picked').count()).toBeGreaterThan(0);
    const sheet = await middleOf("F2-S1a");
    await open.page.mouse.click(sheet.x, sheet.y);
    expect(await heading()).toBe("F2-S1a");
    const facts = await open.page.locator(".facts dl").textContent();
    expect(facts).toContain("fixed point");
    expect(facts).toContain("F2-L1a");
    await open.page.locator(".drawing-host").press("Escape");
    expect(await open.page.locator(".pick").count()).toBe(0);
  });

  it("a drag moves the drawing and picks nothing; wheel and keys zoom about their point; 0 goes home", async () => {
    const { page } = open;
    const scale = async (): Promise<string> =>
      (await page.locator(".field-scale .value").textContent()) ?? "";
    const home = await scale();
    const before = await middleOf("D1");
    await page.mouse.move(before.x, before.y);
    await page.mouse.down();
    await page.mouse.move(before.x - 90, before.y + 20, { steps: 4 });
    await page.mouse.up();
    const after = await middleOf("D1");
    expect(after.x - before.x).toBeCloseTo(-90, 0);
    expect(after.y - before.y).toBeCloseTo(20, 0);
    expect(await page.locator(".pick").count()).toBe(0);

    await page.mouse.move(after.x, after.y);
    await page.mouse.wheel(0, -400);
    await page.waitForTimeout(400);
    const zoomed = await middleOf("D1");
    expect(Math.abs(zoomed.x - after.x)).toBeLessThan(2);
    expect(Math.abs(zoomed.y - after.y)).toBeLessThan(2);
    expect(Number((await scale()).slice(4))).toBeLessThan(Number(home.slice(4)) * 0.7);

    const host = page.locator(".drawing-host");
    await host.press("ArrowLeft");
    await page.waitForTimeout(50);
    expect((await middleOf("D1")).x - zoomed.x).toBeCloseTo(60, 0);
    await host.press("0");
    await expect.poll(scale).toBe(home);
    await host.press("+");
    await expect.poll(scale).not.toBe(home);
  });

  it("a tree of faces, zones and pieces leads to every piece by keys alone", async () => {
    const { page } = open;
    await page.getByRole("button", { name: "Items" }).press("Enter");
    await page.getByRole("treeitem").first().focus();
    // Its window, its two ducts and its tap come before its zone.
    const toZone = Array.from({ length: 5 }, () => "ArrowDown");
    for (const key of ["ArrowRight", ...toZone, "ArrowRight", "ArrowDown"]) {
      await page.keyboard.press(key);
    }
    const west = demo.facade.faces[0];
    const board = west?.pieces.find(({ kind }) => kind === "board");
    expect(await heading()).toBe(board?.mark);
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute("data-key")))
      .toBe(`piece/${west?.id}/${board?.mark}`);
    await page.keyboard.press("End");
    await page.keyboard.press("ArrowUp");
    expect(await heading()).not.toBe(board?.mark);
    await page.keyboard.press("Home");
    expect(await heading()).toBe("West");
    await page.keyboard.press("ArrowLeft");
    expect(await page.getByRole("treeitem").count()).toBe(demo.facade.faces.length);
  });

  it("folds out what comes off before a piece and the piece, each a press away, in both languages", async () => {
    const { page } = open;
    const batten = demo.facade.faces[1]?.pieces.find(({ mark }) => mark === "F2-L1a");
    const marks = [...(batten?.removeBefore ?? []), "F2-L1a"];
    await page.getByRole("button", { name: "Items" }).click();
    await page.getByRole("treeitem").filter({ hasText: "Front" }).click();
    await page.getByRole("treeitem").filter({ hasText: "zone sheets" }).first().click();
    await page.getByRole("treeitem").filter({ hasText: "F2-L1a" }).click();
    const fold = page.getByRole("button", { name: "To take it off" });
    // By hand: 15 and 9 screws of two sheets, 6 of the batten.
    expect(await fold.textContent()).toContain("3 pieces, 30 screws, 54.5 kg");
    expect(await page.locator(".take-off-step:visible").count()).toBe(0);
    await fold.press("Enter");
    const steps = page.locator(".take-off-step");
    expect(await steps.locator(".take-off-mark").allTextContents()).toEqual(marks);
    expect(await steps.first().textContent()).toContain("15 × sheet-38, 36.2 kg");
    expect(await steps.last().getAttribute("aria-current")).toBe("true");
    expect(await page.locator(".take-off").textContent()).toContain("Heavier than 25 kg: F2-S1a.");
    expect(await page.locator(".take-off").textContent()).toContain("guard against falls");

    await steps.first().click();
    expect(await heading()).toBe(marks[0]);
    expect(await page.locator(".pick-outline").count()).toBe(1);
    // The fold stays out, with the steps of what is picked now.
    expect(await steps.locator(".take-off-mark").allTextContents()).toEqual([marks[0]]);
    await page.getByRole("button", { name: "Français" }).click();
    expect(await page.locator(".take-off").textContent()).toContain("Pour le déposer");
    await page.locator(".take-off-fold").click();
    expect(await page.locator(".take-off-step:visible").count()).toBe(0);
  });

  it("picks a joint where it is wide enough to be meant", async () => {
    const { page } = open;
    const joint = demo.facade.faces[1]?.joints.find(
      ({ kind }) => kind === "junction" || kind === "sheet joint",
    );
    await page.getByRole("button", { name: "Items" }).click();
    const items = page.getByRole("treeitem");
    await items.filter({ hasText: "Front" }).click();
    await items
      .filter({ hasText: `zone ${joint?.zone}` })
      .last()
      .click();
    await items.filter({ hasText: "joint" }).first().click();
    expect(await heading()).toMatch(/joint|gap/);
    expect(await page.locator(".facts dl").textContent()).toContain("mm");
  });

  it("opens a finding's working and goes to its place", async () => {
    const { page } = open;
    const withWorking = expected.findIndex(
      ({ working, where, outcome }) => working && where.marks && outcome === "attention",
    );
    const finding = expected[withWorking];
    const says = say(finding?.says ?? { key: "", values: {} }, english);
    const note = page.locator(".note", { hasText: says });
    await note.locator(".note-press").click();
    const working = await note.locator(".working").textContent();
    expect(working).toContain(finding?.working?.formula);
    expect(working).toContain(finding?.working?.substituted);
    for (const { symbol } of finding?.working?.inputs ?? []) expect(working).toContain(symbol);
    expect(await page.locator(".pick-outline").count()).toBe(1);
    expect(await heading()).toBe(finding?.where.marks?.[0]);
    await note.locator(".note-press").click();
    expect(await page.locator(".working").count()).toBe(0);
  });

  it("changes its language and its units wherever words and lengths stand, and keeps them", async () => {
    const { page } = open;
    await page.getByRole("button", { name: "Français" }).click();
    expect(await page.locator("html").getAttribute("lang")).toBe("fr");
    expect(await page.locator(".margin").textContent()).toContain("Calepinage");
    expect(await page.locator(".note-says").first().textContent()).toBe(
      say(expected[0]?.says ?? { key: "", values: {} }, { ...english, language: "fr" }),
    );
    expect(await page.locator(".section h2").textContent()).toBe("Coupe sur W2, appui");
    await page.getByRole("button", { name: "pied-pouce" }).click();
    await expect.poll(() => page.locator(".drawing-host").textContent()).toContain("7'-10\"");
    expect(await page.locator(".facts dl").textContent()).toContain("2'-11 7/16\"");
    expect(await page.locator(".drawing-host").textContent()).not.toContain("[");
    await page.reload();
    await page.locator(".field-units button[aria-pressed=true]", { hasText: "pied-pouce" }).waitFor();
    expect(await page.locator("html").getAttribute("lang")).toBe("fr");
  });

  it("a bad file tells what is wrong and leaves the design; a good one takes its place", async () => {
    const { page } = open;
    const bad = JSON.stringify({ schemaVersion: 1, title: "Half a house" });
    const file = (name: string, body: string) => ({
      name,
      mimeType: "application/json",
      buffer: Buffer.from(body),
    });
    await page.setInputFiles("input[type=file]", file("half.json", bad));
    const refused = page.locator(".refused");
    await refused.waitFor();
    const problems = readProject(bad, "half.json").findings;
    expect(await refused.locator("li").count()).toBe(problems.length);
    expect(await refused.textContent()).toContain(say(problems[0]?.says ?? { key: "", values: {} }, english));
    expect(await page.locator(".project-title").textContent()).toBe(demo.project.title);
    expect(Number(await page.locator(".count").getAttribute("data-count"))).toBe(expected.length);
    await page.getByRole("button", { name: "Put away" }).click();
    expect(await refused.count()).toBe(0);

    const other = readFileSync(exampleFile("imperial"), "utf8");
    await page.setInputFiles("input[type=file]", file("imperial.outerleaf.json", other));
    const title = (JSON.parse(other) as { title: string }).title;
    await page.locator(".project-title", { hasText: title }).waitFor();
    expect(await page.locator(".file-name").textContent()).toBe("imperial.outerleaf.json");
    expect(await page.locator(".field-units button[aria-pressed=true]").textContent()).toBe("feet-inch");
  });

  it("takes a file that is dropped on it", async () => {
    const { page } = open;
    await page.evaluate(() => {
      const data = new DataTransfer();
      data.items.add(new File(["{"], "torn.json", { type: "application/json" }));
      document
        .querySelector(".sheet")
        ?.dispatchEvent(new DragEvent("drop", { dataTransfer: data, bubbles: true }));
    });
    await page.locator(".refused", { hasText: "torn.json" }).waitFor();
    expect(await page.locator(".project-title").textContent()).toBe(demo.project.title);
  });

  it("a part of the job that has no place yet says what it will hold", async () => {
    const { page } = open;
    const margin = page.locator(".margin");
    expect(await margin.getByRole("button").allTextContents()).toEqual([
      "Survey",
      "Build-up",
      "Setting out",
      "Proof",
      "Cutting",
      "Order",
      "Sheets",
      "Site",
      "Upkeep",
    ]);
    for (const part of ["Survey", "Site", "Upkeep"]) {
      await margin.getByRole("button", { name: part, exact: true }).click();
      expect(await page.locator(".part-notice h2").textContent()).toBe(part);
      expect(await page.locator(".part-notice > p").first().textContent()).toMatch(/^Here .{25,}\.$/);
    }
    await margin.getByRole("button", { name: "Proof", exact: true }).click();
    expect(await page.locator(".bar-row").count()).toBeGreaterThan(10);
    await margin.getByRole("button", { name: "Setting out", exact: true }).click();
    expect(await heading()).toBe("W2");
  });
});

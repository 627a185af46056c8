/** The workbench as a builder uses it: by mouse, by keys, in both languages and units, with good files and bad ones. */
import { readFileSync } from "node:fs";
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { readProject } from "../../src/project/read.ts";
import type { Serving } from "../../src/server/serve.ts";
import { say } from "../../src/text/say.ts";
import { describeInBrowser } from "./browser.ts";
import { drawn, exampleFile, middleOf, type OpenPage, openPage, serveExample, soon } from "./page-harness.ts";

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

  const textOf = (selector: string): Promise<string | null> =>
    open.page.locator(selector).first().textContent();
  const heading = (): Promise<string | null> => textOf(".facts h2");

  it("shows every face with its direction, and every sheet that design() sets out", async () => {
    const named = async (): Promise<string[]> => {
      const text = await textOf(".drawing-host");
      // A face as narrow as a side of the recess is named by its code, a soffit has no direction.
      return demo.facade.faces.flatMap(({ id, code, azimuthDeg }) => {
        const name = `${id.slice(0, 1).toUpperCase()}${id.slice(1)}`;
        const whole = azimuthDeg === undefined ? `${name} · from below` : `${name} · ${azimuthDeg}°`;
        return [...(text?.includes(whole) ? [id] : []), ...(text?.includes(code) ? [code] : [])];
      });
    };
    for (const { id, code } of demo.facade.faces)
      await soon(named).toSatisfy((names: string[]) => names.includes(id) || names.includes(code));
    await soon(named).toEqual(expect.arrayContaining(["west", "front", "east", "north"]));
    expect(demo.facade.faces).toHaveLength(8);
    const cladding = demo.facade.faces
      .flatMap(({ pieces }) => pieces)
      .filter(({ kind }) => kind === "sheet" || kind === "board");
    await soon(async () => {
      const marks = await open.page
        .locator(".drawing-host [data-of]")
        .evaluateAll((found) => found.map((element) => element.getAttribute("data-of")));
      return cladding.filter(({ mark }) => !marks.includes(mark));
    }).toEqual([]);
  });

  it("tells as many findings as design() finds, those to settle first in front", async () => {
    const count = open.page.locator(".count");
    await soon(() => count.getAttribute("data-count")).toBe(String(expected.length));
    const settle = expected.filter(
      ({ outcome }) => outcome !== "pass" && outcome !== "not applicable",
    ).length;
    await soon(() => count.textContent()).toBe(`${settle} to settle · ${expected.length - settle} hold`);
    await soon(() => textOf(".note-says")).toBe(say(expected[0]?.says ?? { key: "", values: {} }, english));
    await open.page.locator(".fold").last().click();
    const lines = expected.map(({ says }) => say(says, english));
    await soon(async () => {
      const told = new Set(await open.page.locator(".note-says").allTextContents());
      return lines.filter((line) => !told.has(line));
    }).toEqual([]);
  });

  it("stands with its section at the sill of the lead opening until something is picked", async () => {
    await soon(heading).toBe("W2");
    await soon(() => textOf(".section h2")).toBe("Section at W2, sill");
    await soon(() => textOf(".section .sub")).toBe("1 : 5");
    await soon(() => open.page.locator(".section svg text").allTextContents()).toContain("sill W2 900");
  });

  it("picks an opening and a sheet by mouse, and lets go of them", async () => {
    const { page } = open;
    await page.mouse.click(...(await middleOf(page, "D1")));
    await soon(heading).toBe("D1");
    await soon(() => page.locator(".pick text").allTextContents()).toEqual(["2387", "2100"]);
    await soon(() => page.locator(`${drawn("D1")}.picked`).count()).toBeGreaterThan(0);
    await page.mouse.click(...(await middleOf(page, "F2-S1a")));
    await soon(heading).toBe("F2-S1a");
    await soon(() => textOf(".facts dl")).toContain("fixed point");
    await soon(() => textOf(".facts dl")).toContain("F2-L1a");
    await page.locator(".drawing-host").press("Escape");
    await soon(() => page.locator(".pick").count()).toBe(0);
  });

  it("a drag moves the drawing and picks nothing; wheel and keys zoom about their point; 0 goes home", async () => {
    const { page } = open;
    const scale = (): Promise<string | null> => textOf(".field-scale .value");
    const times = async (): Promise<number> => Number((await scale())?.slice(4));
    const before = await middleOf(page, "D1");
    const home = await scale();
    expect(home).toMatch(/^1 : \d+$/);
    await page.mouse.move(...before);
    await page.mouse.down();
    await page.mouse.move(before[0] - 90, before[1] + 20, { steps: 4 });
    await page.mouse.up();
    const after = await middleOf(page, "D1");
    expect(after[0] - before[0]).toBeCloseTo(-90, 0);
    expect(after[1] - before[1]).toBeCloseTo(20, 0);
    expect(await page.locator(".pick").count()).toBe(0);

    await page.mouse.move(...after);
    await page.mouse.wheel(0, -400);
    await soon(times).toBeLessThan(Number(home?.slice(4)) * 0.7);
    const zoomed = await middleOf(page, "D1");
    expect(Math.abs(zoomed[0] - after[0])).toBeLessThan(2);
    expect(Math.abs(zoomed[1] - after[1])).toBeLessThan(2);

    const host = page.locator(".drawing-host");
    await host.press("ArrowLeft");
    expect((await middleOf(page, "D1"))[0] - zoomed[0]).toBeCloseTo(60, 0);
    await host.press("0");
    await soon(scale).toBe(home);
    await host.press("+");
    await soon(scale).not.toBe(home);
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
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute("data-key"));
    await soon(heading).toBe(board?.mark);
    await soon(focused).toBe(`piece/${west?.id}/${board?.mark}`);
    await page.keyboard.press("End");
    await page.keyboard.press("ArrowUp");
    await soon(heading).not.toBe(board?.mark);
    await page.keyboard.press("Home");
    await soon(heading).toBe("West");
    await page.keyboard.press("ArrowLeft");
    await soon(() => page.getByRole("treeitem").count()).toBe(demo.facade.faces.length);
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
    await soon(() => fold.textContent()).toContain("3 pieces, 30 screws, 54.5 kg");
    await soon(() => page.locator(".take-off-step:visible").count()).toBe(0);
    await fold.press("Enter");
    const steps = page.locator(".take-off-step");
    await soon(() => steps.locator(".take-off-mark").allTextContents()).toEqual(marks);
    await soon(() => steps.first().textContent()).toContain("15 × sheet-38, 36.2 kg");
    await soon(() => steps.last().getAttribute("aria-current")).toBe("true");
    await soon(() => textOf(".take-off")).toContain("Heavier than 25 kg: F2-S1a.");
    await soon(() => textOf(".take-off")).toContain("guard against falls");

    await steps.first().click();
    await soon(heading).toBe(marks[0]);
    await soon(() => page.locator(".pick-outline").count()).toBe(1);
    // The fold stays out, with the steps of what is picked now.
    await soon(() => steps.locator(".take-off-mark").allTextContents()).toEqual([marks[0]]);
    await page.getByRole("button", { name: "Français" }).click();
    await soon(() => textOf(".take-off")).toContain("Pour le déposer");
    await page.locator(".take-off-fold").click();
    await soon(() => page.locator(".take-off-step:visible").count()).toBe(0);
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
    await soon(heading).toMatch(/joint|gap/);
    await soon(() => textOf(".facts dl")).toContain("mm");
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
    const working = (): Promise<string | null> => note.locator(".working").textContent();
    await soon(working).toContain(finding?.working?.formula);
    await soon(working).toContain(finding?.working?.substituted);
    for (const { symbol } of finding?.working?.inputs ?? []) await soon(working).toContain(symbol);
    await soon(() => page.locator(".pick-outline").count()).toBe(1);
    await soon(heading).toBe(finding?.where.marks?.[0]);
    await note.locator(".note-press").click();
    await soon(() => page.locator(".working").count()).toBe(0);
  });

  it("changes its language and its units wherever words and lengths stand, and keeps them", async () => {
    const { page } = open;
    await page.getByRole("button", { name: "Français" }).click();
    await soon(() => page.locator("html").getAttribute("lang")).toBe("fr");
    await soon(() => textOf(".margin")).toContain("Calepinage");
    await soon(() => textOf(".note-says")).toBe(
      say(expected[0]?.says ?? { key: "", values: {} }, { ...english, language: "fr" }),
    );
    await soon(() => textOf(".section h2")).toBe("Coupe sur W2, appui");
    await page.getByRole("button", { name: "pied-pouce" }).click();
    await soon(() => textOf(".drawing-host")).toContain("7'-10\"");
    await soon(() => textOf(".facts dl")).toContain("2'-11 7/16\"");
    await soon(() => textOf(".drawing-host")).not.toContain("[");
    await page.reload();
    await page.locator(".field-units button[aria-pressed=true]", { hasText: "pied-pouce" }).waitFor();
    await soon(() => page.locator("html").getAttribute("lang")).toBe("fr");
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
    await soon(() => refused.locator("li").count()).toBe(problems.length);
    await soon(() => refused.textContent()).toContain(
      say(problems[0]?.says ?? { key: "", values: {} }, english),
    );
    expect(await textOf(".project-title")).toBe(demo.project.title);
    expect(await page.locator(".count").getAttribute("data-count")).toBe(String(expected.length));
    await page.getByRole("button", { name: "Put away" }).click();
    await soon(() => refused.count()).toBe(0);

    const other = readFileSync(exampleFile("imperial"), "utf8");
    await page.setInputFiles("input[type=file]", file("imperial.outerleaf.json", other));
    const title = (JSON.parse(other) as { title: string }).title;
    await page.locator(".project-title", { hasText: title }).waitFor();
    await soon(() => textOf(".file-name")).toBe("imperial.outerleaf.json");
    await soon(() => textOf(".field-units button[aria-pressed=true]")).toBe("feet-inch");
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
    expect(await textOf(".project-title")).toBe(demo.project.title);
  });

  it("every part of the job has its place, in the order of the job", async () => {
    const { page } = open;
    const margin = page.locator(".margin");
    await soon(() => margin.getByRole("button").allTextContents()).toEqual([
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
    for (const [part, band] of [
      ["Site", ".progress-band"],
      ["Upkeep", ".upkeep-band"],
    ] as const) {
      await margin.getByRole("button", { name: part, exact: true }).click();
      await soon(() => textOf(`${band} h2`)).toBe(part);
    }
    await margin.getByRole("button", { name: "Proof", exact: true }).click();
    await soon(() => page.locator(".bar-row").count()).toBeGreaterThan(10);
    await margin.getByRole("button", { name: "Setting out", exact: true }).click();
    await soon(heading).toBe("W2");
  });
});

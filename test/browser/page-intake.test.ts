/** A drawing chosen from disk: shown before it is taken, taken in one step, and refused in words. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { SHAPES } from "../../src/cli/shapes/all.ts";
import type { Serving } from "../../src/server/serve.ts";
import { box, dxf, lightLine } from "../helpers/dxf.ts";
import { box as houseOf, IfcText } from "../helpers/ifc.ts";
import { describeInBrowser } from "./browser.ts";
import { DRAWN, openPage, serveExample, violations } from "./page-harness.ts";

const upload = (name: string, text: string) => ({
  name,
  mimeType: "image/vnd.dxf",
  buffer: Buffer.from(text, "utf8"),
});
const gable = dxf({
  units: 5,
  entities: [
    lightLine(
      [
        [0, 0],
        [480, 0],
        [480, 230],
        [240, 330],
        [0, 230],
      ],
      { layer: "GABLE", handle: "10" },
    ),
    lightLine(box(150, 90, 120, 110), { layer: "GABLE", handle: "11" }),
    lightLine(box(0, 0, 10, 10), { layer: "NORTH", handle: "12" }),
  ],
});
const input = (page: Page) => page.getByLabel("Drawing of the face (DXF) or model of the walls (IFC4)");

describeInBrowser("a drawing that is taken in", (browser) => {
  describe("where no file is served", () => {
    let serving: Serving;
    beforeAll(async () => {
      serving = await serveExample("nothing-of-this-name");
    });
    afterAll(() => serving.close());

    it.each([
      ["at a desk", { viewport: { width: 1680, height: 1050 } }],
      ["on a phone by night", { viewport: { width: 390, height: 844 }, colorScheme: "dark" as const }],
    ])("%s: a face is seen before it begins a project", async (_, options) => {
      const context = await browser().newContext(options);
      const page = await context.newPage();
      await page.goto(serving.url);
      await page.getByRole("button", { name: "or begin with a drawing …" }).click();
      await input(page).setInputFiles(upload("gable.dxf", gable));
      await page.getByRole("img", { name: "The face that is taken in, with 1 opening" }).waitFor();
      expect(await page.getByLabel("layer (its closed lines)", { exact: true }).inputValue()).toBe("GABLE");
      expect(await page.getByLabel("one unit of it is", { exact: true }).inputValue()).toBe("cm");
      expect(await page.locator(".intake-tells").textContent()).toContain(
        "1200 mm × 1100 mm, 1500 mm from the left",
      );
      expect(await violations(page)).toEqual([]);
      await page.getByRole("button", { name: "Begin with this face" }).click();
      await page.locator(DRAWN).first().waitFor();
      const [download] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: "Save a copy" }).click(),
      ]);
      const { faces } = JSON.parse(readFileSync(await download.path(), "utf8"));
      expect(faces[0].outline.map(([x]: number[]) => x)).toEqual([0, 4800, 4800, 2400, 0]);
      expect(faces[0].openings).toMatchObject([{ id: "W1", x: [1500, 2700] }]);
      await context.close();
    });

    it("the walls of a model are chosen, seen, and begin a project with their corners", async () => {
      const context = await browser().newContext({ viewport: { width: 390, height: 844 } });
      const page = await context.newPage();
      await page.goto(serving.url);
      await page.getByRole("button", { name: "or begin with a drawing …" }).click();
      const model = new IfcText("m", { north: [0, 1] });
      houseOf(model);
      await input(page).setInputFiles(upload("house.ifc", model.text()));
      await page.getByRole("checkbox", { name: "Back wall:1" }).uncheck();
      await expect.poll(() => page.getByRole("img", { name: "The face that is taken in" }).count()).toBe(3);
      expect(await page.locator(".intake-tells").textContent()).toContain(
        "the right end of front meets the left end of right",
      );
      expect(await violations(page)).toEqual([]);
      const drawn = await page
        .locator(".intake .face-picture-wall")
        .evaluateAll((walls) => walls.map((wall) => wall.getBoundingClientRect().width));
      await page.getByRole("button", { name: "Begin with these walls" }).click();
      await page.locator(DRAWN).first().waitFor();
      const [download] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: "Save a copy" }).click(),
      ]);
      const { faces, corners } = JSON.parse(readFileSync(await download.path(), "utf8"));
      expect([faces.length, corners.length]).toEqual([3, 2]);
      // One scale for all: as many pixels to the millimetre in each, within the rounding of half a pixel.
      const widths = (faces as { outline: [number, number][] }[]).map(({ outline }) =>
        Math.max(...outline.map(([x]) => x)),
      );
      expect(new Set(widths).size).toBeGreaterThan(1);
      const scale = (drawn[0] as number) / (widths[0] as number);
      for (const [i, width] of widths.entries()) expect(drawn[i]).toBeCloseTo(width * scale, 0);
      await context.close();
    });

    it.each([
      ["at a desk", { viewport: { width: 1440, height: 900 } }],
      ["on a phone by night", { viewport: { width: 390, height: 844 }, colorScheme: "dark" as const }],
    ])(
      "%s: walls are turned one by one from the keys, the pictures and corners follow",
      async (_, options) => {
        const context = await browser().newContext(options);
        const page = await context.newPage();
        await page.goto(serving.url);
        await page.getByRole("button", { name: "or begin with a drawing …" }).click();
        const model = new IfcText("mm", { north: [0, 1] });
        const { front } = houseOf(model);
        model.opening(front.wall, ...front.hole(1000, 900, 1200, 1200));
        await input(page).setInputFiles(upload("house.ifc", model.text()));
        for (const wall of ["Back wall:1", "left"])
          await page.getByRole("checkbox", { name: wall }).uncheck();
        const tells = page.locator(".intake-tells");
        const corner = "the right end of front meets the left end of right";
        await expect.poll(() => tells.textContent()).toContain(corner);
        const turn = (wall: string) => page.getByRole("button", { name: `Turn ${wall}`, exact: true });
        expect(await turn("left").isDisabled()).toBe(true);
        // How far the window stands from the left end of its face, by what is drawn.
        const left = async () => {
          const [wall, hole] = await Promise.all(
            [".face-picture-wall", ".face-picture-opening"].map((one) =>
              page
                .locator("figure", { has: page.locator(".face-picture-opening") })
                .locator(one)
                .boundingBox(),
            ),
          );
          return ((hole?.x ?? 0) - (wall?.x ?? 0)) / (wall?.width ?? 1);
        };
        expect(await left()).toBeCloseTo(1000 / 6000, 1);
        await turn("front").focus();
        await page.keyboard.press("Space");
        await expect.poll(left).toBeCloseTo(3800 / 6000, 1);
        expect(await turn("front").getAttribute("aria-pressed")).toBe("true");
        // The keys stay where they were, though the faces come in another order.
        expect(await turn("front").evaluate((one) => one === document.activeElement)).toBe(true);
        expect(await tells.textContent()).not.toContain(corner);
        expect(await tells.textContent()).toContain("Seen from the other side: front.");
        expect(await page.locator("figcaption").allTextContents()).toContain("Front · from the other side");
        expect(await violations(page)).toEqual([]);
        await turn("right").press("Enter");
        await expect
          .poll(() => tells.textContent())
          .toContain("the right end of right meets the left end of front");
        await page.getByRole("button", { name: "Begin with these walls" }).click();
        await page.locator(DRAWN).first().waitFor();
        const [download] = await Promise.all([
          page.waitForEvent("download"),
          page.getByRole("button", { name: "Save a copy" }).click(),
        ]);
        const { faces, corners } = JSON.parse(readFileSync(await download.path(), "utf8"));
        expect(corners).toMatchObject([{ left: "right", right: "front" }]);
        expect(
          Object.fromEntries(
            faces.map(({ id, openings }: { id: string; openings: { x: number[] }[] }) => [
              id,
              openings[0]?.x,
            ]),
          ),
        ).toEqual({ right: undefined, front: [3500, 4700] });
        await context.close();
      },
    );

    it("a file that is none is told, and cannot be taken", async () => {
      const context = await browser().newContext();
      const page = await context.newPage();
      await page.goto(serving.url);
      await page.getByRole("button", { name: "or begin with a drawing …" }).click();
      await input(page).setInputFiles(upload("letter.dxf", "Dear sir,\nplease"));
      await expect
        .poll(() => page.locator(".intake [role=alert]").textContent())
        .toContain("whole number here");
      expect(await page.getByRole("button", { name: "Begin with this face" }).isDisabled()).toBe(true);
      await context.close();
    });
  });

  describe("into a project", () => {
    let serving: Serving;
    beforeAll(async () => {
      serving = await serveExample("atelier-bouleau");
    });
    afterAll(() => serving.close());

    it("replaces the picked face in one step, which is taken back by one press", async () => {
      const { page, complaints, close } = await openPage(browser(), serving);
      await page.getByRole("button", { name: "items" }).click();
      await page
        .getByRole("treeitem", { name: /^front/i })
        .first()
        .click();
      await page.getByRole("button", { name: "Take a drawing in …" }).click();
      const front = dxf({
        entities: [
          lightLine(box(0, 0, 7200, 2550), { handle: "10" }),
          lightLine(box(3000, 900, 1500, 1200), { handle: "11" }),
        ],
      });
      await input(page).setInputFiles(upload("front.dxf", front));
      await expect.poll(() => page.locator(".intake-tells").textContent()).toContain("is taken out");
      expect(await violations(page)).toEqual([]);
      await page.getByRole("button", { name: "Take this outline and these openings" }).click();
      await expect.poll(() => page.locator(".intake-tells").textContent()).toContain("stays");
      await page.keyboard.press("Control+z");
      await expect.poll(() => page.locator(".intake-tells").textContent()).toContain("is taken out");
      expect(complaints).toEqual([]);
      await close();
    });

    it("turns the wall that goes into a face, in one step", async () => {
      const { page, complaints, close } = await openPage(browser(), serving);
      await page.getByRole("button", { name: "items" }).click();
      await page
        .getByRole("treeitem", { name: /^front/i })
        .first()
        .click();
      await page.getByRole("button", { name: "Take a drawing in …" }).click();
      const model = new IfcText();
      const { wall, hole } = model.plainWall({ name: "a1", from: [0, 0], along: [1, 0], length: 7200 });
      model.opening(wall, ...hole(500, 900, 1000, 1200));
      await input(page).setInputFiles(upload("front.ifc", model.text()));
      const tells = page.locator(".intake-tells");
      await expect
        .poll(() => tells.textContent())
        .toContain("which side of a1 looks outside cannot be known");
      expect(await tells.textContent()).toContain("500 mm from the left");
      await page.getByRole("button", { name: "Turn a1" }).click();
      await expect.poll(() => tells.textContent()).toContain("5700 mm from the left");
      expect(await tells.textContent()).not.toContain("cannot be known");
      expect(await violations(page)).toEqual([]);
      await page.getByRole("button", { name: "Take this outline and these openings" }).click();
      await expect.poll(() => tells.textContent()).toContain("1 opening stays as it is");
      await page.keyboard.press("Control+z");
      await expect.poll(() => tells.textContent()).toContain("is taken out");
      expect(complaints).toEqual([]);
      await close();
    });

    it("takes a pile in from a table, with its bad rows told first, and hands out files for other programs", async () => {
      const { page, complaints, close } = await openPage(browser(), serving);
      await page.getByRole("button", { name: "Cutting", exact: true }).click();
      await page.getByRole("button", { name: /^the pile/i }).click();
      const table = page.getByLabel("Table of boards (CSV, XLSX)");
      const csv = (text: string) => ({ name: "pile.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
      await table.setInputFiles(csv("Nr,lot,length,width,thickness\nN1,A,2400,?,24\n"));
      await expect.poll(() => page.locator(".intake-tells").textContent()).toContain("no column for: Board");
      await page.getByLabel("Board", { exact: true }).selectOption("Nr");
      await expect.poll(() => page.locator(".intake-tells").textContent()).toContain("row 2, column “width”");
      expect(await page.getByRole("button", { name: "Take this pile" }).isDisabled()).toBe(true);
      expect(await violations(page)).toEqual([]);
      await table.setInputFiles(csv("board,lot,length,width,thickness\nN1,A,2400,150,24\n"));
      await expect.poll(() => page.locator(".intake-tells").textContent()).toContain("118 boards go");
      await page.getByRole("button", { name: "Take this pile" }).click();
      await expect.poll(() => page.getByRole("button", { name: /^the pile/i }).textContent()).toContain("1");
      await page.keyboard.press("Control+z");
      await expect
        .poll(() => page.getByRole("button", { name: /^the pile/i }).textContent())
        .toContain("118");
      await page.getByRole("button", { name: "Sheets", exact: true }).click();
      for (const [press, file, head] of [
        ["Schedules and order (XLSX)", "schedules.xlsx", "PK"],
        ["Facade in 3D (IFC4)", "facade.ifc", "ISO-10303-21;"],
      ] as const) {
        const [download] = await Promise.all([
          page.waitForEvent("download"),
          page.getByRole("button", { name: press }).click(),
        ]);
        expect(download.suggestedFilename()).toBe(file);
        expect(readFileSync(await download.path(), "latin1").startsWith(head)).toBe(true);
      }
      // Those whose schemas are published, as an issue writes them.
      for (const [press, file, shape] of [
        ["Facade as set out (JSON)", "set-out.json", "set-out"],
        ["Findings (JSON)", "findings.json", "prove"],
        ["Cut plan (JSON)", "cut.json", "cut"],
        ["Quantities and order (JSON)", "takeoff.json", "takeoff"],
      ] as const) {
        const [download] = await Promise.all([
          page.waitForEvent("download"),
          page.getByRole("button", { name: press }).click(),
        ]);
        expect(download.suggestedFilename()).toBe(file);
        const value: unknown = JSON.parse(readFileSync(await download.path(), "utf8"));
        expect(SHAPES[shape]?.safeParse(value)).toMatchObject({ success: true });
      }
      expect(complaints).toEqual([]);
      await close();
    });
  });
});

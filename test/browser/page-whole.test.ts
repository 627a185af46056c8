/** The main job from an empty sheet: two faces, three openings, two claddings, nothing that fails; the file and a drawing in hand. */
import { readFileSync } from "node:fs";
import type { Download, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { designFile } from "../../src/design.ts";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { DRAWN, serveExample } from "./page-harness.ts";

const picked = (page: Page): Promise<string | null> => page.locator(".facts h2").textContent();
const history = (page: Page): Promise<string | null> => page.locator(".field-history").textContent();

async function type(page: Page, label: string, value: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(value);
  await field.press("Enter");
}

/** By keys: where the face that is picked has room. */
async function add(page: Page, kind: string, id: string): Promise<void> {
  await page.getByRole("button", { name: `Add: ${kind}` }).press("Enter");
  await page.keyboard.press("Enter");
  await expect.poll(() => picked(page)).toBe(id);
}

async function pickItem(page: Page, name: string): Promise<void> {
  await page.getByRole("treeitem").filter({ hasText: name }).first().click();
}

async function pressed(page: Page, name: string): Promise<Download> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name }).click(),
  ]);
  return download;
}

describeInBrowser("the main job from an empty sheet", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("nothing-of-this-name");
  });
  afterAll(() => serving.close());

  it("ends with a facade that nothing fails on, its file and its drawings", async () => {
    const context = await browser().newContext({ viewport: { width: 1680, height: 1050 } });
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on("pageerror", ({ message }) => complaints.push(message));
    await page.goto(serving.url);
    await type(page, "width", "5400");
    await type(page, "height", "2600");
    await page.getByRole("button", { name: "Start a wall" }).click();
    await page.locator(DRAWN).first().waitFor();

    await add(page, "window", "W1");
    await type(page, "from the left end", "900");
    await expect.poll(() => history(page)).toContain("Place W1");
    await page.getByRole("button", { name: "Items" }).click();
    await pickItem(page, "Front");
    await expect.poll(() => picked(page)).toBe("Front");
    await add(page, "door", "D1");

    await pickItem(page, "Front");
    await expect.poll(() => picked(page)).toBe("Front");
    await page.getByRole("button", { name: "Add it at the right end" }).click();
    await expect.poll(() => picked(page)).toBe("Face1");
    await add(page, "window", "W2");

    const face = page.getByRole("treeitem").filter({ hasText: "Face1" }).first();
    if ((await face.getAttribute("aria-expanded")) !== "true") await face.click();
    await page.getByRole("treeitem").filter({ hasText: "zone" }).last().click();
    await page.getByLabel("cladding", { exact: true }).selectOption("boards");
    await expect.poll(() => history(page)).toContain("boards");
    await page.getByLabel("build-up", { exact: true }).selectOption("wall-boards");
    await expect.poll(() => history(page)).toContain("wall-boards");

    const saved = readFileSync(await (await pressed(page, "Save a copy")).path(), "utf8");
    const made = designFile({ name: "wall.outerleaf.json", text: saved });
    if (made.kind !== "designed") throw new Error(JSON.stringify(made.findings));
    const { facade, project, findings } = made.design;
    expect(facade.faces.map(({ openings }) => openings.length)).toEqual([2, 1]);
    expect(facade.faces.flatMap(({ zones }) => zones.map(({ cladding }) => cladding))).toEqual([
      "sheets",
      "boards",
    ]);
    expect(project.claddings.map(({ kind }) => kind)).toEqual(["sheets", "boards"]);
    expect(findings.filter(({ outcome }) => outcome === "fail")).toEqual([]);
    const all = made.readFindings.length + findings.length;
    await expect.poll(() => page.locator(".count").getAttribute("data-count")).toBe(String(all));
    expect(await page.locator(".note .outcome-fail").count()).toBe(0);

    await page.locator(".margin").getByRole("button", { name: "Sheets" }).click();
    await page.locator(".sheet-ways").waitFor();
    const drawing = readFileSync(await (await pressed(page, "Save this sheet as SVG")).path(), "utf8");
    expect(drawing).toContain("<svg");
    expect(drawing).toContain("W1");
    expect(complaints).toEqual([]);
    await context.close();
  });
});

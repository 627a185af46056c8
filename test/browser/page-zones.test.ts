/** Zones and joints edited on the sheet: a junction dragged, a zone parted and merged, a joint pinned, forbidden, freed. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import type { Serving } from "../../src/server/serve.ts";
import { setOut } from "../../src/setout/set-out.ts";
import { jointId } from "../../src/web/picks/joint-id.ts";
import { exampleSource } from "../helpers/editing.ts";
import { describeInBrowser } from "./browser.ts";
import { drawn, openPage, restingBox, serveExample, soon } from "./page-harness.ts";

const picked = (page: Page): Promise<string | null> => page.locator(".facts h2").textContent();
const history = (page: Page): Promise<string | null> => page.locator(".field-history").textContent();
const place = (page: Page, label: string): Promise<string> =>
  page.getByLabel(label, { exact: true }).inputValue();

/** The front face near, and where x = 0, y = 0 of it stands on the screen, from D1: 3611.5 to 5998.5 along it. */
async function frontFace(page: Page): Promise<(x: number, y: number) => readonly [number, number]> {
  await page.getByRole("button", { name: "Front", exact: true }).click();
  const box = await restingBox(page, drawn("D1"));
  const k = box.width / 2387;
  return (x, y) => [box.x + (x - 3611.5) * k, box.y + box.height - y * k];
}

/** A sheet of the front is picked, then the zone that it lies in. */
async function pickSheets(page: Page): Promise<(x: number, y: number) => readonly [number, number]> {
  const at = await frontFace(page);
  await page.mouse.click(...at(6600, 1500));
  await soon(() => picked(page)).toMatch(/^F2-S/);
  await page.getByRole("button", { name: "zone sheets" }).click();
  await soon(() => picked(page)).toBe("sheets");
  return at;
}

/** The first upright joint between sheets of the front: its name, its middle, and a height at which it stands. */
function uprightJoint(): { id: string; x: number; y: number } {
  const { project } = exampleSource("atelier-bouleau");
  const front = setOut(project, demandsOf(project)).faces.find(({ id }) => id === "front");
  const index = front?.joints.findIndex(({ kind, along }) => kind === "sheet joint" && along === "y") ?? -1;
  const joint = front?.joints[index];
  if (!front || !joint) throw new Error("the front has no upright joint");
  const { x, y } = polygonBounds(joint.region);
  return { id: jointId(front, index), x: (x[0] + x[1]) / 2, y: (y[0] + y[1]) / 2 };
}

describeInBrowser("zones and joints on the sheet", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());

  it("a junction is dragged with both its zones, and typed", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    const at = await pickSheets(page);
    await soon(() => place(page, "left side")).toBe("2410");
    await page.mouse.move(...at(2410, 1500));
    await page.mouse.down();
    await page.mouse.move(...at(2600, 1500), { steps: 6 });
    await page.mouse.up();
    await soon(() => place(page, "left side")).toBe("2600");
    await soon(() => history(page)).toContain("Move a side of zone sheets of front");
    const left = page.getByLabel("left side", { exact: true });
    await left.fill("2440");
    await left.press("Enter");
    await soon(() => place(page, "left side")).toBe("2440");
    await page.keyboard.press("Tab");
    expect(complaints).toEqual([]);
    await close();
  });

  it("a zone is parted at a typed line, clad otherwise, and merged again", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    await pickSheets(page);
    const line = page.getByLabel("from the left end", { exact: true });
    await line.fill("6100");
    await line.press("Enter");
    await page.getByRole("button", { name: "Part it there" }).click();
    await soon(() => picked(page)).toBe("sheets-2");
    await soon(() => place(page, "left side")).toBe("6108");
    await page.getByLabel("build-up").selectOption("bare-sheets");
    await soon(() => history(page)).toContain("bare-sheets");
    await page.getByRole("button", { name: "Merge into its neighbour" }).click();
    await soon(() => history(page)).toContain("Merge zone sheets-2");
    await soon(() => page.locator(drawn("front/sheets-2")).count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });

  it("a joint is dragged as a pin, freed, and kept out of its band", async () => {
    const { page, complaints, close } = await openPage(browser(), serving);
    const at = await frontFace(page);
    const joint = uprightJoint();
    const [x, y] = at(joint.x, joint.y);
    await page.getByRole("button", { name: "Items" }).click();
    const items = page.getByRole("treeitem");
    await items.filter({ hasText: "Front" }).click();
    await items.filter({ hasText: "zone sheets" }).last().click();
    await page.locator(`[data-key="joint/front/${joint.id}"]`).click();
    await soon(() => picked(page)).toContain("sheet joint");
    const middle = async (): Promise<number> => Number(await place(page, "middle from the left end"));
    await soon(middle).toBe(joint.x);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 40, y, { steps: 6 });
    await page.mouse.up();
    await soon(() => history(page)).toContain("Pin: upright joint");
    await soon(middle).toBeGreaterThan(joint.x + 20);
    await page.locator(".drawing-host").focus();
    await page.keyboard.press("Delete");
    await soon(() => history(page)).toContain("Free: upright joint");
    await page.getByRole("button", { name: "No joint here" }).click();
    await soon(() => history(page)).toContain("No joint from");
    await page.getByRole("button", { name: "zone sheets" }).click();
    await page.getByRole("button", { name: "Allow them" }).click();
    await soon(() => history(page)).toContain("Joints again from");
    await soon(() => page.getByRole("button", { name: "Allow them" }).count()).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });
});

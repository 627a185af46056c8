/** The axonometric view: asked for, peeled, pressed, lit, and left again; and said where it cannot be had. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Serving } from "../../src/server/serve.ts";
import { describeInBrowser } from "./browser.ts";
import { drawn, openPage, restingBox, serveExample, soon, violations } from "./page-harness.ts";

interface Seen {
  /** Shares of the picture: drawn at all, in pencil red, and as dark as the membrane and the cavity. */
  readonly drawn: number;
  readonly red: number;
  readonly dark: number;
}

const look = (page: Page): Promise<Seen> =>
  page.locator(".solid-host canvas").evaluate((found) => {
    const picture = found as HTMLCanvasElement;
    const copy = Object.assign(document.createElement("canvas"), {
      width: picture.width,
      height: picture.height,
    });
    const pen = copy.getContext("2d");
    if (!pen || picture.width === 0) return { drawn: 0, red: 0, dark: 0 };
    pen.drawImage(picture, 0, 0);
    const { data } = pen.getImageData(0, 0, copy.width, copy.height);
    let [drawn, red, dark] = [0, 0, 0];
    for (let i = 0; i < data.length; i += 4) {
      const [r = 0, g = 0, b = 0, a = 0] = data.subarray(i, i + 4);
      if (a > 128) drawn++;
      if (a > 128 && r > 150 && g < 110 && b < 90) red++;
      if (a > 128 && r < 40 && g < 45 && b < 55) dark++;
    }
    const all = data.length / 4;
    return { drawn: drawn / all, red: red / all, dark: dark / all };
  });

const press = (page: Page, name: string): Promise<void> =>
  page.getByRole("button", { name, exact: true }).click();

describeInBrowser("the axonometric view", (browser) => {
  let serving: Serving;
  beforeAll(async () => {
    serving = await serveExample("atelier-bouleau");
  });
  afterAll(() => serving.close());

  it("is loaded when asked for, drawn, peeled, pressed and left again", async () => {
    const { page, complaints, close } = await openPage(browser(), serving, { reducedMotion: "reduce" });
    const asked: string[] = [];
    page.on("request", (request) => asked.push(request.url()));
    // What the page loads by itself is here once it has nothing more to ask for.
    await page.waitForLoadState("networkidle");
    expect(asked.filter((url) => url.includes("SolidView"))).toEqual([]);
    await press(page, "Axonometric");
    await soon(async () => (await look(page)).drawn).toBeGreaterThan(0.1);
    await soon(() => asked.some((url) => url.includes("SolidView"))).toBe(true);
    await soon(() => page.evaluate(() => document.activeElement?.className)).toContain("solid-host");

    const clad = await look(page);
    expect(clad.red).toBe(0);
    await press(page, "cladding");
    await soon(async () => (await look(page)).dark).toBeGreaterThan(clad.dark * 2);
    await press(page, "cladding");
    await soon(async () => (await look(page)).dark).toBeLessThan(clad.dark * 1.01);

    const box = await restingBox(page, ".solid-host");
    await page.mouse.click(box.x + box.width * 0.5, box.y + box.height * 0.5);
    const name = page.locator(".facts h2");
    await soon(() => name.textContent()).not.toBe("W2");
    await soon(async () => (await look(page)).red).toBeGreaterThan(0);
    expect(await violations(page)).toEqual([]);
    await page.locator(".solid-host").focus();
    await page.keyboard.press("Escape");
    await soon(async () => (await look(page)).red).toBe(0);

    await press(page, "Developed");
    await soon(() => page.locator(".solid-host").count()).toBe(0);
    await soon(() => page.locator(drawn("W2")).first().isVisible()).toBe(true);
    await soon(() => page.evaluate(() => document.activeElement?.className)).toContain("drawing-host");
    // Software graphics tell that reading the picture back is slow.
    expect(complaints.filter((one) => !one.includes("ReadPixels"))).toEqual([]);
    await close();
  });

  it("turns with keys, comes to what a finding is about, and says when the sun is down or a day is none", async () => {
    const { page, close } = await openPage(browser(), serving, { reducedMotion: "reduce" });
    await press(page, "Axonometric");
    await soon(async () => (await look(page)).drawn).toBeGreaterThan(0.1);
    const picture = (): Promise<string> =>
      page.locator(".solid-host canvas").evaluate((found) => (found as HTMLCanvasElement).toDataURL());
    const first = await picture();
    await page.keyboard.press("ArrowRight");
    await soon(async () => (await picture()) !== first).toBe(true);
    await page.keyboard.press("0");
    await soon(picture).toBe(first);
    await page.locator(".note-press").first().click();
    await soon(async () => (await look(page)).red).toBeGreaterThan(0);
    await soon(async () => (await picture()) !== first).toBe(true);

    const said = page.locator(".sun-controls p");
    const hour = page.locator(".sun-field input").nth(2);
    await hour.fill("0");
    await soon(() => said.textContent()).toBe("June 21: the sun is below the horizon");
    await hour.fill("12");
    await soon(() => said.textContent()).toMatch(/^June 21: sun 6\d° high, 1[78]\d° from north$/);
    const day = page.locator(".sun-field input").first();
    await day.fill("400");
    await soon(() => page.locator(".sun-field .wrong").textContent()).toBe(
      "Day “400”: type a whole number from 1 to 365.",
    );
    await soon(() => day.getAttribute("aria-invalid")).toBe("true");
    await soon(() => said.textContent()).toContain("June 21");
    await close();
  });

  it("says so in words where the browser gives no WebGL", async () => {
    const { page, close } = await openPage(browser(), serving);
    await page.evaluate(() => {
      HTMLCanvasElement.prototype.getContext = () => null;
    });
    await press(page, "Axonometric");
    await soon(() => page.locator(".solid-host").textContent()).toContain("needs WebGL");
    await press(page, "Developed");
    await soon(() => page.locator(".solid-host").count()).toBe(0);
    await close();
  });
});

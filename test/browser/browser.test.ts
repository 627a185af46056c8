import { expect, it } from "vitest";
import { describeInBrowser } from "./browser.ts";

describeInBrowser("the browser the tests use", (browser) => {
  it("runs scripts and lays a page out", async () => {
    const page = await browser().newPage({ viewport: { width: 800, height: 600 } });
    await page.setContent('<div style="width: 50vw">a board</div>');
    expect(await page.locator("div").evaluate((div) => div.getBoundingClientRect().width)).toBe(400);
    await page.close();
  });
});

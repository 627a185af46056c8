/** The site pages on a phone: without a network, closed and opened again; what was told arrives once. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { BrowserContext, Page } from "playwright-core";
import { afterEach, beforeEach, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { labelCode } from "../../src/output/drawings/labels.ts";
import { ownCertificate } from "../../src/server/certificate.ts";
import { diskFiles } from "../../src/server/files.ts";
import { serveLan } from "../../src/server/lan.ts";
import { invitationLink, invitationSecret, newPersonId } from "../../src/server/secrets.ts";
import type { Serving } from "../../src/server/serve.ts";
import type { Facade } from "../../src/setout/facade.ts";
import type { Entry } from "../../src/site/journal/entry.ts";
import type { Store } from "../../src/store/store.ts";
import { changesSince, issueState } from "../../src/takeoff/issue-state.ts";
import { example } from "../contract/cut-facade-examples.ts";
import { checkout } from "../helpers/cli.ts";
import { sourceOf } from "../helpers/editing.ts";
import { hasPdftotext, readLabels } from "../helpers/label-sheets.ts";
import { PNG } from "../helpers/pictures.ts";
import { describeWithStore, type StoreFolder, storeFolder } from "../helpers/store.ts";
import { describeInBrowser, killPhone, openPhone } from "./browser.ts";
import { exampleFile, serveExample, soon, violations } from "./page-harness.ts";

const READINGS = 15;

function pieceOf({ faces }: Facade, mark: string): Facade["faces"][number]["pieces"][number] {
  const found = faces.flatMap(({ pieces }) => pieces).find((one) => one.mark === mark);
  if (!found) throw new Error(`no piece ${mark}`);
  return found;
}

/** Of a label's points, measured from its upper left corner: the tip of its arrow, then both ends of the barb. */
function arrowOf(points: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  const near = points.filter(([x]) => x < 6).sort(([, a], [, b]) => a - b);
  const [tip] = near;
  const wide = near.filter(([x]) => tip && Math.abs(Math.abs(x - tip[0]) - 1.6) < 0.05);
  return tip ? [tip, ...wide.slice(0, 2)] : [];
}

/** A small phone, in CSS pixels. */
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

/** What shuts people out, targets too small for a glove, and what reaches past the screen. */
async function faultsOf(page: Page): Promise<string[]> {
  const small = await page.evaluate(() =>
    [...document.querySelectorAll("a, button, input:not([type=checkbox]), select, textarea, label.check")]
      .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 48)
      .map(({ outerHTML }) => `small: ${outerHTML.slice(0, 80)}`),
  );
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  return [...(await violations(page)), ...small, ...(wide > PHONE.viewport.width ? [`wide: ${wide}`] : [])];
}

describeInBrowser("the site pages", (browser) => {
  describeWithStore("of a phone", () => {
    let place: StoreFolder;
    let store: Store;
    let serving: Serving;
    let profile: string;
    /** Under which the served project's journal is kept. */
    let project: string;
    let phone: BrowserContext;
    beforeEach(async () => {
      place = storeFolder();
      store = await place.open();
      serving = await serveExample("atelier-bouleau", { store });
      profile = mkdtempSync(join(tmpdir(), "outerleaf-phone-"));
      phone = await openPhone(profile, PHONE);
      const answer = await fetch(`${serving.url}api/design`, { method: "HEAD" });
      project = answer.headers.get("outerleaf-kept-as") ?? "";
    });
    afterEach(async () => {
      await phone.close();
      await serving.close();
      place.clear();
      rmSync(profile, { recursive: true, force: true });
    });

    const open = async (fragment = ""): Promise<Page> => {
      const page = phone.pages()[0] ?? (await phone.newPage());
      await page.goto(`${serving.url}site.html${fragment}`);
      await page.locator(".site-main h2").first().waitFor();
      return page;
    };
    const chip = (page: Page) => page.locator(".site-head a").textContent();
    const told = async (): Promise<readonly Entry[]> => {
      const { entries } = await store.journal.after(project, { after: 0, limit: 1000 });
      return entries.map(({ entry }) => entry as Entry);
    };
    const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();
    it("keep ticks without a network and through a closed browser, and send each once, in order", async () => {
      const page = await open();
      await soon(() => chip(page)).toBe("✓ all sent");
      expect(await faultsOf(page)).toEqual([]);
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
      await page.getByLabel("Mark on the label").fill("s1a");
      await press(page, "Open");
      const mark = (await page.locator(".mark").textContent()) ?? "";
      await press(page, "Cut");
      await soon(async () => (await told()).length).toBe(1);
      await soon(() => chip(page)).toBe("✓ all sent");
      expect(await faultsOf(page)).toEqual([]);

      // The workbench is out of reach altogether: a browser that is told to be offline is let back as it is closed.
      const port = Number(new URL(serving.url).port);
      await serving.close();
      await page.reload();
      await soon(() => page.locator(".mark").textContent()).toBe(mark);
      await press(page, "Finished");
      await press(page, "Delivered");
      await press(page, "Take back: delivered");
      await soon(() => chip(page)).toBe("3 wait");
      await phone.close();

      phone = await openPhone(profile, PHONE);
      const again = await open(`#piece/${mark}`);
      await soon(() => chip(again)).toBe("3 wait");
      await soon(() => again.locator("button[aria-pressed=true]").allTextContents()).toEqual([
        "Cut✓",
        "Finished✓",
      ]);
      await again.getByRole("link", { name: "Queue" }).click();
      await soon(() => again.locator(".queue li").allTextContents()).toEqual([
        `${mark}: Finished`,
        `${mark}: Delivered`,
        `${mark}: taken back`,
      ]);
      expect(await faultsOf(again)).toEqual([]);
      expect(await told()).toHaveLength(1);

      // The first answer is lost on its way: the phone must send again, and the server must know it.
      let lost = 0;
      await phone.route("**/journal", async (route) => {
        if (route.request().method() !== "POST" || lost > 0) return route.continue();
        lost += 1;
        await route.fetch();
        return route.abort();
      });
      serving = await serveExample("atelier-bouleau", { store, port });
      await press(again, "Try now");
      await soon(() => chip(again)).toBe("✓ all sent");
      expect(lost).toBe(1);
      const entries = await told();
      expect(
        entries.map(({ kind, body }) => (kind === "piece" ? (body as { stage: string }).stage : kind)),
      ).toEqual(["cut", "finished", "delivered", "undone"]);
      expect(new Set(entries.map(({ id }) => id.split("-")[0])).size).toBe(1);
    });

    it("measure without a network and through a killed browser: the desk lays the face again from what they told, and new labels find what moved", async () => {
      const page = await open("#survey/west");
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
      await soon(() => chip(page)).toBe("✓ all sent");
      const port = Number(new URL(serving.url).port);
      await serving.close();
      await page.reload();
      await page.locator(".site-main h2").first().waitFor();
      const crossing = page.locator(".site-main [role=status]");
      for (let i = 1; i <= READINGS; i++) {
        await soon(() => crossing.first().textContent()).toMatch(new RegExp(`\\b${i}\\b`));
        await page.getByLabel("Reading", { exact: true }).fill(String(i % 4));
        await press(page, "Keep, and the next");
      }
      await soon(() => chip(page)).toBe(`${READINGS} wait`);
      await page.goto(`${page.url().split("#")[0]}#openings/west`);
      await page.getByLabel("Left jamb").fill("2094");
      await page.getByLabel("Width").fill("606");
      await page.getByLabel("Sill").fill("1500");
      await page.getByLabel("Height").fill("600");
      expect(await faultsOf(page)).toEqual([]);
      await press(page, "Keep W3");
      await soon(() => chip(page)).toBe(`${READINGS + 1} wait`);
      await killPhone(profile, phone);

      phone = await openPhone(profile, PHONE);
      serving = await serveExample("atelier-bouleau", { store, port });
      const again = await open("#queue");
      await soon(() => chip(again)).toBe("✓ all sent");
      const entries = await told();
      expect(entries.filter(({ kind }) => kind === "reading")).toHaveLength(READINGS);
      expect(entries.at(-1)).toMatchObject({ kind: "opening", body: { left: 2094, width: 606 } });
      expect(new Set(entries.map(({ id }) => id)).size).toBe(READINGS + 1);

      const desk = await phone.newPage();
      await desk.setViewportSize({ width: 1400, height: 900 });
      await desk.goto(serving.url);
      await desk.getByRole("button", { name: "Survey", exact: true }).click();
      await desk.locator(".survey-faces").getByRole("button", { name: "West" }).click();
      // Two maps: openings as measured, and the packing at the crossings that were read.
      await soon(() => desk.locator(".survey-map svg").count()).toBe(2);
      await desk.getByText("was read from phones").waitFor();
      await desk.getByRole("button", { name: "Lay it so: 5 pieces" }).click();
      await desk.getByText("Nothing has to move.").waitFor();

      await soon(async () => (await store.project(project))?.latest.number ?? 0).toBeGreaterThan(1);
      const { number = 0 } = (await store.project(project))?.latest ?? {};
      const kept = await store.revision(project, number);
      const before = design(example("atelier-bouleau").project).facade;
      const after = design(sourceOf(kept?.document).project).facade;
      const { changed, gone } = changesSince(issueState(before), after);
      const labelled = changed.filter((mark) => pieceOf(after, mark).kind === "board");
      expect(labelled).toHaveLength(5);
      expect(gone.filter((mark) => pieceOf(before, mark).kind === "board")).toEqual([]);
      const code = (facade: Facade, mark: string): string =>
        labelCode(pieceOf(facade, mark), { revision: "A", siteAddress: serving.url });
      const [mark = ""] = labelled;
      await again.goto(code(after, mark));
      await again.reload();
      await soon(() => again.locator(".mark").textContent()).toBe(mark);
      const isOld = again.getByText(/changed after its label was printed/);
      // The label that was printed before tells that its piece is another now, once the phone has what the desk laid.
      await again.goto(code(before, mark));
      await isOld.waitFor();
      await again.goto(code(after, mark));
      await isOld.waitFor({ state: "detached" });
      expect((await told()).length).toBe(READINGS + 1);
      if (!hasPdftotext) return;
      // The paper itself, read by another program: what it says of each piece that moved is what stands in the model now.
      const { labels, lines } = await readLabels(sourceOf(kept?.document).project);
      for (const name of labelled) {
        const own = labels.filter(({ text }) => text.split(" ").includes(name));
        expect(own).toHaveLength(1);
        const [{ text = "", points = [] } = {}] = own;
        const { outline } = pieceOf(after, name);
        const { x, y } = polygonBounds(outline);
        const line = lines.find((one) => one.mark === name);
        // West's boards run level: as long as they reach along the wall, as wide as they stand on it.
        const printed = /([\d.]+) long, ([\d.]+) × ([\d.]+) board/.exec(text)?.slice(1).map(Number) ?? [];
        const stands = [x[1] - x[0], y[1] - y[0], line?.thickness ?? 0];
        // Paper gives half a millimetre at most.
        expect(printed.map((mm, i) => Math.abs(mm - (stands[i] ?? 0)) <= 0.5)).toEqual([true, true, true]);
        expect(text).toMatch(/\bof west, \d+\.\d kg\b/);
        expect(line?.lot).toBeDefined();
        expect(text).toContain(`lot ${line?.lot}`);
        expect(text).toContain("outer face, arrow up");
        // The arrow left of the mark: its head above both ends of its barb, and over the foot of its shaft.
        const [tip, ...barb] = arrowOf(points);
        expect(barb.map(([, down]) => down > (tip?.[1] ?? Number.POSITIVE_INFINITY))).toEqual([true, true]);
      }
    });

    it("sign a hold point with each thing seen, a picture and a name; a label of an older piece is told", async () => {
      const page = await open("#holds");
      expect(await faultsOf(page)).toEqual([]);
      await page.getByRole("link", { name: /H1/ }).first().click();
      const sign = page.getByRole("button", { name: "Sign", exact: true });
      await page.getByLabel("Name of who looked").fill("Ada");
      for (const box of await page.getByRole("checkbox").all()) await box.check();
      expect(await sign.isDisabled()).toBe(true);
      await page
        .getByLabel("Take a photograph")
        .first()
        .setInputFiles({ name: "lap.png", mimeType: "image/png", buffer: Buffer.from(PNG) });
      await page.locator(".photos img").waitFor();
      expect(await faultsOf(page)).toEqual([]);
      await sign.click();
      await soon(async () => (await told()).length).toBe(1);
      const [entry] = await told();
      expect(entry).toMatchObject({ kind: "hold-point", body: { point: "H1", signed: "Ada" } });
      const [sha256 = ""] = (entry as Extract<Entry, { kind: "hold-point" }>).body.photos;
      expect(await store.attachments.get(sha256)).toMatchObject({ type: "image/jpeg" });
      await page.getByText(/signed by Ada/).waitFor();

      const face = entry?.place.face ?? "";
      await page.goto(`${serving.url}site.html#survey/${face}`);
      await page.getByLabel("Reading").fill("-3");
      await press(page, "Keep, and the next");
      await soon(async () => (await told()).at(-1)).toMatchObject({ kind: "reading", body: { outward: -3 } });
      expect(await faultsOf(page)).toEqual([]);
      await page.getByRole("link", { name: "Day" }).click();
      await page.getByText("✓ done").first().waitFor();
      // The demo's file gives its front and west to one crew, east and north to the other, and the recess to none.
      const heads = await page.locator(".site-main section > h3").allTextContents();
      expect(heads.slice(0, 3)).toEqual(["crew A", "crew B", "No crew given"]);
      const lifts = await page
        .locator(".site-main section", { hasText: "crew A" })
        .locator("h4")
        .allTextContents();
      expect(lifts.slice(0, 3)).toEqual(["Over the whole height", "Lift 1", "Lift 2"]);
      expect(await faultsOf(page)).toEqual([]);
      const marks = await page.locator("details a").allTextContents();
      await page.goto(`${serving.url}site.html#piece/${marks[0]}/A/other`);
      await page.getByText(/changed after its label was printed/).waitFor();
    });
  });

  describeWithStore("of a person who was invited", () => {
    it("open once with the invitation, whose secret leaves the address at once", async () => {
      const place = storeFolder();
      const store = await place.open();
      const hosts = ["localhost"];
      const certificate = ownCertificate({ folder: place.folder, hosts, now: new Date() });
      const paths = {
        projectFile: exampleFile("porch"),
        documentsDir: place.folder,
        webDir: `${checkout}dist/web`,
      };
      const lan = await serveLan({ files: diskFiles, ...paths, store, certificate, hosts, port: 0 });
      const context = await browser().newContext({ ...PHONE, ignoreHTTPSErrors: true });
      try {
        const secret = invitationSecret(new Date());
        const wanted = { id: newPersonId(), name: "Ben", role: "reader", ...secret.lease } as const;
        await store.people.invite(wanted, { time: new Date().toISOString() });
        const address = `https://localhost:${lan?.port}`;
        const page = await context.newPage();
        await page.goto(invitationLink(address, secret));
        const go = page.getByRole("button");
        await soon(() => go.isEnabled()).toBe(true);
        expect(page.url()).toBe(`${address}/join`);
        for (const colorScheme of ["light", "dark"] as const) {
          await page.emulateMedia({ colorScheme });
          expect(await faultsOf(page)).toEqual([]);
        }
        await go.click();
        await soon(() => page.url()).not.toContain("/join");
        const me = await page.evaluate(async () => (await fetch("/api/me")).json());
        expect(me).toEqual({ signedIn: true, name: "Ben", role: "reader" });
        // The same link a second time, as from a message that went on.
        const other = await context.newPage();
        await other.goto(invitationLink(address, secret));
        await other.getByRole("button").click();
        await soon(() => other.getByRole("status").textContent()).not.toBe("");
        expect(other.url()).toBe(`${address}/join`);
        expect((await store.people.list({ time: new Date().toISOString() }))[0]?.sessions).toBe(1);
      } finally {
        await context.close();
        await lan?.close();
        place.clear();
      }
    });
  });
});

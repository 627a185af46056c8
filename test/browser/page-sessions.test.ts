/** Devices that are signed in, on the page: each person sees their own and ends another, the office ends any one. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { sha256 } from "../../src/server/answers.ts";
import { ownCertificate } from "../../src/server/certificate.ts";
import { diskFiles } from "../../src/server/files.ts";
import { type LanServing, serveLan } from "../../src/server/lan.ts";
import {
  invitationLink,
  invitationSecret,
  newPersonId,
  newSessionId,
  sessionSecret,
} from "../../src/server/secrets.ts";
import type { Serving } from "../../src/server/serve.ts";
import type { Store } from "../../src/store/store.ts";
import { checkout } from "../helpers/cli.ts";
import { describeWithStore, type StoreFolder, storeFolder } from "../helpers/store.ts";
import { describeInBrowser } from "./browser.ts";
import { exampleFile, openPage, serveExample, soon, violations, whole } from "./page-harness.ts";

const DEVICES = ".kept-devices li";

/** An invitation for Ben. */
async function invited(store: Store) {
  const secret = invitationSecret(new Date());
  const wanted = { id: newPersonId(), name: "Ben", role: "reader", ...secret.lease } as const;
  const person = await store.people.invite(wanted, { time: new Date().toISOString() });
  return { secret, id: person?.id ?? "" };
}

/** Signs Ben in on another device, without its page. */
async function another(store: Store, device: string): Promise<void> {
  const { secret } = await invited(store);
  const session = { ...sessionSecret(new Date()).lease, id: newSessionId(), device };
  await store.people.redeem(sha256(secret.text), session, { time: new Date().toISOString() });
}

async function devicesOf(store: Store, id: string): Promise<readonly string[]> {
  const sessions = await store.sessions.of(id, { time: new Date().toISOString() });
  return sessions.map(({ device }) => device).sort();
}

async function end(page: Page, device: string): Promise<void> {
  await page.getByRole("button", { name: `End the session of ${device} …` }).click();
  await page.getByRole("button", { name: `End now the session of ${device}` }).click();
  await soon(() => page.locator(DEVICES, { hasText: device }).count()).toBe(0);
}

describeInBrowser("devices that are signed in", (browser) => {
  describeWithStore("by the server's database", () => {
    let place: StoreFolder;
    let store: Store;
    let serving: Serving;
    let lan: LanServing | undefined;
    beforeAll(async () => {
      place = storeFolder();
      store = await place.open();
      serving = await serveExample("porch", { store });
      const hosts = ["localhost"];
      const certificate = ownCertificate({ folder: place.folder, hosts, now: new Date() });
      const paths = {
        projectFile: exampleFile("porch"),
        documentsDir: place.folder,
        webDir: `${checkout}dist/web`,
      };
      lan = await serveLan({ files: diskFiles, ...paths, store, certificate, hosts, port: 0 });
    });
    afterAll(async () => {
      await lan?.close();
      await serving.close();
      place.clear();
    });

    it("are ended one by one: by their own person from a phone, and by the office", async () => {
      const context = await browser().newContext({
        viewport: { width: 390, height: 844 },
        ignoreHTTPSErrors: true,
      });
      try {
        const { secret, id } = await invited(store);
        await another(store, "tablet in the shed");
        const phone = await context.newPage();
        await phone.goto(invitationLink(`https://localhost:${lan?.port}`, secret));
        await phone.getByLabel("Name of this device").fill("phone in the van");
        expect(await violations(phone)).toEqual([]);
        await phone.getByRole("button").click();
        await whole(phone);
        expect(await devicesOf(store, id)).toEqual(["phone in the van", "tablet in the shed"]);
        await phone.getByRole("button", { name: "Revisions …" }).click();
        await phone.getByText("Your devices").click();
        await phone.locator(DEVICES, { hasText: "phone in the van · this one" }).waitFor();
        expect(await phone.locator(DEVICES).getByRole("button").count()).toBe(1);
        expect(await violations(phone)).toEqual([]);
        await end(phone, "tablet in the shed");
        expect(await devicesOf(store, id)).toEqual(["phone in the van"]);

        await another(store, "");
        const { page, complaints, close } = await openPage(browser(), serving);
        await page.getByRole("button", { name: "Revisions …" }).click();
        // Whoever sits at the machine is on no device that signed in.
        await page.getByText("People and their roles").click();
        expect(await page.getByText("Your devices").count()).toBe(0);
        await page.getByText("2 devices signed in").waitFor();
        await page.getByLabel("Which devices of Ben").click();
        await soon(() => page.locator(DEVICES).count()).toBe(2);
        expect(await violations(page)).toEqual([]);
        await end(page, "phone in the van");
        await page.getByText("1 device signed in").waitFor();
        expect(await devicesOf(store, id)).toEqual([""]);
        expect(await phone.evaluate(async () => (await fetch("/api/projects")).status)).toBe(401);
        // One that somebody else has ended meanwhile is told, and is gone from the list.
        const [last] = await store.sessions.of(id, { time: new Date().toISOString() });
        await store.sessions.end({ person: id, id: last?.id ?? "" }, { time: new Date().toISOString() });
        await end(page, "a device without a name");
        await page.getByRole("alert").getByText("There is no such device signed in").waitFor();
        expect(complaints.filter((one) => !one.includes("404"))).toEqual([]);
        await close();
      } finally {
        await context.close();
      }
    });
  });
});

/** Signing in, roles, and shutting out, as phones meet them. */
import { afterEach, beforeEach, expect, it } from "vitest";
import { COOKIE } from "../../src/server/access/door.ts";
import { type Guarded, guardedServer, OUTSIDE } from "../helpers/guarded.ts";
import { told } from "../helpers/journal.ts";
import { PNG } from "../helpers/pictures.ts";
import { describeWithStore, ID } from "../helpers/store.ts";

let server: Guarded;
beforeEach(async () => {
  server = await guardedServer();
});
afterEach(() => server.place.clear());

const DAY = 86_400_000;
const codeOf = async (answer: Response): Promise<readonly [number, string]> => [
  answer.status,
  ((await answer.json()) as { error: { code: string } }).error.code,
];
const me = (cookie: string) => server.ask({ path: "/api/me", cookie });
const signInWith = (secret: string) => server.ask({ method: "POST", path: "/api/sign-in", body: { secret } });

describeWithStore("an invitation", () => {
  it("is made by the office, holds its secret behind the #, and lets in once", async () => {
    const office = await server.signIn("Ada", "office");
    const body = { name: "Ben", role: "site" };
    const made = await server.ask({ method: "POST", path: "/api/people", cookie: office, body });
    expect(made.status).toBe(201);
    expect(made.headers.get("cache-control")).toBe("no-store");
    const { link } = (await made.json()) as { link: string };
    const { hash, search, pathname, origin } = new URL(link);
    expect([origin, pathname, search]).toEqual([OUTSIDE, "/join", ""]);
    const first = await signInWith(hash.slice(1));
    expect(await first.json()).toEqual({ signedIn: true, name: "Ben", role: "site" });
    expect(await codeOf(await signInWith(hash.slice(1)))).toEqual([403, "bad-invitation"]);
  });

  it("gives a cookie that no script reads and no other site sends", async () => {
    const answer = await signInWith(await server.invite("Ben", "site"));
    const [pair = "", ...marks] = (answer.headers.get("set-cookie") ?? "").split("; ");
    expect(pair).toMatch(new RegExp(`^${COOKIE}=[A-Za-z0-9_-]{43}$`));
    expect(marks.sort()).toEqual([
      "HttpOnly",
      `Max-Age=${90 * 86_400}`,
      "Path=/",
      "SameSite=Strict",
      "Secure",
    ]);
  });

  it("is too old after seven days, and a session after ninety", async () => {
    const late = await server.invite("Ben", "site");
    const held = await server.invite("Cleo", "site");
    server.wait(7 * DAY - 1000);
    const cookie = /=([^;]+);/.exec((await signInWith(held)).headers.get("set-cookie") ?? "")?.[1] ?? "";
    server.wait(2000);
    expect(await codeOf(await signInWith(late))).toEqual([403, "bad-invitation"]);
    server.wait(89 * DAY);
    expect(await (await me(cookie)).json()).toMatchObject({ signedIn: true });
    server.wait(DAY);
    expect((await server.ask({ path: "/api/projects", cookie })).status).toBe(401);
  });

  it("and a session stand in the database by their hashes alone", async () => {
    const secret = await server.invite("Ben", "site");
    const cookie = await server.signIn("Ada", "office");
    server.store.backUp(`${server.place.folder}/copy.sqlite`);
    const { readFileSync } = await import("node:fs");
    const bytes = readFileSync(`${server.place.folder}/copy.sqlite`);
    expect(bytes.includes(secret)).toBe(false);
    expect(bytes.includes(cookie)).toBe(false);
  });

  it("tried ten times in a minute makes the next try wait", async () => {
    const good = await server.invite("Ben", "site");
    for (let n = 0; n < 10; n++) expect((await signInWith("A".repeat(43))).status).toBe(403);
    const refused = await signInWith(good);
    expect(refused.headers.get("retry-after")).toBe("60");
    expect(await codeOf(refused)).toEqual([429, "too-many"]);
    server.wait(60_000);
    expect((await signInWith(good)).status).toBe(200);
  });

  it("lets sixty phones in from one address, each with a share of its own, and no flood of strangers", async () => {
    for (let phone = 0; phone < 60; phone++) {
      const secret = await server.invite(`Phone ${phone}`, "site");
      for (const path of ["/join", "/join.js", "/join.css"]) await server.ask({ path });
      const answer = await signInWith(secret);
      expect(answer.status).toBe(200);
      const cookie = /=([^;]+);/.exec(answer.headers.get("set-cookie") ?? "")?.[1];
      for (let part = 0; part < 20; part++) {
        expect((await server.ask({ path: "/architecture.md", cookie })).status).toBe(200);
      }
    }
    const strangers: number[] = [];
    for (let n = 0; n < 700; n++) strangers.push((await server.ask({ path: "/architecture.md" })).status);
    expect(strangers).toContain(429);
  });

  it("opens a page that says what to do, in the reader's language, with nothing inline", async () => {
    const page = await server.ask({ path: "/join", headers: { "accept-language": "fr-CA" } });
    const text = await page.text();
    expect(text).toContain('<html lang="fr">');
    expect(text).not.toMatch(/<script>|<style|\son\w+=/);
    expect(page.headers.get("content-security-policy")).toContain("script-src 'self'");
    expect((await server.ask({ path: "/join.js" })).headers.get("content-type")).toContain("javascript");
  });
});

describeWithStore("someone who is shut out", () => {
  it("is out at once on every device, and hears nothing more", async () => {
    const office = await server.signIn("Ada", "office");
    const [one, two] = [await server.signIn("Ben", "site"), await server.signIn("Ben", "site")];
    const unused = await server.invite("Ben", "site");
    const stream = await server.ask({ path: `/api/projects/${ID}/live`, cookie: one });
    const reader = stream.body?.getReader();
    await reader?.read();
    await reader?.read();
    const { people } = (await (await server.ask({ path: "/api/people", cookie: office })).json()) as {
      people: { id: string; name: string; sessions: number }[];
    };
    const ben = people.find(({ name }) => name === "Ben");
    expect(ben?.sessions).toBe(2);
    const path = `/api/people/${ben?.id}`;
    expect((await server.ask({ method: "DELETE", path, cookie: office })).status).toBe(200);
    for (const cookie of [one, two]) {
      expect(await (await me(cookie)).json()).toMatchObject({ signedIn: false });
      expect((await server.ask({ path: "/api/projects", cookie })).status).toBe(401);
    }
    expect(await codeOf(await signInWith(unused))).toEqual([403, "bad-invitation"]);
    await server.ask({
      method: "POST",
      path: `/api/projects/${ID}/journal`,
      cookie: office,
      body: { entries: [told(1)] },
    });
    expect(await reader?.read()).toMatchObject({ done: true });
    const lines = (await server.store.people.noted(9)).map(({ what, who }) => [what, who]);
    expect(lines).toContainEqual(["shut-out", "Ada"]);
  });

  it("may be invited again, in another role as well", async () => {
    const office = await server.signIn("Ada", "office");
    await server.signIn("Ben", "reader");
    const body = { name: "Ben", role: "site" };
    const again = () => server.ask({ method: "POST", path: "/api/people", cookie: office, body });
    expect(await codeOf(await again())).toEqual([409, "other-role"]);
    const people = await server.store.people.list({ time: server.now().toISOString() });
    const ben = people.find(({ name }) => name === "Ben");
    await server.store.people.revoke(ben?.id ?? "", { time: server.now().toISOString() });
    expect((await again()).status).toBe(201);
  });

  it("by their own hand is out on that device alone", async () => {
    const [one, two] = [await server.signIn("Ben", "site"), await server.signIn("Ben", "site")];
    expect((await server.ask({ method: "POST", path: "/api/sign-out", cookie: one })).status).toBe(200);
    expect(await (await me(one)).json()).toMatchObject({ signedIn: false });
    expect(await (await me(two)).json()).toMatchObject({ signedIn: true, name: "Ben" });
  });
});

describeWithStore("what was told", () => {
  it("bears the name of who told it, and a picture is sent with it", async () => {
    const ben = await server.signIn("Ben", "site");
    const { createHash } = await import("node:crypto");
    const sha256 = createHash("sha256").update(PNG).digest("hex");
    const put = { method: "PUT", path: `/api/attachments/${sha256}`, cookie: ben, body: PNG };
    expect((await server.ask(put)).status).toBe(201);
    const known = { method: "POST", path: "/api/attachments/known", cookie: ben };
    const body = { sha256: [sha256, "0".repeat(64)] };
    expect(await (await server.ask({ ...known, body })).json()).toEqual({ sha256: [sha256] });
    const entries = [told(1)];
    const path = `/api/projects/${ID}/journal`;
    await server.ask({ method: "POST", path, cookie: ben, body: { entries } });
    expect(await (await server.ask({ path, cookie: ben })).json()).toMatchObject({
      entries: [{ number: 1, who: "Ben" }],
    });
  });
});

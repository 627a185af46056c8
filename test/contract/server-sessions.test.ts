/** Devices that are signed in: listed without their secrets, ended one by one, by the office or by whoever they belong to. */
import { join } from "node:path";
import Sqlite from "better-sqlite3";
import { afterEach, beforeEach, expect, it } from "vitest";
import { type Guarded, guardedServer } from "../helpers/guarded.ts";
import { describeWithStore } from "../helpers/store.ts";

interface Listed {
  readonly id: string;
  readonly device: string;
  readonly begun: string;
  readonly seen: string | null;
  readonly own: boolean;
}

let server: Guarded;
beforeEach(async () => {
  server = await guardedServer();
});
afterEach(() => server.place.clear());

const MINUTE = 60_000;

const codeOf = async (answer: Response): Promise<readonly [number, string]> => [
  answer.status,
  ((await answer.json()) as { error: { code: string } }).error.code,
];

async function idOf(name: string): Promise<string> {
  const people = await server.store.people.list({ time: server.now().toISOString() });
  const found = people.find((one) => one.name === name);
  if (!found) throw new Error("no such person");
  return found.id;
}

async function listed(cookie: string, path: string): Promise<readonly Listed[]> {
  const answer = await server.ask({ path, cookie });
  expect(answer.status).toBe(200);
  return ((await answer.json()) as { sessions: readonly Listed[] }).sessions;
}

/** The value of the cookie of a device that has just signed in under a name. */
async function device(of: string, role: "office" | "site" | "reader", name?: string): Promise<string> {
  const secret = await server.invite(of, role);
  const body = { secret, ...(name !== undefined && { device: name }) };
  const answer = await server.ask({ method: "POST", path: "/api/sign-in", body });
  expect(answer.status).toBe(200);
  return /=([^;]+);/.exec(answer.headers.get("set-cookie") ?? "")?.[1] ?? "";
}

const remove = (path: string, cookie: string) => server.ask({ method: "DELETE", path, cookie });

describeWithStore("the office", () => {
  it("sees the devices of a person: named as given, when begun, when last seen, and no secret", async () => {
    const office = await device("Ada", "office");
    const phone = await device("Ben", "site", "  phone in the van ");
    server.wait(7 * MINUTE);
    const tablet = await device("Ben", "site");
    await server.ask({ path: "/api/projects", cookie: phone });
    const path = `/api/people/${await idOf("Ben")}/sessions`;
    const sessions = await listed(office, path);
    expect(sessions).toMatchObject([
      { device: "", begun: "2026-05-04T06:07:00.000Z", seen: "2026-05-04T06:07:00.000Z", own: false },
      {
        device: "phone in the van",
        begun: "2026-05-04T06:00:00.000Z",
        seen: "2026-05-04T06:07:00.000Z",
        own: false,
      },
    ]);
    const text = await (await server.ask({ path, cookie: office })).text();
    for (const secret of [phone, tablet, office]) expect(text).not.toContain(secret);
    expect(text).not.toContain("hash");
  });

  it("is told to five minutes when a device was seen: what asks often is not written down each time", async () => {
    const office = await device("Ada", "office");
    const phone = await device("Ben", "site");
    const path = `/api/people/${await idOf("Ben")}/sessions`;
    const seen = async () => (await listed(office, path))[0]?.seen;
    server.wait(4 * MINUTE);
    await server.ask({ path: "/api/projects", cookie: phone });
    expect(await seen()).toBe("2026-05-04T06:00:00.000Z");
    server.wait(MINUTE);
    await server.ask({ path: "/api/projects", cookie: phone });
    expect(await seen()).toBe("2026-05-04T06:05:00.000Z");
  });

  it("ends one device and no other; once, and with an entry of who did it", async () => {
    const office = await device("Ada", "office");
    const [phone, tablet] = [await device("Ben", "site", "phone"), await device("Ben", "site", "tablet")];
    const path = `/api/people/${await idOf("Ben")}/sessions`;
    const lost = (await listed(office, path)).find((one) => one.device === "phone");
    expect(await (await remove(`${path}/${lost?.id}`, office)).json()).toEqual({ ended: true });
    expect((await server.ask({ path: "/api/projects", cookie: phone })).status).toBe(401);
    expect((await server.ask({ path: "/api/projects", cookie: tablet })).status).toBe(200);
    expect((await listed(office, path)).map((one) => one.device)).toEqual(["tablet"]);
    expect(await codeOf(await remove(`${path}/${lost?.id}`, office))).toEqual([404, "no-session"]);
    const [line] = await server.store.people.noted(1);
    expect(line).toMatchObject({
      who: "Ada",
      what: "session-ended",
      about: { person: await idOf("Ben"), session: lost?.id, device: "phone" },
    });
  });

  it("ends nobody's device by another person's address, nor one that there is not", async () => {
    const office = await device("Ada", "office");
    const phone = await device("Ben", "site");
    const [ben] = await listed(office, `/api/people/${await idOf("Ben")}/sessions`);
    const others = `/api/people/${await idOf("Ada")}/sessions/${ben?.id}`;
    expect(await codeOf(await remove(others, office))).toEqual([404, "no-session"]);
    expect((await server.ask({ path: "/api/projects", cookie: phone })).status).toBe(200);
    const nobody = `/api/people/${"0".repeat(16)}/sessions`;
    expect(await codeOf(await server.ask({ path: nobody, cookie: office }))).toEqual([404, "no-person"]);
    for (const odd of ["..%2f..", "'; DROP TABLE sessions", "0".repeat(15), "%00"]) {
      const answer = await remove(`/api/people/${await idOf("Ben")}/sessions/${encodeURI(odd)}`, office);
      expect(answer.status).toBe(404);
    }
    expect(await listed(office, `/api/people/${await idOf("Ben")}/sessions`)).toHaveLength(1);
  });

  it("takes no name of a device that is longer than sixty characters, and lets in nobody by it", async () => {
    const secret = await server.invite("Ben", "site");
    const body = { secret, device: "x".repeat(61) };
    const answer = await server.ask({ method: "POST", path: "/api/sign-in", body });
    expect(await codeOf(answer)).toEqual([400, "unread-body"]);
    expect(answer.headers.get("set-cookie")).toBeNull();
  });
});

describeWithStore("a person of any role", () => {
  it("sees the own devices, ends the others, and keeps the one that asks", async () => {
    for (const role of ["office", "site", "reader"] as const) {
      const name = `Person ${role}`;
      const [phone, tablet] = [await device(name, role, "phone"), await device(name, role, "tablet")];
      const own = await listed(phone, "/api/sessions");
      expect(own.map((one) => [one.device, one.own]).sort()).toEqual([
        ["phone", true],
        ["tablet", false],
      ]);
      const [here, there] = [own.find((one) => one.own), own.find((one) => !one.own)];
      const refused = await remove(`/api/sessions/${here?.id}`, phone);
      expect(await codeOf(refused)).toEqual([409, "own-session"]);
      expect((await remove(`/api/sessions/${there?.id}`, phone)).status).toBe(200);
      expect((await server.ask({ path: "/api/projects", cookie: tablet })).status).toBe(401);
      expect((await server.ask({ path: "/api/projects", cookie: phone })).status).toBe(200);
      expect(await codeOf(await remove(`/api/sessions/${there?.id}`, phone))).toEqual([404, "no-session"]);
      const [line] = await server.store.people.noted(1);
      expect(line).toMatchObject({ who: name, what: "session-ended", about: { device: "tablet" } });
    }
  });

  it("reaches no device of anybody else: not by its id, not by the office's address", async () => {
    const office = await device("Ada", "office", "desk");
    const [site, reader] = [await device("Ben", "site"), await device("Cleo", "reader")];
    const ada = `/api/people/${await idOf("Ada")}/sessions`;
    const [desk] = await listed(office, ada);
    for (const cookie of [site, reader]) {
      expect(await codeOf(await remove(`/api/sessions/${desk?.id}`, cookie))).toEqual([404, "no-session"]);
      expect(await codeOf(await remove(`${ada}/${desk?.id}`, cookie))).toEqual([403, "not-allowed"]);
      expect(await codeOf(await server.ask({ path: ada, cookie }))).toEqual([403, "not-allowed"]);
    }
    expect(await listed(office, ada)).toHaveLength(1);
    const stranger = await server.ask({ method: "DELETE", path: `${ada}/${desk?.id}` });
    expect(await codeOf(stranger)).toEqual([401, "sign-in-needed"]);
    // A page of another site sends its own name.
    const path = `${ada}/${desk?.id}`;
    const headers = { origin: "https://elsewhere.example" };
    const foreign = await server.ask({ method: "DELETE", path, cookie: office, headers });
    expect(await codeOf(foreign)).toEqual([403, "foreign-page"]);
    expect(await listed(office, ada)).toHaveLength(1);
  });
});

describeWithStore("sessions from before they had names", () => {
  it("get one each, and the day they began by the ninety for which they were given", async () => {
    const phone = await device("Ben", "site", "phone");
    const ben = await idOf("Ben");
    server.store.close();
    const file = join(server.place.folder, "outerleaf.sqlite");
    const database = new Sqlite(file);
    database.exec("DROP INDEX sessions_by_id");
    for (const column of ["id", "device", "begun", "seen"])
      database.exec(`ALTER TABLE sessions DROP COLUMN ${column}`);
    database.pragma(`user_version = ${VERSION_BEFORE}`);
    database.close();
    const store = await server.place.open();
    const time = server.now().toISOString();
    const [session] = await store.sessions.of(ben, { time });
    expect(session).toMatchObject({ device: "", begun: "2026-05-04T06:00:00.000Z", seen: null });
    expect(session?.id).toMatch(/^[0-9a-f]{16}$/);
    expect(phone).not.toContain(session?.id ?? "");
  });
});

/** Of the database, before sessions had names. */
const VERSION_BEFORE = 3;

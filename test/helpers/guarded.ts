/** A server as phones reach it: a guarded listener without a socket, people who are signed in, and a clock that is moved by hand. */
import { createHash } from "node:crypto";
import { join } from "node:path";
import Sqlite from "better-sqlite3";
import { COOKIE } from "../../src/server/access/door.ts";
import { createApp } from "../../src/server/app.ts";
import { diskFiles } from "../../src/server/files.ts";
import { invitationSecret, newPersonId } from "../../src/server/secrets.ts";
import type { Role } from "../../src/store/role.ts";
import type { Store } from "../../src/store/store.ts";
import { checkout } from "./cli.ts";
import { type StoreFolder, storeFolder } from "./store.ts";

export const OUTSIDE = "https://192.0.2.7:4171";

export interface Asked {
  readonly method?: string;
  readonly path: string;
  readonly cookie?: string | undefined;
  readonly headers?: Readonly<Record<string, string>>;
  /** Sent as JSON, or as it stands where it is text or bytes. */
  readonly body?: unknown;
}

export interface Guarded {
  readonly place: StoreFolder;
  readonly store: Store;
  ask(asked: Asked): Promise<Response>;
  /** An invitation that nobody has used. */
  invite(name: string, role: Role): Promise<string>;
  /** The value of the cookie of someone who has just signed in. */
  signIn(name: string, role: Role): Promise<string>;
  wait(ms: number): void;
  now(): Date;
  /** Everything in the database but the notes of what was refused, and when a device was last seen. */
  dump(): string;
}

export async function guardedServer(): Promise<Guarded> {
  const place = storeFolder();
  const store = await place.open();
  let at = Date.parse("2026-05-04T06:00:00Z");
  const now = () => new Date(at);
  const app = createApp({
    files: diskFiles,
    projectFile: `${checkout}examples/porch.outerleaf.json`,
    documentsDir: `${checkout}examples`,
    webDir: `${checkout}docs`,
    store,
    now,
    outside: OUTSIDE,
    guarded: { hosts: ["192.0.2.7"] },
  });
  const ask = async ({ method = "GET", path, cookie, headers = {}, body }: Asked): Promise<Response> => {
    const plain = typeof body === "string" || body instanceof Uint8Array;
    return app.request(`${OUTSIDE}${path}`, {
      method,
      headers: {
        ...(method === "GET" || method === "HEAD" ? {} : { origin: OUTSIDE }),
        ...(body === undefined || plain ? {} : { "content-type": "application/json" }),
        ...(cookie === undefined ? {} : { cookie: `${COOKIE}=${cookie}` }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: plain ? (body as string) : JSON.stringify(body) }),
    });
  };
  const invite = async (name: string, role: Role): Promise<string> => {
    const secret = invitationSecret(now());
    const wanted = { id: newPersonId(), name, role, ...secret.lease };
    await store.people.invite(wanted, { time: now().toISOString() });
    return secret.text;
  };
  return {
    place,
    store,
    ask,
    invite,
    signIn: async (name, role) => {
      const secret = await invite(name, role);
      const answer = await ask({ method: "POST", path: "/api/sign-in", body: { secret } });
      return /=([^;]+);/.exec(answer.headers.get("set-cookie") ?? "")?.[1] ?? "";
    },
    wait: (ms) => {
      at += ms;
    },
    now,
    dump: () => {
      const database = new Sqlite(join(place.folder, "outerleaf.sqlite"), { readonly: true });
      const names = database
        .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name <> 'audit' ORDER BY name")
        .pluck()
        .all() as string[];
      const rows = names.map((name) => {
        const columns = (database.pragma(`table_info("${name}")`) as { name: string }[])
          .map((column) => column.name)
          .filter((column) => name !== "sessions" || column !== "seen");
        return [
          name,
          database
            .prepare(`SELECT ${columns.join(", ")} FROM "${name}"`)
            .raw()
            .all(),
        ];
      });
      database.close();
      return createHash("sha256").update(JSON.stringify(rows)).digest("hex");
    },
  };
}

/** Signing in and out, who I am, people, and what was done about them. */
import { type Context, Hono } from "hono";
import { bodyLimit } from "hono/body-limit";
import type { Role } from "../../store/role.ts";
import { json, sha256 } from "../answers.ts";
import { invitationBody, readBody, signInBody } from "../bodies.ts";
import type { Keeping } from "../keeping.ts";
import { isOwnPage } from "../policy.ts";
import { refuse } from "../refusals.ts";
import { invitationLink, invitationSecret, newPersonId, newSessionId, sessionSecret } from "../secrets.ts";
import { addressOf, COOKIE, sessionIn } from "./door.ts";
import { limitOf } from "./limits.ts";
import { sessionRoutes } from "./session-routes.ts";
import { whoOf } from "./signed-in.ts";

const LARGEST_BODY = 4096;
const ID = ":id{[0-9a-f]{16}}";

/** Of tries that failed: nobody types a secret, so more than this are a program's. Those that succeed hinder nobody. */
const SIGN_IN_RATE = { burst: 10, perMinute: 10 };
const SIGN_IN_RATE_OF_ALL = { burst: 100, perMinute: 60 };

const NOTED = 200;

export interface AccessOptions extends Keeping {
  /** Whether this is the listener that asks for sign-in. */
  readonly guarded: boolean;
  /** The address that phones reach; none while they are not let in. */
  readonly outside?: string | undefined;
}

export function accessRoutes({ store, now, guarded, outside }: AccessOptions): Hono {
  const { people } = store;
  const routes = new Hono();
  const mayTry = limitOf(SIGN_IN_RATE, now);
  const mayAllTry = limitOf(SIGN_IN_RATE_OF_ALL, now);
  const time = (): string => now().toISOString();
  const note = (context: Context, what: string, about: Readonly<Record<string, string>>) =>
    people.note({ time: time(), who: whoOf(context), what, about });

  routes.use(async (context, next) => {
    const request = context.req.raw;
    return isOwnPage(request) ? next() : refuse("foreign-page", request);
  });
  routes.use(bodyLimit({ maxSize: LARGEST_BODY, onError: ({ req }) => refuse("unread-body", req.raw) }));

  routes.get("/me", (context) => {
    const person = context.get("person");
    // Whoever sits at this machine is the office; whoever is at the door reads nothing yet.
    const role = guarded ? "reader" : "office";
    const { name, role: own } = person ?? { name: "", role };
    return json({ signedIn: person !== undefined, name, role: own }, context.req.raw);
  });

  if (guarded) {
    routes.post("/sign-in", async ({ req, env }) => {
      const address = addressOf(env);
      if (!mayTry.has(address) || !mayAllTry.has("")) return refuse("too-many", req.raw);
      const body = await readBody(req.raw, signInBody);
      if (!body) return refuse("unread-body", req.raw);
      const session = sessionSecret(now());
      const { secret, device = "" } = body;
      const begun = { ...session.lease, id: newSessionId(), device };
      const person = await people.redeem(sha256(secret), begun, { time: time() });
      if (!person) {
        mayTry.take(address);
        mayAllTry.take("");
        await people.note({ time: time(), who: "", what: "sign-in-refused", about: { address } });
        return refuse("bad-invitation", req.raw);
      }
      await people.note({ time: time(), who: person.name, what: "signed-in", about: { address } });
      const seconds = Math.floor((Date.parse(session.lease.until) - now().getTime()) / 1000);
      const cookie = `${COOKIE}=${session.text}; Path=/; Max-Age=${seconds}; HttpOnly; Secure; SameSite=Strict`;
      const { name, role } = person;
      return json({ signedIn: true, name, role }, req.raw, {
        headers: { "Set-Cookie": cookie, "Cache-Control": "no-store" },
      });
    });

    routes.post("/sign-out", async (context) => {
      const { req } = context;
      const secret = sessionIn(req.raw);
      if (secret !== undefined) await people.signOut(sha256(secret), { time: time() });
      await note(context, "signed-out", {});
      const cookie = `${COOKIE}=; Path=/; Max-Age=0; HttpOnly; Secure; SameSite=Strict`;
      return json({ signedIn: false }, req.raw, {
        headers: { "Set-Cookie": cookie, "Cache-Control": "no-store" },
      });
    });
  }

  routes.get("/people", async ({ req }) => json({ people: await people.list({ time: time() }) }, req.raw));

  routes.post("/people", async (context) => {
    const { req } = context;
    const body = await readBody(req.raw, invitationBody);
    if (!body) return refuse("unread-body", req.raw);
    if (outside === undefined) return refuse("no-phones", req.raw);
    const secret = invitationSecret(now());
    const wanted: { name: string; role: Role } = body;
    const person = await people.invite({ ...wanted, ...secret.lease, id: newPersonId() }, { time: time() });
    if (!person) return refuse("other-role", req.raw);
    await note(context, "invited", { name: person.name, role: person.role });
    const link = invitationLink(outside, secret);
    const headers = { "Cache-Control": "no-store" };
    return json({ person, link, until: secret.lease.until }, req.raw, { status: 201, headers });
  });

  routes.delete(`/people/${ID}`, async (context) => {
    const { req } = context;
    const id = req.param("id");
    if (!(await people.revoke(id, { time: time() }))) return refuse("no-person", req.raw);
    await note(context, "shut-out", { person: id });
    return json({ revoked: true }, req.raw);
  });

  routes.route("/", sessionRoutes({ store, now, guarded }));

  routes.get("/audit", async ({ req }) => json({ lines: await people.noted(NOTED) }, req.raw));

  return routes;
}

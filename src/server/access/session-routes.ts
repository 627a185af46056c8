/** The devices that are signed in: the office sees and ends those of everyone, and each person their own others. */
import { type Context, Hono } from "hono";
import type { Session } from "../../store/sessions.ts";
import { json } from "../answers.ts";
import type { Keeping } from "../keeping.ts";
import { refuse } from "../refusals.ts";
import { whoOf } from "./signed-in.ts";

const ID = ":id{[0-9a-f]{16}}";
const SESSION = ":session{[0-9a-f]{16}}";

export interface SessionOptions extends Keeping {
  /** Whether this is the listener that asks for sign-in. */
  readonly guarded: boolean;
}

export function sessionRoutes({ store: { people, sessions }, now, guarded }: SessionOptions): Hono {
  const routes = new Hono();
  const time = (): string => now().toISOString();
  const shown = (list: readonly Session[], context: Context) => {
    const own = context.get("person")?.session;
    return json({ sessions: list.map((one) => ({ ...one, own: one.id === own })) }, context.req.raw);
  };
  const end = async (context: Context, which: { readonly person: string; readonly id: string }) => {
    const session = await sessions.end(which, { time: time() });
    if (!session) return refuse("no-session", context.req.raw);
    const about = { person: which.person, session: session.id, device: session.device };
    await people.note({ time: time(), who: whoOf(context), what: "session-ended", about });
    return json({ ended: true }, context.req.raw);
  };

  routes.get(`/people/${ID}/sessions`, async (context) => {
    const id = context.req.param("id");
    const listed = await people.list({ time: time() });
    if (!listed.some((one) => one.id === id)) return refuse("no-person", context.req.raw);
    return shown(await sessions.of(id, { time: time() }), context);
  });

  routes.delete(`/people/${ID}/sessions/${SESSION}`, (context) =>
    end(context, { person: context.req.param("id"), id: context.req.param("session") }),
  );

  if (guarded) {
    routes.get("/sessions", async (context) => {
      const person = context.get("person");
      return person
        ? shown(await sessions.of(person.id, { time: time() }), context)
        : refuse("sign-in-needed", context.req.raw);
    });

    routes.delete(`/sessions/${SESSION}`, async (context) => {
      const person = context.get("person");
      const id = context.req.param("session");
      if (!person) return refuse("sign-in-needed", context.req.raw);
      // The one that asks is left by signing out, which takes its cookie as well.
      if (id === person.session) return refuse("own-session", context.req.raw);
      return end(context, { person: person.id, id });
    });
  }
  return routes;
}

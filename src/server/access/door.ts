/**
 * Who may do what from other devices. Every address of the programs' interface has its role in one table; what is in no
 * table is refused. The page's own files are open: they hold the program and nothing of a project.
 */
import type { MiddlewareHandler } from "hono";
import type { People, SignedIn } from "../../store/people.ts";
import { ROLES, type Role } from "../../store/role.ts";
import { sha256 } from "../answers.ts";
import { operationAt } from "../api/find.ts";
import { refuse } from "../refusals.ts";
import { SECRET } from "../secrets.ts";
import { limitOf } from "./limits.ts";

/** `__Host-`: from this very host, over TLS, for every path, or browsers refuse it (RFC 6265bis 4.1.3.2). */
export const COOKIE = "__Host-outerleaf";

/** Of one signed-in device, sending what a day without a network has gathered. */
const SESSION_RATE = { burst: 600, perMinute: 300 };
/**
 * Of one address that is not signed in. A site's phones share their router's address until then, and each asks for the
 * page that signs in, its parts and its answer: some hundred phones in a morning.
 */
const STRANGER_RATE = { burst: 600, perMinute: 300 };

interface Door {
  readonly people: People;
  readonly now: () => Date;
}

export function door({ people, now }: Door): MiddlewareHandler {
  const ofSession = limitOf(SESSION_RATE, now);
  const ofStranger = limitOf(STRANGER_RATE, now);
  return async (context, next) => {
    const request = context.req.raw;
    const { path } = context.req;
    const operation = operationAt(request.method, path);
    const guarded = path === "/api" || path.startsWith("/api/") || path.startsWith("/documents");
    const person = await personBehind(request, { people, now });
    // Whoever signed in has a share of their own, for the page's files as well: behind one router are many phones.
    const allowed = person
      ? ofSession.take(sessionIn(request) ?? "")
      : ofStranger.take(addressOf(context.env));
    if (!allowed) return refuse("too-many", request);
    // A page of another site sends its name with whatever writes; a program can send ours.
    const writes = request.method !== "GET" && request.method !== "HEAD";
    if (writes && request.headers.get("origin") === null) return refuse("foreign-page", request);
    if (person) context.set("person", person);
    if (!guarded || operation?.role === "anyone") return next();
    if (!person) return refuse("sign-in-needed", request);
    if (operation && !reaches(person.role, operation.role)) {
      const time = now().toISOString();
      const about = { address: `${request.method} ${path}`, role: person.role };
      await people.note({ time, who: person.name, what: "not-allowed", about });
      return refuse("not-allowed", request);
    }
    return next();
  };
}

/** The secret of the session that a request carries. */
export function sessionIn(request: Request): string | undefined {
  const pairs = (request.headers.get("cookie") ?? "").split(";").map((pair) => pair.trim());
  const value = pairs.find((pair) => pair.startsWith(`${COOKIE}=`))?.slice(COOKIE.length + 1);
  return value !== undefined && SECRET.test(value) ? value : undefined;
}

export async function personBehind(request: Request, { people, now }: Door): Promise<SignedIn | undefined> {
  const secret = sessionIn(request);
  return secret === undefined ? undefined : people.signedIn(sha256(secret), { time: now().toISOString() });
}

/** Where a request comes from, as the socket knows it: no header can change that. */
export function addressOf(env: unknown): string {
  const { incoming } = (env ?? {}) as { incoming?: { socket?: { remoteAddress?: string } } };
  return incoming?.socket?.remoteAddress ?? "";
}

/** The office reaches what the site reaches, and the site what readers reach. */
function reaches(role: Role, needed: Role): boolean {
  return ROLES.indexOf(role) <= ROLES.indexOf(needed);
}

/** Kept projects and their revisions, under /api/projects. */
import { Hono } from "hono";
import { bodyLimit } from "hono/body-limit";
import { readDocument } from "../project/read.ts";
import type { NewRevision, PutAnswer } from "../store/revision.ts";
import { message } from "../text/message.ts";
import { whoOf } from "./access/signed-in.ts";
import { json } from "./answers.ts";
import { LARGEST_BODY, readBody, removalBody, revisionBody } from "./bodies.ts";
import type { Keeping } from "./keeping.ts";
import type { Live } from "./live.ts";
import { isOwnPage } from "./policy.ts";
import { refuse } from "./refusals.ts";
import { issuedRoutes } from "./site/issued.ts";
import { siteRoutes } from "./site/routes.ts";

const ID = ":id{[0-9a-f]{24}}";
const NUMBER = ":number{[1-9][0-9]{0,8}}";

export function projectRoutes({ store, now, live }: Keeping & { readonly live: Live }): Hono {
  const routes = new Hono();
  routes.use(async (context, next) => {
    const request = context.req.raw;
    return isOwnPage(request) ? next() : refuse("foreign-page", request);
  });
  const limited = bodyLimit({
    maxSize: LARGEST_BODY,
    onError: ({ req }) => refuse("too-large", req.raw, { values: { most: LARGEST_BODY / 1024 / 1024 } }),
  });
  // An issued set is larger than any document, and has a limit of its own.
  routes.use((context, next) => (context.req.path.endsWith("/issued") ? next() : limited(context, next)));

  routes.get("/", async ({ req }) => json({ store: true, projects: await store.list() }, req.raw));

  routes.get(`/${ID}`, async ({ req }) => {
    const id = req.param("id");
    const project = await store.project(id);
    const revision = project && (await store.revision(id, project.latest.number));
    if (!project || !revision) return refuse("not-kept", req.raw);
    const hash = req.query("file");
    const known = hash === undefined ? {} : { knowsFile: await store.knows(id, hash) };
    const { name, title } = project;
    return json({ id, name, title, revision, ...known }, req.raw, { headers: tagged(revision) });
  });

  routes.put(`/${ID}`, async (context) => {
    const { req } = context;
    const body = await readBody(req.raw, revisionBody);
    if (!body) return refuse("unread-body", req.raw);
    return put(req.raw, body, { who: whoOf(context), store, now, live, id: req.param("id") });
  });

  routes.delete(`/${ID}`, async ({ req }) => {
    const body = await readBody(req.raw, removalBody);
    if (!body) return refuse("unread-body", req.raw);
    const done = await store.remove(req.param("id"), body.name);
    if (done === "missing") return refuse("not-kept", req.raw);
    return done === "removed" ? json({ removed: true }, req.raw) : refuse("other-name", req.raw);
  });

  routes.get(`/${ID}/revisions`, async ({ req }) => {
    const revisions = await store.revisions(req.param("id"));
    return revisions.length > 0 ? json({ revisions }, req.raw) : refuse("not-kept", req.raw);
  });

  routes.get(`/${ID}/revisions/${NUMBER}`, async ({ req }) => {
    const revision = await store.revision(req.param("id"), Number(req.param("number")));
    return revision ? json({ revision }, req.raw) : refuse("not-kept", req.raw);
  });

  routes.post(`/${ID}/revisions/${NUMBER}/restore`, async (context) => {
    const { req } = context;
    const id = req.param("id");
    const project = await store.project(id);
    const old = await store.revision(id, Number(req.param("number")));
    if (!project || !old) return refuse("not-kept", req.raw);
    const says = message("page.edit.back-to", { number: String(old.number), says: old.says });
    return put(
      req.raw,
      { name: project.name, document: old.document, says },
      { who: whoOf(context), store, now, live, id },
    );
  });

  routes.route("/", siteRoutes({ store, now, live }));
  routes.route("/", issuedRoutes({ store, now }));

  for (const [path, allow] of [
    ["/", "GET, HEAD"],
    [`/${ID}`, "GET, HEAD, PUT, DELETE"],
    [`/${ID}/revisions`, "GET, HEAD"],
    [`/${ID}/revisions/${NUMBER}`, "GET, HEAD"],
    [`/${ID}/revisions/${NUMBER}/restore`, "POST"],
  ] as const) {
    routes.all(path, ({ req }) => refuse("method-not-here", req.raw, { values: { allow }, allow }));
  }
  routes.all("*", ({ req }) => refuse("not-found", req.raw));
  routes.onError((_, { req }) => refuse("cannot-keep", req.raw));
  return routes;
}

/** Writes onto the revision that the request names: `If-Match` with its tag, or `If-None-Match: *` for the first. */
async function put(
  request: Request,
  { name, document, says }: Pick<NewRevision, "name" | "document" | "says">,
  { store, now, live, id, who }: Keeping & { readonly live: Live; readonly id: string; readonly who: string },
): Promise<Response> {
  const onto = /^"([^"]*)"$/.exec(request.headers.get("if-match") ?? "")?.[1];
  if (onto === undefined && request.headers.get("if-none-match") !== "*") {
    return refuse("no-condition", request);
  }
  const read = readDocument(document, name);
  if (!read.ok) {
    const { findings } = read;
    return refuse("unusable-project", request, { values: { count: findings.length }, more: { findings } });
  }
  const { title } = read.project;
  const time = now().toISOString();
  const answer = await store.put(id, { name, title, document, says, time, who, onto });
  if (answer.kind === "kept" && answer.fresh) {
    live.tell(id, { kind: "revision", number: answer.revision.number });
  }
  return answered(answer, request);
}

function answered(answer: PutAnswer, request: Request): Response {
  if (answer.kind === "kept") {
    const { revision, fresh } = answer;
    return json({ revision }, request, { status: fresh ? 201 : 200, headers: tagged(revision) });
  }
  const { latest } = answer;
  return latest
    ? refuse("other-revision", request, { values: { number: String(latest.number) }, more: { latest } })
    : refuse("no-revision", request);
}

function tagged({ tag }: { readonly tag: string }): { readonly ETag: string } {
  return { ETag: `"${tag}"` };
}

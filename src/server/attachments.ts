/** Pictures by the SHA-256 of their bytes, under /api/attachments. */
import { Hono } from "hono";
import { bodyLimit } from "hono/body-limit";
import { LARGEST_PICTURE } from "../store/attachments.ts";
import { json, send } from "./answers.ts";
import { knownBody, readBody } from "./bodies.ts";
import type { Keeping } from "./keeping.ts";
import { isOwnPage } from "./policy.ts";
import { refuse } from "./refusals.ts";

const SHA256 = "/:sha256{[0-9a-f]{64}}";

export function attachmentRoutes({ store, now }: Keeping): Hono {
  const routes = new Hono();
  const tooLarge = (request: Request): Response =>
    refuse("picture-too-large", request, { values: { most: LARGEST_PICTURE / 1024 / 1024 } });
  routes.use(async (context, next) => {
    const request = context.req.raw;
    return isOwnPage(request) ? next() : refuse("foreign-page", request);
  });
  routes.use(bodyLimit({ maxSize: LARGEST_PICTURE, onError: ({ req }) => tooLarge(req.raw) }));

  routes.post("/known", async ({ req }) => {
    const body = await readBody(req.raw, knownBody);
    if (!body) return refuse("unread-body", req.raw);
    return json({ sha256: await store.attachments.known(body.sha256) }, req.raw);
  });

  routes.get(SHA256, async ({ req }) => {
    const held = await store.attachments.get(req.param("sha256"));
    if (!held) return refuse("no-attachment", req.raw);
    // The name is the content's: it never changes. Only who may see it may keep it.
    const headers = { "Cache-Control": "private, max-age=31536000, immutable" };
    return send(held.content, { request: req.raw, type: held.type, kind: "document", headers });
  });

  routes.put(SHA256, async ({ req }) => {
    const sha256 = req.param("sha256");
    const content = new Uint8Array(await req.arrayBuffer());
    const answer = await store.attachments.put(sha256, { content, time: now().toISOString() });
    if (answer.kind === "too-large") return tooLarge(req.raw);
    if (answer.kind !== "kept") return refuse(`picture-${answer.kind}`, req.raw);
    const { type, fresh } = answer;
    return json({ sha256, type, bytes: content.byteLength }, req.raw, { status: fresh ? 201 : 200 });
  });

  for (const [path, allow] of [
    ["/known", "POST"],
    [SHA256, "GET, HEAD, PUT"],
  ] as const) {
    routes.all(path, ({ req }) => refuse("method-not-here", req.raw, { values: { allow }, allow }));
  }
  routes.all("*", ({ req }) => refuse("not-found", req.raw));
  routes.onError((_, { req }) => refuse("cannot-keep", req.raw));
  return routes;
}

/** Sets of documents that went out: each is frozen with its files, listed, and handed out again byte for byte. */
import { unzipSync } from "fflate";
import { Hono } from "hono";
import { bodyLimit } from "hono/body-limit";
import { whoOf } from "../access/signed-in.ts";
import { json, send } from "../answers.ts";
import { issuedQuery } from "../bodies.ts";
import type { Keeping } from "../keeping.ts";
import { mediaType } from "../policy.ts";
import { refuse } from "../refusals.ts";

/** Bytes of a set as it is sent, and of all its files: a building of many faces comes to a tenth. */
const LARGEST_SET = 128 * 1024 * 1024;
const LARGEST_UNPACKED = 4 * LARGEST_SET;

const MOST_FILES = 2000;

/** A file's name and no way to another folder. */
const NAME = /^[^/\\\p{Cc}]{1,200}$/u;

const ID = ":id{[0-9a-f]{24}}";
const NUMBER = ":number{[1-9][0-9]{0,8}}";

export function issuedRoutes({ store, now }: Keeping): Hono {
  const routes = new Hono();
  const values = { most: LARGEST_SET / 1024 / 1024 };

  routes.get(`/${ID}/issued`, async ({ req }) =>
    json({ issued: await store.issued.list(req.param("id")) }, req.raw),
  );

  routes.post(
    `/${ID}/issued`,
    bodyLimit({ maxSize: LARGEST_SET, onError: ({ req }) => refuse("too-large", req.raw, { values }) }),
    async (context) => {
      const { req } = context;
      const project = req.param("id");
      const asked = issuedQuery.safeParse(req.query());
      if (!asked.success) return refuse("unread-body", req.raw);
      const { revision, note, hash } = asked.data;
      // A set without the state that it was made of would tell nobody what was built from it.
      if (!(await store.knows(project, hash))) return refuse("unknown-state", req.raw);
      const files = unpacked(new Uint8Array(await req.arrayBuffer()));
      if (!files) return refuse("bad-set", req.raw);
      const time = now().toISOString();
      const set = { revision, note, hash, files, time, who: whoOf(context) };
      return json({ number: await store.issued.freeze(project, set) }, req.raw, { status: 201 });
    },
  );

  routes.get(`/${ID}/issued/${NUMBER}/files/:name`, async ({ req }) => {
    const name = req.param("name");
    const content = await store.issued.file(req.param("id"), Number(req.param("number")), name);
    return content
      ? send(content, { request: req.raw, type: mediaType(name), kind: "document" })
      : refuse("not-kept", req.raw);
  });

  for (const [path, allow] of [
    [`/${ID}/issued`, "GET, HEAD, POST"],
    [`/${ID}/issued/${NUMBER}/files/:name`, "GET, HEAD"],
  ] as const) {
    routes.all(path, ({ req }) => refuse("method-not-here", req.raw, { values: { allow }, allow }));
  }
  return routes;
}

/** The files of an archive; undefined where it is none, or holds none, too many, or what is no plain file. */
function unpacked(
  bytes: Uint8Array,
): readonly { readonly name: string; readonly content: Uint8Array }[] | undefined {
  let [sum, count, good] = [0, 0, true];
  try {
    const found = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        sum += originalSize;
        count += 1;
        good &&= NAME.test(name) && sum <= LARGEST_UNPACKED && count <= MOST_FILES;
        return good;
      },
    });
    if (!good || count === 0) return undefined;
    return Object.entries(found).map(([name, content]) => ({ name, content }));
  } catch {
    return undefined;
  }
}

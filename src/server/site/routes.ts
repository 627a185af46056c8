/** The site of a kept project: its journal, what that comes to, and news of it. */
import { Hono } from "hono";
import { bodyLimit } from "hono/body-limit";
import { entryShape } from "../../site/journal/entry.ts";
import { LARGEST_PAGE } from "../../store/journal.ts";
import { personBehind } from "../access/door.ts";
import { whoOf } from "../access/signed-in.ts";
import { json, sendAnswered } from "../answers.ts";
import { entriesBody, readBody } from "../bodies.ts";
import type { Keeping } from "../keeping.ts";
import type { Live } from "../live.ts";
import { refuse } from "../refusals.ts";
import { siteFolds } from "./folds.ts";
import { newsStream } from "./stream.ts";

/** Bytes of one batch of entries. */
const LARGEST_BATCH = 1024 * 1024;

/** Open streams: of one person, and of all. */
const MOST_STREAMS = { person: 8, all: 400 };

const USUAL_PAGE = 200;

const ID = ":id{[0-9a-f]{24}}";

export function siteRoutes({ store, now, live }: Keeping & { readonly live: Live }): Hono {
  const routes = new Hono();
  const folds = siteFolds(store);
  const streams = new Map<string, number>();

  routes.post(
    `/${ID}/journal`,
    bodyLimit({
      maxSize: LARGEST_BATCH,
      onError: ({ req }) => refuse("batch-too-large", req.raw, { values: { most: LARGEST_BATCH / 1024 } }),
    }),
    async (context) => {
      const { req } = context;
      const project = req.param("id");
      const body = await readBody(req.raw, entriesBody);
      if (!body) return refuse("unread-body", req.raw);
      const read = body.entries.map((entry) => entryShape.safeParse(entry));
      const good = read.flatMap(({ data }) => (data === undefined ? [] : [data]));
      const kept = await store.journal.append(project, good, {
        who: whoOf(context),
        time: now().toISOString(),
      });
      let next = 0;
      // One answer for each entry in its place: a phone's queue goes on, whatever becomes of one of them.
      const answers = read.map(({ success, error }, at) =>
        success
          ? kept[next++]
          : { kind: "refused", at, field: `/${error.issues[0]?.path.map(String).join("/") ?? ""}` },
      );
      const fresh = kept.filter(({ kind }) => kind === "fresh");
      const last = fresh.at(-1);
      if (last) {
        live.tell(project, { kind: "journal", number: last.number });
        // Not waited for: who told has the answer that it is on the disk.
        void folds.came(project, last.number);
      }
      return json({ answers }, req.raw, { status: fresh.length > 0 ? 201 : 200 });
    },
  );

  routes.get(`/${ID}/journal`, async ({ req }) => {
    const after = whole(req.query("after"));
    const before = whole(req.query("before"));
    const limit = whole(req.query("limit"), USUAL_PAGE);
    if (
      after === null ||
      before === null ||
      !limit ||
      limit > LARGEST_PAGE ||
      (after !== undefined && before)
    ) {
      return refuse("bad-range", req.raw, { values: { most: LARGEST_PAGE } });
    }
    const project = req.param("id");
    const page =
      after === undefined
        ? await store.journal.before(project, { limit, ...(before === undefined ? {} : { before }) })
        : await store.journal.after(project, { after, limit });
    return json(page, req.raw);
  });

  routes.get(`/${ID}/site`, async ({ req }) => sendAnswered(await folds.state(req.param("id")), req.raw));

  routes.get(`/${ID}/site/opening`, async ({ req }) =>
    sendAnswered(await folds.opening(req.param("id")), req.raw),
  );

  routes.get(`/${ID}/live`, async (context) => {
    const { req } = context;
    const project = req.param("id");
    const request = req.raw;
    const asker = context.get("person")?.id ?? "";
    const open = streams.get(asker) ?? 0;
    const all = [...streams.values()].reduce((sum, one) => sum + one, 0);
    // At this machine nobody is told apart: the pages open there share the larger number.
    const most = asker === "" ? MOST_STREAMS.all : MOST_STREAMS.person;
    if (open >= most || all >= MOST_STREAMS.all) return refuse("too-many", request);
    streams.set(asker, open + 1);
    const { latest } = await store.journal.after(project, { after: 0, limit: 0 });
    const revision = (await store.project(project))?.latest.number ?? 0;
    return newsStream({
      live,
      project,
      first: [
        { kind: "revision", number: revision },
        { kind: "journal", number: latest },
      ],
      mayListen: async () =>
        asker === "" || (await personBehind(request, { people: store.people, now })) !== undefined,
      ended: () => {
        const left = (streams.get(asker) ?? 1) - 1;
        if (left > 0) streams.set(asker, left);
        else streams.delete(asker);
      },
    });
  });

  for (const [path, allow] of [
    [`/${ID}/journal`, "GET, HEAD, POST"],
    [`/${ID}/site`, "GET, HEAD"],
    [`/${ID}/site/opening`, "GET, HEAD"],
    [`/${ID}/live`, "GET, HEAD"],
  ] as const) {
    routes.all(path, ({ req }) => refuse("method-not-here", req.raw, { values: { allow }, allow }));
  }
  return routes;
}

/** A whole number of a query; null where it is none. */
function whole(text: string | undefined, usual?: number): number | undefined | null {
  if (text === undefined) return usual;
  return /^\d{1,9}$/.test(text) ? Number(text) : null;
}

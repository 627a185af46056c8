/** The site journal over HTTP: told once, kept once, in pages, as a state, and as news. */
import { createHash } from "node:crypto";
import { strToU8, zipSync } from "fflate";
import { afterEach, beforeEach, expect, it } from "vitest";
import { type Guarded, guardedServer } from "../helpers/guarded.ts";
import { DEVICES, told } from "../helpers/journal.ts";
import { describeWithStore, ID, nth } from "../helpers/store.ts";

let server: Guarded;
let cookie = "";
beforeEach(async () => {
  server = await guardedServer();
  cookie = await server.signIn("Ben", "site");
});
afterEach(() => server.place.clear());

const path = `/api/projects/${ID}/journal`;
const tell = (entries: readonly unknown[]) => server.ask({ method: "POST", path, cookie, body: { entries } });
const read = async <Answer>(query = "", of = path): Promise<Answer> =>
  (await (await server.ask({ path: `${of}${query}`, cookie })).json()) as Answer;

describeWithStore("entries", () => {
  it("are numbered as they come; one that comes again is known, and another under its id is not kept", async () => {
    const first = await tell([told(1), told(2)]);
    expect([first.status, await first.json()]).toEqual([
      201,
      {
        answers: [
          { id: `${DEVICES[0]}-1`, number: 1, kind: "fresh" },
          { id: `${DEVICES[0]}-2`, number: 2, kind: "fresh" },
        ],
      },
    ]);
    const again = await tell([told(2), told(1, { place: { piece: "F-S9" } }), told(3)]);
    expect(await again.json()).toMatchObject({
      answers: [
        { number: 2, kind: "kept" },
        { number: 1, kind: "other" },
        { number: 3, kind: "fresh" },
      ],
    });
    expect((await tell([told(3)])).status).toBe(200);
    expect(await read("?after=0")).toMatchObject({ latest: 3 });
  });

  it("that are wrong hold up none of the others, and are named by place and field", async () => {
    const answer = await tell([told(1), told(2, { body: { stage: "painted" } }), 7, told(3)]);
    expect(await answer.json()).toMatchObject({
      answers: [
        { kind: "fresh" },
        { kind: "refused", at: 1, field: "/body/stage" },
        { at: 2 },
        { number: 2 },
      ],
    });
  });

  it("are the same however their fields are ordered", async () => {
    await tell([told(1)]);
    const turned = Object.fromEntries(Object.entries(told(1)).reverse());
    expect(await (await tell([turned])).json()).toMatchObject({ answers: [{ kind: "kept" }] });
  });

  it("are read forward from a number, and back from the latest", async () => {
    await tell(Array.from({ length: 7 }, (_, at) => told(at + 1)));
    const numbers = async (query: string) =>
      (await read<{ entries: { number: number }[] }>(query)).entries.map(({ number }) => number);
    expect(await numbers("?after=2&limit=3")).toEqual([3, 4, 5]);
    expect(await numbers("?limit=2")).toEqual([6, 7]);
    expect(await numbers("?before=6&limit=2")).toEqual([4, 5]);
    expect(await numbers("?after=7")).toEqual([]);
  });

  it("of one project are none of another's", async () => {
    await tell([told(1)]);
    expect(await read("", path.replace(ID, "f".repeat(24)))).toEqual({ entries: [], latest: 0 });
  });
});

describeWithStore("the state", () => {
  it("follows the journal, and says which entry it is made of", async () => {
    const state = () => read<{ latest: number; state: { pieces: object } }>("", `/api/projects/${ID}/site`);
    expect((await state()).latest).toBe(0);
    await tell([told(1), told(2)]);
    expect(await state()).toMatchObject({
      latest: 2,
      state: { pieces: { "F-S1": { stage: "cut" }, "F-S2": { stage: "cut" } } },
    });
    await tell([told(3, { kind: "undone", corrects: [`${DEVICES[0]}-1`], place: {}, body: {} })]);
    expect(Object.keys((await state()).state.pieces)).toEqual(["F-S2"]);
  });
});

describeWithStore("news", () => {
  it("tell what is there and then what comes, and end when the page leaves", async () => {
    await server.store.put(ID, nth(1));
    await tell([told(1)]);
    const stream = await server.ask({ path: `/api/projects/${ID}/live`, cookie });
    expect(stream.headers.get("content-type")).toContain("text/event-stream");
    const reader = (stream.body as ReadableStream<Uint8Array>).getReader();
    const next = async () => new TextDecoder().decode((await reader.read()).value);
    expect(await next()).toBe('event: revision\ndata: {"number":1}\n\n');
    expect(await next()).toBe('event: journal\ndata: {"number":1}\n\n');
    await tell([told(1), told(2)]);
    expect(await next()).toBe('event: journal\ndata: {"number":2}\n\n');
    await reader.cancel();
    // Eight at most of one person: none of the ones that were left counts.
    for (let n = 0; n < 20; n++) {
      const one = await server.ask({ path: `/api/projects/${ID}/live`, cookie });
      expect(one.status).toBe(200);
      await one.body?.cancel();
    }
  });
});

describeWithStore("issued sets", () => {
  it("are frozen by the office alone, of a state that is kept, and only as plain files", async () => {
    const document = { n: 1 };
    await server.store.put(ID, nth(1, undefined, { document }));
    const hash = createHash("sha256").update(JSON.stringify(document)).digest("hex");
    const files = { "drawings.pdf": strToU8("%PDF"), "cuts.csv": strToU8("mark,length\n") };
    const post = async (asked: { hash?: string; body?: Uint8Array; cookie?: string }) => {
      const query = new URLSearchParams({
        revision: "B",
        note: "for the saw",
        hash,
        ...(asked.hash && { hash: asked.hash }),
      });
      const path = `/api/projects/${ID}/issued?${query}`;
      const office = asked.cookie ?? (await server.signIn("Olga", "office"));
      return server.ask({ method: "POST", path, cookie: office, body: asked.body ?? zipSync(files) });
    };
    expect((await post({ cookie })).status).toBe(403);
    expect((await post({ hash: "0".repeat(64) })).status).toBe(409);
    expect((await post({ body: strToU8("no archive") })).status).toBe(422);
    expect((await post({ body: zipSync({ "../away.txt": strToU8("x") }) })).status).toBe(422);
    expect(await server.store.issued.list(ID)).toEqual([]);
    const frozen = await post({});
    expect([frozen.status, await frozen.json()]).toEqual([201, { number: 1 }]);
    // Sent again, as after a lost answer, it is the same set.
    expect(await (await post({})).json()).toEqual({ number: 1 });
    expect(await server.store.issued.list(ID)).toMatchObject([
      {
        number: 1,
        revision: "B",
        note: "for the saw",
        who: "Olga",
        hash,
        files: [{ name: "cuts.csv" }, { name: "drawings.pdf" }],
      },
    ]);
    const file = await server.ask({ path: `/api/projects/${ID}/issued/1/files/cuts.csv`, cookie });
    expect(await file.text()).toBe("mark,length\n");
  });

  it("are listed with their files, and each file comes back as it went out", async () => {
    const content = new TextEncoder().encode("mark,length\n");
    const set = { revision: "A", note: "for the saw", who: "Ada", time: "2026-05-04T06:00:00.000Z" };
    const frozen = { ...set, hash: "0".repeat(64), files: [{ name: "cuts.csv", content }] };
    await server.store.issued.freeze(ID, frozen);
    expect(await read("", `/api/projects/${ID}/issued`)).toMatchObject({
      issued: [{ number: 1, revision: "A", files: [{ name: "cuts.csv", bytes: 12 }] }],
    });
    const file = await server.ask({ path: `/api/projects/${ID}/issued/1/files/cuts.csv`, cookie });
    expect(await file.text()).toBe("mark,length\n");
    expect((await server.ask({ path: `/api/projects/${ID}/issued/2/files/cuts.csv`, cookie })).status).toBe(
      404,
    );
  });
});

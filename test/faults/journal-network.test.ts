/** Phones over a bad network: what they send is dropped, sent again and turned about; each entry is kept once. */
import fc from "fast-check";
import { afterEach, beforeEach, expect, it } from "vitest";
import type { Entry } from "../../src/site/journal/entry.ts";
import { foldJournal } from "../../src/site/journal/fold.ts";
import { type Guarded, guardedServer } from "../helpers/guarded.ts";
import { plain, told } from "../helpers/journal.ts";
import { describeWithStore, ID } from "../helpers/store.ts";

const ENTRIES = process.env.OUTERLEAF_SOAK ? 10_000 : 500;
const PHONES = 50;
const SEED = 20261130;

let server: Guarded;
beforeEach(async () => {
  server = await guardedServer();
});
afterEach(() => server.place.clear());

const path = `/api/projects/${ID}/journal`;

describeWithStore("50 phones", () => {
  it(`that tell ${ENTRIES} things with drops, repeats and reorders lose none and double none`, async () => {
    const chance = fc.sample(fc.nat(99), { seed: SEED, numRuns: ENTRIES * 20 });
    let drawn = 0;
    const outOf100 = (percent: number): boolean => (chance[drawn++ % chance.length] ?? 0) < percent;
    const phones = Array.from({ length: PHONES }, (_, phone) => phone.toString(16).padStart(16, "0"));
    const cookies: string[] = [];
    for (const device of phones) {
      cookies.push(await server.signIn(device, "site"));
      // Sign-ins of one address are limited; these come one by one.
      server.wait(60_000);
    }
    const all: Entry[] = phones.flatMap((device) =>
      Array.from({ length: ENTRIES / PHONES }, (_, at) => told(at + 1, { id: `${device}-${at + 1}` })),
    );
    await Promise.all(
      phones.map(async (device, phone) => {
        let queue = all.filter(({ id }) => id.startsWith(device));
        while (queue.length > 0) {
          if (outOf100(30)) queue = queue.reverse();
          const sent = queue.slice(0, 1 + ((chance[drawn++ % chance.length] ?? 0) % 20));
          // The request is lost on its way there …
          if (outOf100(20)) continue;
          const answer = await server.ask({
            method: "POST",
            path,
            cookie: cookies[phone],
            body: { entries: sent },
          });
          if (answer.status === 429) {
            server.wait(60_000);
            continue;
          }
          // … or its answer on the way back: the phone sends it all again.
          if (outOf100(20)) continue;
          const { answers } = (await answer.json()) as { answers: { id: string; kind: string }[] };
          const kept = new Set(answers.filter(({ kind }) => kind !== "refused").map(({ id }) => id));
          queue = queue.filter(({ id }) => !kept.has(id));
        }
      }),
    );
    const entries: Entry[] = [];
    const numbers: number[] = [];
    for (let after = 0; ; after = numbers.at(-1) ?? 0) {
      const page = await server.store.journal.after(ID, { after, limit: 1000 });
      if (page.entries.length === 0) break;
      numbers.push(...page.entries.map(({ number }) => number));
      entries.push(...page.entries.map(({ entry }) => entry as Entry));
    }
    expect(numbers).toEqual(all.map((_, at) => at + 1));
    expect(entries.map(({ id }) => id).sort()).toEqual(all.map(({ id }) => id).sort());
    expect(plain(foldJournal(entries))).toEqual(plain(foldJournal(all)));
  }, 3_600_000);
});

/** The devices on which someone is signed in, each by a name of its own: what a session's secret is, nobody is told. */
import type { Kysely } from "kysely";
import type { Tables } from "./tables.ts";

/** Until what was seen is written down again, milliseconds: a phone asks often, and each writing takes the disk. */
const SEEN_APART_MS = 300_000;

export interface Session {
  /** Names it, and lets nobody in. */
  readonly id: string;
  /** The device's name as it was given at sign-in; empty where none was. */
  readonly device: string;
  /** ISO 8601, UTC. */
  readonly begun: string;
  /** When it last asked for anything, to some minutes; null where that was before this was kept. */
  readonly seen: string | null;
  readonly until: string;
}

type Time = { readonly time: string };

export interface Sessions {
  /** Those of a person that are good, the one begun last in front. */
  of(person: string, now: Time): Promise<readonly Session[]>;
  /** Ends one; undefined where the person has none of this id that is good. */
  end(which: { readonly person: string; readonly id: string }, now: Time): Promise<Session | undefined>;
  /** Writes down that it was just used. */
  see(session: Pick<Session, "id" | "seen">, now: Time): Promise<void>;
}

const SHOWN = ["id", "device", "begun", "seen", "until"] as const;

export function sessionsIn(tables: Kysely<Tables>): Sessions {
  const good = (person: string, { time }: Time) =>
    tables
      .selectFrom("sessions")
      .select(SHOWN)
      .where("person", "=", person)
      .where("ended", "is", null)
      .where("until", ">", time);
  return {
    of: (person, now) => good(person, now).orderBy("begun", "desc").orderBy("id").execute(),

    async end({ person, id }, now) {
      const session = await good(person, now).where("id", "=", id).executeTakeFirst();
      if (!session) return undefined;
      const { numUpdatedRows } = await tables
        .updateTable("sessions")
        .set({ ended: now.time })
        .where("person", "=", person)
        .where("id", "=", id)
        .where("ended", "is", null)
        .executeTakeFirstOrThrow();
      return numUpdatedRows === 0n ? undefined : session;
    },

    async see({ id, seen }, { time }) {
      if (seen !== null && Date.parse(time) - Date.parse(seen) < SEEN_APART_MS) return;
      await tables.updateTable("sessions").set({ seen: time }).where("id", "=", id).execute();
    },
  };
}

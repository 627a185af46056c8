/** Who may come in from other devices, and what was done about that. Secrets are never here, only their SHA-256. */
import { type Kysely, sql } from "kysely";
import type { Role } from "./role.ts";
import type { Sessions } from "./sessions.ts";
import type { Tables } from "./tables.ts";
import type { Writing } from "./writing.ts";

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
}

/** Someone on a device that is signed in. */
export interface SignedIn extends Person {
  /** The id of that device's session. */
  readonly session: string;
}

export interface ListedPerson extends Person {
  /** ISO 8601, UTC. */
  readonly made: string;
  /** When the person was shut out; null for who may come in. */
  readonly revoked: string | null;
  /** Devices that are signed in. */
  readonly sessions: number;
  /** Until when an invitation waits to be used; null where none does. */
  readonly invited: string | null;
}

/** A secret by its hash, and until when it is good. */
export interface Lease {
  readonly hash: string;
  /** ISO 8601, UTC. */
  readonly until: string;
}

/** A session that begins. */
export interface NewSession extends Lease {
  /** Names it in lists; nothing of the secret. */
  readonly id: string;
  /** The device's name as it was given; empty where none was. */
  readonly device: string;
}

export interface Invitation extends Lease {
  /** For a person who is not there yet. */
  readonly id: string;
  readonly name: string;
  readonly role: Role;
}

/** What was done: signed in, refused, invited, shut out, restored … */
export interface AuditLine {
  readonly number: number;
  readonly time: string;
  readonly who: string;
  readonly what: string;
  readonly about: Readonly<Record<string, string>>;
}

type Time = { readonly time: string };

export interface People {
  list(now: Time): Promise<readonly ListedPerson[]>;
  /**
   * Invites a person, or one that is there already for another device. Undefined where someone of this name has another
   * role: whoever is to get another one is shut out first.
   */
  invite(invitation: Invitation, now: Time): Promise<Person | undefined>;
  /** Exchanges an invitation for a session, once. Undefined where it is used, too old, unknown, or its person shut out. */
  redeem(invitation: string, session: NewSession, now: Time): Promise<Person | undefined>;
  /** Whose session it is, which is written down as seen; undefined where it has ended. */
  signedIn(session: string, now: Time): Promise<SignedIn | undefined>;
  signOut(session: string, now: Time): Promise<void>;
  /** Shuts a person out: sessions and invitations end at once. False where there is nobody of this id to shut out. */
  revoke(id: string, now: Time): Promise<boolean>;
  note(line: Omit<AuditLine, "number">): Promise<void>;
  /** The latest in front. */
  noted(limit: number): Promise<readonly AuditLine[]>;
}

export function peopleIn(tables: Kysely<Tables>, writing: Writing, sessions: Sessions): People {
  return {
    list: async ({ time }) => {
      const rows = await tables
        .selectFrom("people")
        .selectAll()
        .select(({ selectFrom }) => [
          selectFrom("sessions")
            .select(sql<number>`count(*)`.as("count"))
            .whereRef("sessions.person", "=", "people.id")
            .where("ended", "is", null)
            .where("until", ">", time)
            .as("sessions"),
          selectFrom("invitations")
            .select(sql<string | null>`max(invitations.until)`.as("until"))
            .whereRef("invitations.person", "=", "people.id")
            .where("used", "is", null)
            .where("invitations.until", ">", time)
            .as("invited"),
        ])
        .orderBy("made")
        .orderBy("id")
        .execute();
      return rows.map((row) => ({ ...row, sessions: row.sessions ?? 0, invited: row.invited ?? null }));
    },

    invite: ({ id, name, role, hash, until }, { time }) =>
      writing(async (within) => {
        const held = await within
          .selectFrom("people")
          .select(["id", "name", "role"])
          .where("name", "=", name)
          .where("revoked", "is", null)
          .executeTakeFirst();
        if (held && held.role !== role) return undefined;
        const person = held ?? { id, name, role };
        if (!held) {
          await within
            .insertInto("people")
            .values({ ...person, made: time, revoked: null })
            .execute();
        }
        await within
          .insertInto("invitations")
          .values({ hash, person: person.id, until, used: null })
          .execute();
        return person;
      }),

    redeem: (invitation, session, { time }) =>
      writing(async (within) => {
        const person = await within
          .selectFrom("invitations")
          .innerJoin("people", "people.id", "invitations.person")
          .select(["people.id", "name", "role"])
          .where("hash", "=", invitation)
          .where("used", "is", null)
          .where("until", ">", time)
          .where("revoked", "is", null)
          .executeTakeFirst();
        if (!person) return undefined;
        await within.updateTable("invitations").set({ used: time }).where("hash", "=", invitation).execute();
        await within
          .insertInto("sessions")
          .values({ ...session, person: person.id, ended: null, begun: time, seen: time })
          .execute();
        return person;
      }),

    async signedIn(session, { time }) {
      const found = await tables
        .selectFrom("sessions")
        .innerJoin("people", "people.id", "sessions.person")
        .select(["people.id", "name", "role", "sessions.id as session", "seen"])
        .where("hash", "=", session)
        .where("ended", "is", null)
        .where("until", ">", time)
        .where("revoked", "is", null)
        .executeTakeFirst();
      if (!found) return undefined;
      const { seen, ...person } = found;
      await sessions.see({ id: person.session, seen }, { time });
      return person;
    },

    signOut: async (session, { time }) => {
      await tables
        .updateTable("sessions")
        .set({ ended: time })
        .where("hash", "=", session)
        .where("ended", "is", null)
        .execute();
    },

    revoke: (id, { time }) =>
      writing(async (within) => {
        const { numUpdatedRows } = await within
          .updateTable("people")
          .set({ revoked: time })
          .where("id", "=", id)
          .where("revoked", "is", null)
          .executeTakeFirstOrThrow();
        if (numUpdatedRows === 0n) return false;
        await within
          .updateTable("sessions")
          .set({ ended: time })
          .where("person", "=", id)
          .where("ended", "is", null)
          .execute();
        await within
          .updateTable("invitations")
          .set({ used: time })
          .where("person", "=", id)
          .where("used", "is", null)
          .execute();
        return true;
      }),

    note: async ({ about, ...line }) => {
      await tables
        .insertInto("audit")
        .values({ ...line, about: JSON.stringify(about) })
        .execute();
    },

    noted: async (limit) => {
      const rows = await tables
        .selectFrom("audit")
        .selectAll()
        .orderBy("number", "desc")
        .limit(limit)
        .execute();
      return rows.map((row) => ({ ...row, about: JSON.parse(row.about) as AuditLine["about"] }));
    },
  };
}

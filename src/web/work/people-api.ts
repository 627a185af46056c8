/** People who may come in from other devices, as the office asks the server for them. */

export const ROLES = ["office", "site", "reader"] as const;
export type Role = (typeof ROLES)[number];

export interface ListedPerson {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  /** ISO 8601, UTC; null for who may come in. */
  readonly revoked: string | null;
  /** Devices that are signed in. */
  readonly sessions: number;
  /** Until when an invitation waits to be used; null where none does. */
  readonly invited: string | null;
}

export interface Invitation {
  /** Shown this once. */
  readonly link: string;
  /** ISO 8601, UTC. */
  readonly until: string;
}

/** What was asked for, or the server's own sentence about why not. */
export type Asked<Answer> =
  | { readonly ok: true; readonly answer: Answer }
  | { readonly ok: false; readonly says: string | undefined };

export const fetchPeople = () =>
  asked("/api/people", {}, ({ people }: { people: readonly ListedPerson[] }) => people);

export const invite = (person: { readonly name: string; readonly role: Role }) =>
  asked(
    "/api/people",
    { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(person) },
    (made: Invitation) => made,
  );

export interface DeviceSession {
  readonly id: string;
  /** As given at sign-in; empty where no name was. */
  readonly device: string;
  /** ISO 8601, UTC; `seen` to some minutes. */
  readonly begun: string;
  readonly seen: string | null;
  /** It is this one. */
  readonly own: boolean;
}

export interface Me {
  readonly signedIn: boolean;
  readonly role: Role;
}

export const fetchMe = () => asked("/api/me", {}, (me: Me) => me);

/** @param of a person's id; absent for whoever asks */
const sessionsAt = (of: string | undefined): string =>
  of === undefined ? "/api/sessions" : `/api/people/${of}/sessions`;

export const fetchSessions = (of?: string) =>
  asked(sessionsAt(of), {}, ({ sessions }: { sessions: readonly DeviceSession[] }) => sessions);

export const endSession = (id: string, of?: string) =>
  asked(`${sessionsAt(of)}/${id}`, { method: "DELETE" }, () => true);

export const shutOut = (id: string) => asked(`/api/people/${id}`, { method: "DELETE" }, () => true);

async function asked<Body, Answer>(
  address: string,
  request: RequestInit,
  read: (body: Body) => Answer,
): Promise<Asked<Answer>> {
  try {
    const response = await fetch(address, request);
    const body = await response.json();
    return response.ok
      ? { ok: true, answer: read(body as Body) }
      : { ok: false, says: (body as { error?: { message?: string } }).error?.message };
  } catch {
    return { ok: false, says: undefined };
  }
}

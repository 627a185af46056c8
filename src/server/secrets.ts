/** Secrets that let in: made of 256 random bits, and known afterwards by their SHA-256 alone. */
import { randomBytes } from "node:crypto";
import type { Lease } from "../store/people.ts";
import { sha256 } from "./answers.ts";

/** How the text of a secret looks: base64url of 32 bytes. */
export const SECRET = /^[A-Za-z0-9_-]{43}$/;

const DAY_MS = 86_400_000;
export const INVITED_DAYS = 7;
const SIGNED_IN_DAYS = 90;

export interface Secret {
  /** To be given away once, and kept nowhere. */
  readonly text: string;
  readonly lease: Lease;
}

export const invitationSecret = (now: Date): Secret => secret(now, INVITED_DAYS);
export const sessionSecret = (now: Date): Secret => secret(now, SIGNED_IN_DAYS);

export const newPersonId = newId;
export const newSessionId = newId;

function newId(): string {
  return randomBytes(8).toString("hex");
}

function secret(now: Date, days: number): Secret {
  const text = randomBytes(32).toString("base64url");
  const until = new Date(now.getTime() + days * DAY_MS).toISOString();
  return { text, lease: { hash: sha256(text), until } };
}

/** The page that takes an invitation. Browsers send what stands behind the # to no server, and log it nowhere. */
export function invitationLink(address: string, { text }: Secret): string {
  return `${address.replace(/\/$/, "")}/join#${text}`;
}

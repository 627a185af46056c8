/** Every address of the programs' interface, with its role and its shapes: the door and the description both read it. */
import * as z from "zod";
import { entryShape } from "../../site/journal/entry.ts";
import type { Role } from "../../store/role.ts";
import {
  entriesBody,
  invitationBody,
  issuedQuery,
  knownBody,
  removalBody,
  revisionBody,
  signInBody,
} from "../bodies.ts";
import * as answers from "./answer-shapes.ts";

export interface Operation {
  readonly method: "get" | "put" | "post" | "delete";
  /** As OpenAPI writes it: `{id}` stands for one part. */
  readonly path: string;
  /** Who may, from other devices; whoever sits at this machine may everything. */
  readonly role: Role | "anyone";
  /** Its sentence is `api.…`. */
  readonly name: string;
  readonly query?: Readonly<Record<string, z.ZodType>>;
  /** Shape of the JSON that is sent, a picture's bytes, or those of a ZIP archive. */
  readonly body?: z.ZodType | "bytes" | "archive";
  /** Shape of the JSON that is answered, or a media type. */
  readonly answer: z.ZodType | string;
  /** Statuses of a good answer; 200 unless told. */
  readonly status?: readonly (200 | 201)[];
  /** Only where the listener asks for sign-in. */
  readonly guardedOnly?: true;
}

const MADE = [200, 201] as const;
const whole = z.int().nonnegative();

export const OPERATIONS: readonly Operation[] = [
  { method: "get", path: "/api/openapi.json", role: "reader", name: "openapi", answer: z.looseObject({}) },
  { method: "get", path: "/api/me", role: "anyone", name: "me", answer: answers.me },
  {
    method: "post",
    path: "/api/sign-in",
    role: "anyone",
    name: "sign-in",
    body: signInBody,
    answer: answers.me,
    guardedOnly: true,
  },
  {
    method: "post",
    path: "/api/sign-out",
    role: "reader",
    name: "sign-out",
    answer: z.strictObject({ signedIn: z.literal(false) }),
    guardedOnly: true,
  },
  { method: "get", path: "/api/people", role: "office", name: "people", answer: answers.people },
  {
    method: "post",
    path: "/api/people",
    role: "office",
    name: "invite",
    body: invitationBody,
    answer: answers.invitation,
    status: [201],
  },
  {
    method: "delete",
    path: "/api/people/{id}",
    role: "office",
    name: "revoke",
    answer: z.strictObject({ revoked: z.literal(true) }),
  },
  {
    method: "get",
    path: "/api/people/{id}/sessions",
    role: "office",
    name: "sessions-of",
    answer: answers.sessions,
  },
  {
    method: "delete",
    path: "/api/people/{id}/sessions/{session}",
    role: "office",
    name: "end-session-of",
    answer: answers.ended,
  },
  {
    method: "get",
    path: "/api/sessions",
    role: "reader",
    name: "own-sessions",
    answer: answers.sessions,
    guardedOnly: true,
  },
  {
    method: "delete",
    path: "/api/sessions/{session}",
    role: "reader",
    name: "end-own-session",
    answer: answers.ended,
    guardedOnly: true,
  },
  { method: "get", path: "/api/audit", role: "office", name: "audit", answer: answers.audit },
  { method: "get", path: "/api/project", role: "reader", name: "project", answer: answers.fileText },
  { method: "get", path: "/api/design", role: "reader", name: "design", answer: z.looseObject({}) },
  { method: "get", path: "/api/documents", role: "reader", name: "documents", answer: answers.documents },
  {
    method: "get",
    path: "/documents/{name}",
    role: "reader",
    name: "document",
    answer: "application/octet-stream",
  },
  { method: "get", path: "/api/projects", role: "reader", name: "projects", answer: answers.projects },
  {
    method: "get",
    path: "/api/projects/{id}",
    role: "reader",
    name: "kept-project",
    query: { file: z.string() },
    answer: answers.openedProject,
  },
  {
    method: "put",
    path: "/api/projects/{id}",
    role: "office",
    name: "put-revision",
    body: revisionBody,
    answer: z.strictObject({ revision: answers.revisionInfo }),
    status: MADE,
  },
  {
    method: "delete",
    path: "/api/projects/{id}",
    role: "office",
    name: "remove-project",
    body: removalBody,
    answer: z.strictObject({ removed: z.literal(true) }),
  },
  {
    method: "get",
    path: "/api/projects/{id}/revisions",
    role: "reader",
    name: "revisions",
    answer: z.strictObject({ revisions: z.array(answers.revisionInfo) }),
  },
  {
    method: "get",
    path: "/api/projects/{id}/revisions/{number}",
    role: "reader",
    name: "revision",
    answer: z.strictObject({ revision: answers.revision }),
  },
  {
    method: "post",
    path: "/api/projects/{id}/revisions/{number}/restore",
    role: "office",
    name: "restore-revision",
    answer: z.strictObject({ revision: answers.revisionInfo }),
    status: MADE,
  },
  {
    method: "post",
    path: "/api/projects/{id}/journal",
    role: "site",
    name: "tell",
    body: entriesBody.extend({ entries: z.array(entryShape).min(1).max(200) }),
    answer: answers.appended,
    status: MADE,
  },
  {
    method: "get",
    path: "/api/projects/{id}/journal",
    role: "reader",
    name: "journal",
    query: { after: whole, before: whole, limit: whole },
    answer: answers.journalPage,
  },
  { method: "get", path: "/api/projects/{id}/site", role: "reader", name: "site", answer: answers.siteState },
  {
    method: "get",
    path: "/api/projects/{id}/site/opening",
    role: "reader",
    name: "site-opening",
    answer: answers.siteOpening,
  },
  {
    method: "get",
    path: "/api/projects/{id}/live",
    role: "reader",
    name: "live",
    answer: "text/event-stream",
  },
  {
    method: "get",
    path: "/api/projects/{id}/issued",
    role: "reader",
    name: "issued",
    answer: answers.issued,
  },
  {
    method: "post",
    path: "/api/projects/{id}/issued",
    role: "office",
    name: "freeze-issued",
    query: issuedQuery.shape,
    body: "archive",
    answer: z.strictObject({ number: z.int().positive() }),
    status: [201],
  },
  {
    method: "get",
    path: "/api/projects/{id}/issued/{number}/files/{name}",
    role: "reader",
    name: "issued-file",
    answer: "application/octet-stream",
  },
  {
    method: "post",
    path: "/api/attachments/known",
    role: "site",
    name: "known-pictures",
    body: knownBody,
    answer: knownBody,
  },
  { method: "get", path: "/api/attachments/{sha256}", role: "reader", name: "picture", answer: "image/*" },
  {
    method: "put",
    path: "/api/attachments/{sha256}",
    role: "site",
    name: "put-picture",
    body: "bytes",
    answer: answers.picture,
    status: MADE,
  },
];

/** What the routes of kept projects accept. */
import * as z from "zod";
import { parseJson } from "../project/json.ts";
import { ROLES } from "../store/role.ts";
import type { Message, MessageValue } from "../text/message.ts";
import { SECRET } from "./secrets.ts";

/** Bytes; the largest example is a fiftieth of it. */
export const LARGEST_BODY = 4 * 1024 * 1024;

const shortText = z.string().max(500);
const messageValue: z.ZodType<MessageValue> = z.lazy(() =>
  z.union([shortText, z.number(), messageBody, z.array(messageValue).max(50)]),
);
const messageBody: z.ZodType<Message> = z.lazy(() =>
  z.strictObject({ key: z.string().min(1).max(100), values: z.record(z.string().max(50), messageValue) }),
);

export const revisionBody = z.strictObject({
  name: z.string().min(1).max(255),
  document: z.looseObject({}),
  says: messageBody,
});

/** Entries are read one by one, so that a bad one does not hold up the others. */
export const entriesBody = z.strictObject({ entries: z.array(z.unknown()).min(1).max(200) });

/** Characters of a device's name, as whoever signs in gives it. */
export const LONGEST_DEVICE = 60;

export const signInBody = z.strictObject({
  secret: z.string().regex(SECRET),
  device: z.string().trim().max(LONGEST_DEVICE).optional(),
});

export const invitationBody = z.strictObject({
  name: z.string().trim().min(1).max(100),
  role: z.enum(ROLES),
});

export const knownBody = z.strictObject({ sha256: z.array(z.string().regex(/^[0-9a-f]{64}$/)).max(500) });

/** Of a set that is frozen: as printed, and the document's hash. */
export const issuedQuery = z.object({
  revision: z.string().min(1).max(20),
  note: z.string().max(500),
  hash: z.string().regex(/^[0-9a-f]{64}$/),
});

export const removalBody = z.strictObject({ name: z.string().max(255) });

/** The body, or undefined where it is no JSON of this shape. */
export async function readBody<Body>(request: Request, shape: z.ZodType<Body>): Promise<Body | undefined> {
  if (!/^application\/json\b/i.test(request.headers.get("content-type") ?? "")) return undefined;
  const parsed = parseJson(await request.text());
  if (!parsed.ok) return undefined;
  const read = shape.safeParse(parsed.value);
  return read.success ? read.data : undefined;
}

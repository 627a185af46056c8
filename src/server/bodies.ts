/** What the routes of kept projects accept. */
import * as z from "zod";
import { parseJson } from "../project/json.ts";
import type { Message, MessageValue } from "../text/message.ts";

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

export const removalBody = z.strictObject({ name: z.string().max(255) });

/** The body, or undefined where it is no JSON of this shape. */
export async function readBody<Body>(request: Request, shape: z.ZodType<Body>): Promise<Body | undefined> {
  if (!/^application\/json\b/i.test(request.headers.get("content-type") ?? "")) return undefined;
  const parsed = parseJson(await request.text());
  if (!parsed.ok) return undefined;
  const read = shape.safeParse(parsed.value);
  return read.success ? read.data : undefined;
}

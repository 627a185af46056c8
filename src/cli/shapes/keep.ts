/** The published shapes of the commands that work on the database: people, backup, restore, export, import. */
import * as z from "zod";
import { ROLES } from "../../store/role.ts";

const schemaVersion = z.literal(1);
const role = z.enum(ROLES);
const person = z.object({ id: z.string(), name: z.string(), role });
const time = z.string().describe("ISO 8601, UTC.");
const count = z.int().nonnegative();

export const peopleShape = z.union([
  z.object({
    schemaVersion,
    people: z.array(
      person.extend({
        made: time,
        revoked: time.nullable(),
        sessions: count.describe("Devices that are signed in."),
        invited: time.nullable().describe("Until when an invitation waits to be used."),
      }),
    ),
  }),
  z.object({ schemaVersion, person, link: z.url().describe("Good for one use."), until: time }),
  z.object({ schemaVersion, person, revoked: time }),
]);

export const backupShape = z.object({ schemaVersion, file: z.string(), bytes: count });

export const restoreShape = z.object({
  schemaVersion,
  file: z.string(),
  before: z.string().optional().describe("Where the database that was there lies now."),
});

export const exportShape = z.object({ schemaVersion, id: z.string(), file: z.string(), bytes: count });

export const importShape = z.object({
  schemaVersion,
  id: z.string(),
  title: z.string(),
  revisions: count.describe("Added, as are the others."),
  entries: count,
  pictures: count,
  issued: count,
});

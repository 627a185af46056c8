/** What the programs' interface answers, as it is described to other programs. */
import * as z from "zod";
import { ENTRY_KINDS, entryId, entryShape, STAGES } from "../../site/journal/entry.ts";
import { ROLES } from "../../store/role.ts";

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const time = z.iso.datetime().describe("UTC.");
const number = z.int().positive();
const count = z.int().nonnegative();
const role = z.enum(ROLES);
const said = z.looseObject({ key: z.string(), values: z.looseObject({}) });
const who = z.string().describe("A person's name; empty for whoever sat at the server's own machine.");

export const me = z.strictObject({ signedIn: z.boolean(), name: z.string(), role });

export const people = z.strictObject({
  people: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      role,
      made: time,
      revoked: time.nullable(),
      sessions: count,
      invited: time.nullable(),
    }),
  ),
});

export const sessions = z.strictObject({
  sessions: z.array(
    z.strictObject({
      id: z.string().describe("Names it and lets nobody in: the secret is told nowhere."),
      device: z.string().describe("As given at sign-in; empty where no name was."),
      begun: time,
      seen: time.nullable().describe("To five minutes; null where it was not kept yet."),
      until: time,
      own: z.boolean().describe("It is the one that asks."),
    }),
  ),
});

export const ended = z.strictObject({ ended: z.literal(true) });

export const invitation = z.strictObject({
  person: z.strictObject({ id: z.string(), name: z.string(), role }),
  link: z.url().describe("Shown this once; good for one use."),
  until: time,
});

export const audit = z.strictObject({
  lines: z.array(
    z.strictObject({
      number,
      time,
      who,
      what: z.string(),
      about: z.record(z.string(), z.string()),
    }),
  ),
});

export const fileText = z.strictObject({ name: z.string(), text: z.string() });

const file = z.strictObject({ name: z.string(), bytes: count, sha256 });

export const documents = z.strictObject({ documents: z.array(file) });

export const revisionInfo = z.strictObject({
  number,
  parent: number.nullable(),
  hash: sha256,
  tag: z.string().describe("For If-Match."),
  says: said,
  time,
  who,
});

export const revision = revisionInfo.extend({ document: z.looseObject({}) });

const keptProject = z.strictObject({ id: z.string(), name: z.string(), title: z.string() });

export const projects = z.strictObject({
  store: z.boolean(),
  projects: z.array(keptProject.extend({ latest: revisionInfo })),
});

export const openedProject = keptProject.extend({ revision, knowsFile: z.boolean().optional() });

export const appended = z.strictObject({
  answers: z
    .array(
      z.union([
        z.strictObject({
          id: entryId,
          number,
          kind: z
            .enum(["fresh", "kept", "other"])
            .describe(
              "fresh: added now; kept: was there; other: another entry has this id, this one is not kept.",
            ),
        }),
        z.strictObject({
          kind: z.literal("refused"),
          at: count.describe("Which of those sent, from 0."),
          field: z.string().describe("JSON Pointer to what is wrong in it."),
        }),
      ]),
    )
    .describe("One for each entry, in the order sent."),
});

export const journalPage = z.strictObject({
  entries: z.array(z.strictObject({ number, who, time, entry: entryShape })),
  latest: count.describe("The number of the latest entry of all; 0 where there is none."),
});

const entries = z.array(entryShape);

const lists = z.strictObject({
  readings: entries,
  openings: entries,
  ends: entries,
  moisture: entries,
  photos: entries,
  holdPoints: entries,
  open: entries,
  settled: entries,
  notes: entries,
  upkeep: entries,
  short: entries,
});

const madeOf = count.describe("The number of the latest entry that it is made of.");

export const siteState = z.strictObject({
  latest: madeOf,
  state: lists.extend({
    pieces: z.record(z.string(), z.strictObject({ stage: z.enum(STAGES) })).describe("By mark."),
  }),
});

const packedTicks = z
  .strictObject({
    marks: z.array(z.string()),
    each: z.array(count).describe("How many ticks each mark has, in the order of the marks."),
    devices: z.array(z.string()),
    stage: z.array(count).describe(`One for each tick: 0 to ${STAGES.length - 1} for ${STAGES.join(", ")}.`),
    device: z.array(count).describe("One for each tick: its place among the devices."),
    count: z.array(count).describe("One for each tick: its number on the device."),
    told: z.array(time).describe("One for each tick: by the device's clock, UTC."),
  })
  .describe("The ticks that count, in columns.");

export const siteOpening = journalPage.extend({
  folded: z
    .strictObject({
      latest: madeOf,
      pieces: packedTicks,
      lists,
      version: number.describe("Of the reckoning: another may give another state."),
      rest: z
        .strictObject({
          settles: entries,
          seen: z
            .record(z.string(), z.array(z.tuple([number, number])))
            .describe("By device: first and last number of each run of entries that it is made of."),
          named: z
            .record(z.string(), z.array(z.enum(ENTRY_KINDS)))
            .describe("Entries that were named and have not come, with the kinds of those that named them."),
        })
        .describe("What it takes, beside the state, to reckon on with later entries."),
    })
    .nullable()
    .describe(
      "What the journal came to at an earlier entry; null for a short one. The entries are those after it.",
    ),
});

export const issued = z.strictObject({
  issued: z.array(
    z.strictObject({
      number,
      revision: z.string(),
      note: z.string(),
      who,
      time,
      hash: sha256,
      files: z.array(file),
    }),
  ),
});

export const picture = z.strictObject({ sha256, type: z.string(), bytes: count });

export const refusal = z.looseObject({ error: z.looseObject({ code: z.string(), message: z.string() }) });

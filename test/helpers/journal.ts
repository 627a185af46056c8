/** Entries of a site that is made up, and ways in which a network mistreats them. */
import fc from "fast-check";
import { type Entry, STAGES } from "../../src/site/journal/entry.ts";
import type { SiteState } from "../../src/site/journal/fold.ts";

export const DEVICES = ["0a".repeat(8), "b1".repeat(8), "c2".repeat(8)] as const;

const TOLD = "2026-05-04T07:30:00Z";
export const PHOTO = "ab".repeat(32);

/** The nth thing that a device told: a tick, unless told otherwise. */
export function told(count: number, more: Readonly<Record<string, unknown>> = {}, device = 0): Entry {
  return {
    id: `${DEVICES[device]}-${count}`,
    told: TOLD,
    kind: "piece",
    place: { face: "front", piece: `F-S${count}` },
    body: { stage: "cut" },
    ...more,
  } as Entry;
}

/** All that a state says, as plain values. */
export function plain({ pieces, ...lists }: SiteState) {
  const marks = pieces.marks();
  return {
    ...lists,
    pieces: Object.fromEntries(marks.map((mark) => [mark, pieces.of(mark)])),
    stages: Object.fromEntries(marks.map((mark) => [mark, pieces.stage(mark)])),
  };
}

const body = fc.oneof(
  fc.record({
    kind: fc.constant("piece"),
    place: fc.record({ piece: fc.constantFrom("F-S1", "F-S2", "F-S3") }),
    body: fc.record({ stage: fc.constantFrom(...STAGES) }),
  }),
  fc.record({
    kind: fc.constant("reading"),
    place: fc.record({ face: fc.constant("front"), x: fc.constantFrom(0, 610), y: fc.constantFrom(0, 800) }),
    body: fc.record({ outward: fc.integer({ min: -9, max: 9 }) }),
  }),
  fc.record({
    kind: fc.constantFrom("note", "finding"),
    place: fc.constant({ face: "front" }),
    body: fc.record({ says: fc.constantFrom("a lap is open", "tape is missing") }),
  }),
  fc.record({
    kind: fc.constant("hold-point"),
    place: fc.constant({ face: "front" }),
    body: fc.record({
      point: fc.constantFrom("H1", "H3"),
      signed: fc.constant("Ada"),
      seen: fc.constant(["laps"]),
      photos: fc.constant([PHOTO]),
    }),
  }),
  fc.record({ kind: fc.constant("undone"), place: fc.constant({}), body: fc.constant({}) }),
  fc.record({
    kind: fc.constant("settled"),
    place: fc.constant({}),
    body: fc.record({ finding: fc.nat(40).map(String) }),
  }),
);

/** A journal in which entries correct, take back and settle one another, in loops as well. */
export const journal: fc.Arbitrary<readonly Entry[]> = fc
  .array(
    fc.record({
      device: fc.nat(2),
      body,
      corrects: fc.option(fc.array(fc.nat(40), { minLength: 1, maxLength: 3 }), { nil: undefined }),
    }),
    { maxLength: 40 },
  )
  .map((drawn) => {
    const ids = drawn.map(({ device }, at) => `${DEVICES[device]}-${at + 1}`);
    const named = (at: number): string => ids[at % ids.length] as string;
    return drawn.map(({ body: one, corrects }, at): Entry => {
      const wanted = one.kind === "undone" ? (corrects ?? [at + 1]) : corrects;
      const others = wanted?.map(named).filter((id) => id !== ids[at]);
      const about = "finding" in one.body ? { body: { finding: named(Number(one.body.finding)) } } : {};
      return {
        ...one,
        ...about,
        id: ids[at],
        told: TOLD,
        ...(others === undefined || others.length === 0 ? {} : { corrects: others }),
      } as Entry;
    });
  });

/** The same entries in another order, some of them again. */
export function mistreated(entries: readonly Entry[]): fc.Arbitrary<readonly Entry[]> {
  return fc
    .tuple(
      fc.shuffledSubarray([...entries], { minLength: entries.length, maxLength: entries.length }),
      fc.subarray([...entries]),
      fc.subarray([...entries]),
    )
    .map(([all, again, before]) => [...before.reverse(), ...all, ...again]);
}

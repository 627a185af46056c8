/** Two edits of one document become one: what must hold of every merge, on small documents whose edits meet often. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mergeDocuments, type Side, takenFrom } from "../../src/project/merge.ts";
import { type Change, changesOf, type Place, sameJson } from "../../src/project/versions.ts";

const often = { seed: 20_261_129, numRuns: process.env.OUTERLEAF_SOAK ? 50_000 : 600 };

const word = fc.constantFrom("a", "b", "c");
const opening = fc.record(
  { id: fc.constantFrom("W1", "W2", "W3"), kind: word, x: fc.tuple(fc.nat(2), fc.nat(2)), note: word },
  { requiredKeys: ["id", "kind", "x"] },
);
const named = <One extends { id: string }>(one: fc.Arbitrary<One>, maxLength: number) =>
  fc.uniqueArray(one, { selector: ({ id }) => id, maxLength });
const faceOf = (...ids: string[]) =>
  fc.record(
    {
      id: fc.constantFrom(...ids),
      code: word,
      eaves: fc.record({ depth: fc.nat(2) }),
      openings: named(opening, 3),
    },
    { requiredKeys: ["id", "code", "openings"] },
  );
const document = fc.record(
  {
    title: word,
    faces: named(faceOf("N", "E", "S"), 3),
    retired: fc.uniqueArray(fc.constantFrom("W7", "W8", "W9")),
    widths: fc.array(fc.nat(2), { maxLength: 3 }),
  },
  { requiredKeys: ["title", "faces"] },
);
const three = [document, document, document] as const;

/** What stands at a place, found without the code under test. */
function at(value: unknown, place: Place): unknown {
  const [name, ...rest] = place;
  if (name === undefined || value === undefined) return value;
  const inner = Array.isArray(value)
    ? value.find((one: unknown) => one === name || (one as { id?: string }).id === name)
    : (value as Record<string, unknown>)[name];
  return at(inner, rest);
}

const onOneWay = (a: Place, b: Place): boolean => a.every((name, i) => i >= b.length || name === b[i]);
const values = (changes: readonly Change[]) => changes.filter(({ kind }) => kind === "value");
const all = (conflicts: readonly { key: string }[], side: Side) =>
  new Map(conflicts.map(({ key }) => [key, side]));

describe("a merge", () => {
  it("of the same edit twice, or of one edit and none, is that edit", () => {
    fc.assert(
      fc.property(document, document, (base, a) => {
        for (const [mine, other] of [
          [a, a],
          [base, a],
          [a, base],
        ]) {
          expect(mergeDocuments({ base, mine, other })).toEqual({ document: a, conflicts: [] });
        }
      }),
      often,
    );
  });

  it("keeps all of mine, and of the other what meets no conflict", () => {
    fc.assert(
      fc.property(...three, (base, mine, other) => {
        const { document: merged, conflicts } = mergeDocuments({ base, mine, other });
        for (const { place, after } of values(changesOf(base, mine))) {
          const inner = values(changesOf(base, other)).filter((one) => onOneWay(place, one.place));
          // Inside what I put in whole the other may have put in more.
          if (inner.length === 0) expect(at(merged, place)).toEqual(after);
        }
        for (const { place, after } of values(takenFrom({ base, mine, other }, conflicts))) {
          if (values(changesOf(base, mine)).some((one) => onOneWay(one.place, place))) continue;
          expect(at(merged, place)).toEqual(after);
        }
      }),
      often,
    );
  });

  it("loses no conflict: where both changed one thing otherwise, it is asked", () => {
    fc.assert(
      fc.property(...three, (base, mine, other) => {
        const { conflicts } = mergeDocuments({ base, mine, other });
        for (const a of values(changesOf(base, mine))) {
          for (const b of values(changesOf(base, other))) {
            if (!sameJson(a.place, b.place) || sameJson(a.after, b.after)) continue;
            // Lists that neither found are begun by both, and stand in one.
            if (a.before === undefined && Array.isArray(a.after) && Array.isArray(b.after)) continue;
            expect(conflicts.some(({ place }) => onOneWay(place, a.place))).toBe(true);
          }
        }
      }),
      often,
    );
  });

  it("is the same whoever is called mine, as long as the same side is chosen", () => {
    fc.assert(
      fc.property(...three, fc.boolean(), (base, a, b, first) => {
        const [one, two] = [
          mergeDocuments({ base, mine: a, other: b }),
          mergeDocuments({ base, mine: b, other: a }),
        ];
        expect(one.conflicts.map(({ key }) => key).sort()).toEqual(
          two.conflicts.map(({ key }) => key).sort(),
        );
        const chosen: [Side, Side] = first ? ["mine", "other"] : ["other", "mine"];
        const merged = mergeDocuments({ base, mine: a, other: b }, all(one.conflicts, chosen[0]));
        const turned = mergeDocuments({ base, mine: b, other: a }, all(two.conflicts, chosen[1]));
        expect(turned.document).toEqual(merged.document);
      }),
      often,
    );
  });

  it("of edits that lie apart asks nothing and holds both", () => {
    const left = fc.record({ faces: named(faceOf("N", "A1", "A2"), 3), title: word });
    const right = fc.record({ faces: named(faceOf("S", "B1", "B2"), 3), widths: fc.array(fc.nat(2)) });
    fc.assert(
      fc.property(left, right, left, right, (l, r, l2, r2) => {
        const faces = (a: typeof l, b: typeof r) => [
          ...[...a.faces].sort((x, y) => (x.id < y.id ? -1 : 1)),
          ...[...b.faces].sort((x, y) => (x.id < y.id ? -1 : 1)),
        ];
        const of = (a: typeof l, b: typeof r) => ({ title: a.title, widths: b.widths, faces: faces(a, b) });
        const base = of(l, r);
        const merged = mergeDocuments({ base, mine: of(l2, r), other: of(l, r2) });
        const wanted = of(l2, r2);
        expect(merged.conflicts).toEqual([]);
        expect(merged.document).toMatchObject({ title: wanted.title, widths: wanted.widths });
        const byId = (list: readonly { id: string }[]) => [...list].sort((x, y) => (x.id < y.id ? -1 : 1));
        expect(byId((merged.document as typeof base).faces)).toEqual(byId(wanted.faces));
      }),
      often,
    );
  });
});

describe("by hand", () => {
  const W1 = { id: "W1", x: [0, 900], y: [0, 1200] };
  const W2 = { id: "W2", x: [2000, 2900], y: [0, 1200] };
  const base = { faces: [{ id: "front", openings: [W1, W2] }] };
  const front = (...openings: object[]) => ({ faces: [{ id: "front", openings }] });

  it("a window moved by one and another widened by the other are both so", () => {
    const mine = front({ ...W1, y: [100, 1300] }, W2);
    const other = front(W1, { ...W2, x: [2000, 3000] });
    expect(mergeDocuments({ base, mine, other })).toEqual({
      document: front({ ...W1, y: [100, 1300] }, { ...W2, x: [2000, 3000] }),
      conflicts: [],
    });
  });

  it("a window that one took out and the other widened is asked for, and either can be had", () => {
    const mine = front(W1);
    const other = front(W1, { ...W2, x: [2000, 3000] });
    const { document: held, conflicts } = mergeDocuments({ base, mine, other });
    expect(held).toEqual(mine);
    expect(conflicts).toMatchObject([
      { key: "value /faces/front/openings/W2", mine: undefined, base: W2, other: { x: [2000, 3000] } },
    ]);
    expect(mergeDocuments({ base, mine, other }, all(conflicts, "other")).document).toEqual(other);
  });

  it("two windows of one id that each put in are one question, never a window of both", () => {
    const mine = front(W1, W2, { id: "W3", x: [0, 1] });
    const other = front(W1, W2, { id: "W3", x: [5, 6] });
    const { conflicts } = mergeDocuments({ base, mine, other });
    expect(conflicts.map(({ place }) => place)).toEqual([["faces", "front", "openings", "W3"]]);
  });

  it("what each took out stands in one list of what was taken out", () => {
    const merged = mergeDocuments({ base: {}, mine: { retired: ["W1"] }, other: { retired: ["W2"] } });
    expect(merged).toEqual({ document: { retired: ["W1", "W2"] }, conflicts: [] });
  });

  it("both in another order is asked for", () => {
    const three = (...ids: string[]) => ({ faces: ids.map((id) => ({ id })) });
    const versions = { base: three("a", "b", "c"), mine: three("b", "a", "c"), other: three("a", "c", "b") };
    const { conflicts } = mergeDocuments(versions);
    expect(conflicts).toMatchObject([{ key: "order /faces", kind: "order", mine: ["b", "a", "c"] }]);
    expect(mergeDocuments(versions, all(conflicts, "other")).document).toEqual(versions.other);
  });
});

/** What is finished together, against the plain definition: of each face and finish all pieces, in their order. */
import fc from "fast-check";
import { expect, it } from "vitest";
import type { FaceLayout } from "../../src/setout/facade.ts";
import { finishBatches } from "../../src/takeoff/finish-batches.ts";
import type { FinishLine, PieceLine } from "../../src/takeoff/model.ts";

const FACES = ["west", "front", "east"];
const FINISHES = ["oil", "stain", "tar"];

const size = fc.integer({ min: 1, max: 4000 });
const finish = fc.constantFrom(...FINISHES);

const piece = fc.record(
  {
    mark: fc.string({ minLength: 1, maxLength: 4 }),
    kind: fc.constant("board" as const),
    // One that the facade does not have, too.
    face: fc.constantFrom(...FACES, "gone"),
    length: size,
    width: size,
    thickness: size,
    material: fc.constant("larch"),
    massKg: fc.constant(1),
    finish,
  },
  { requiredKeys: ["mark", "kind", "face", "length", "width", "thickness", "material", "massKg"] },
);

const line = fc.record(
  {
    cladding: fc.constant("boards"),
    finish,
    areaM2: fc.constantFrom(0, 1, 12.5),
    coats: fc.integer({ min: 1, max: 4 }),
    dryingDays: fc.integer({ min: 1, max: 4 }),
    litres: fc.record({ least: fc.integer({ min: 1, max: 9 }), most: fc.integer({ min: 9, max: 20 }) }),
  },
  { requiredKeys: ["cladding", "finish", "areaM2"] },
);

/** Each batch by looking through everything for it. */
function plainly(
  pieces: readonly PieceLine[],
  finishes: readonly FinishLine[],
  faces: readonly FaceLayout[],
) {
  const names = finishes.map((one) => one.finish).filter((name, i, all) => all.indexOf(name) === i);
  return faces.flatMap(({ id, code }) =>
    names.flatMap((name, at) => {
      const own = pieces.filter((one) => one.face === id && one.finish === name);
      const first = finishes.find((one) => one.finish === name);
      const sides = own.map((one) => [
        one.length * one.width,
        one.length * one.thickness,
        one.width * one.thickness,
      ]);
      const areaM2 = sides.reduce((sum, [a = 0, b = 0, c = 0]) => sum + 2 * (a + b + c), 0) / 1e6;
      const share = first && first.areaM2 > 0 ? areaM2 / first.areaM2 : 0;
      const { coats, dryingDays, litres } = first ?? {};
      return own.length === 0
        ? []
        : [
            {
              code: `${code}-F${at + 1}`,
              face: id,
              finish: name,
              pieces: own,
              areaM2,
              ...(coats === undefined ? {} : { coats }),
              ...(dryingDays === undefined ? {} : { dryingDays }),
              ...(litres === undefined
                ? {}
                : { litres: { least: litres.least * share, most: litres.most * share } }),
            },
          ];
    }),
  );
}

const faces = FACES.map((id, i) => ({ id, code: `${i}` }) as FaceLayout);

it("is every piece of a face and finish, once, in order, with its share of what the finish takes", () => {
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 40 }), fc.array(line, { maxLength: 5 }), (pieces, finishes) => {
      expect(finishBatches({ pieces, finishes }, { faces })).toEqual(plainly(pieces, finishes, faces));
    }),
  );
});

it("reads each piece a few times, however many faces there are", () => {
  const finishes: FinishLine[] = [{ cladding: "boards", finish: "oil", areaM2: 1 }];
  const many = Array.from({ length: 1000 }, (_, i) => ({ id: `face-${i}`, code: `${i}` }) as FaceLayout);
  let looked = 0;
  const pieces = Array.from(
    { length: 20_000 },
    (_, i): PieceLine =>
      new Proxy<PieceLine>(
        {
          mark: `B${i}`,
          kind: "board",
          face: `face-${i % many.length}`,
          length: 1000,
          width: 100,
          thickness: 20,
          material: "larch",
          massKg: 1,
          finish: "oil",
        },
        {
          get(of, name) {
            looked += 1;
            return Reflect.get(of, name);
          },
        },
      ),
  );
  expect(finishBatches({ pieces, finishes }, { faces: many }).length).toBe(many.length);
  expect(looked).toBeLessThan(pieces.length * 20);
});

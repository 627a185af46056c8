/**
 * Coplanar claddings by plain arithmetic (common practice, the builder's own sums) and published rules of board
 * proportion: 4:1 to 6:1 (BS 8605-1:2014, at second hand), up to 7:1 (German handbook, at second hand).
 */
import { describe, expect, it } from "vitest";
import { message } from "../../src/text/message.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { ALL, exampleDocument, FRONT, findingsAfter, nameOf, search } from "../helpers/plane-search.ts";

/** Four bare walls: what lines the recess has battens of its own. */
function withoutRecess(document: ReturnType<typeof exampleDocument>) {
  const inside = (id: string): boolean => id.startsWith("recess-");
  document.faces = document.faces.filter(({ id }) => !inside(id));
  document.corners = (document.corners ?? []).filter(({ left }) => !inside(left));
  document.buildUps = document.buildUps.filter(({ id }) => !inside(id));
  document.claddings = document.claddings.filter(({ id }) => !inside(id));
  for (const { openings } of document.faces) {
    for (const opening of openings) {
      delete opening.linedBy;
      delete opening.soffit;
    }
  }
  return document;
}

/** 6 mm sheets on 38 mm battens, 19 mm boards on 19 mm battens, nothing else in stock but packers. */
function thinClad() {
  const document = withoutRecess(exampleDocument());
  document.claddings.forEach((cladding) => {
    cladding.thickness = cladding.kind === "boards" ? 19 : 6;
  });
  const [boards, sheets] = document.buildUps;
  const behind = (boards?.layers ?? []).slice(0, 2);
  if (boards) boards.layers = [...behind, { kind: "batten", stock: "b19x64" }];
  if (sheets) sheets.layers = [...behind, { kind: "batten", stock: "b38x64" }];
  document.stock.battens = document.stock.battens.filter(({ id }) => id === "b19x64" || id === "b38x64");
  // The bare faces keep a batten that is left.
  const bare = document.buildUps[2];
  if (bare)
    bare.layers = [
      { kind: "membrane", thickness: 0, lightStable: true },
      { kind: "batten", stock: "b38x64" },
    ];
  // 15 mm of bite, and screws for it: 36 − 19 = 17 in 19 mm, 38 − 6 = 32 in 38 mm.
  document.limits.screwBite.cladding.value = 15;
  document.stock.screws.push({ id: "board-36", use: "board", diameter: 4.5, headDiameter: 8, length: 36 });
  return document;
}

describe("6 mm sheets on 38 mm battens against 19 mm boards on 19 mm battens (common practice)", () => {
  const found = search(thinClad(), { show: ALL });
  // 38 + 6 = 44; 19 + 19 = 38.
  const onThese = found.passing.filter(
    ({ buildUps }) => buildUps[0]?.battens[0] === "b19x64" && buildUps[1]?.battens[0] === "b38x64",
  );

  it("stand 6 mm apart, which packers 5 + 1 close", () => {
    const exact = onThese.filter(
      ({ merit, buildUps }) => merit.step === 0 && buildUps[1]?.packers.length === 0,
    );
    expect(exact.map(({ buildUps }) => buildUps[0]?.packers)).toEqual([[5, 1]]);
  });

  it("meet within 1 mm with one packer of 5, which ranks before 5 + 1 for being one piece", () => {
    const packers = onThese
      .filter(({ buildUps }) => buildUps[1]?.packers.length === 0)
      .map(({ buildUps }) => buildUps[0]?.packers);
    expect(packers).toEqual([[5], [5, 1], [5, 2]]);
  });

  it("are left apart by packers of other sums", () => {
    for (const { merit } of onThese) expect(Math.abs(merit.step)).toBeLessThanOrEqual(1);
    const sums = found.passing.map(({ buildUps }) =>
      buildUps.map(({ packers }) => packers.reduce((sum, one) => sum + one, 0)),
    );
    expect(sums.some(([boards = 0, sheets = 0]) => boards - sheets === 4)).toBe(false);
  });

  it("are one plane once the edit is in, with the screws found", () => {
    const exact = onThese.find(({ merit }) => merit.step === 0);
    const after = findingsAfter(thinClad(), exact?.edit ?? []);
    expect(after.steps.map(({ outcome, demand }) => ({ outcome, demand }))).toEqual([
      { outcome: "pass", demand: 0 },
    ]);
    expect(exact?.claddings).toMatchObject([{ screw: "board-36" }, { screw: "sheet-38" }]);
  });
});

describe("the demo's own build-ups: 51 + 2 + 25 + 20 against 51 + 38 + 1 + 8 (common practice)", () => {
  const found = search(exampleDocument(), { show: ALL });

  it("lie at 98 over 51 of wool and rank first: no combination with fewer packers passes", () => {
    expect(nameOf(found.passing[0] as (typeof found.passing)[number])).toBe("b25x64+2|b38x64+ 20|8");
    expect(found.passing[0]).toMatchObject({
      present: true,
      edit: [],
      merit: { packers: 1, step: 0, plane: 98 },
    });
    expect(found.passing[0]?.zones).toMatchObject([
      { face: "west", faceZ: 98, backZ: 78, cavity: 27 },
      { face: "front", faceZ: 98, backZ: 78, cavity: 27 },
      { face: "front", faceZ: 98, backZ: 90, cavity: 39 },
    ]);
    expect(found.passing.filter(({ merit }) => merit.packers === 0)).toEqual([]);
  });

  it("show what the frames at 71 leave: reveals of 98 − 71 = 27", () => {
    const reveals = found.passing[0]?.zones.flatMap((zone) => zone.reveals);
    expect(reveals).toEqual([
      { opening: "W3", reveal: 27 },
      { opening: "W2", reveal: 27 },
      { opening: "D1", reveal: 27 },
    ]);
  });
});

describe("boards of 126 mm planed thinner", () => {
  const planed = search(exampleDocument(), { zones: FRONT, planing: { most: 4, step: 1 }, show: ALL });
  const proportionAt = (thickness: number) =>
    [...planed.passing, ...planed.failing]
      .find(({ claddings }) => claddings[0]?.thickness === thickness)
      ?.attention.find(({ rule }) => rule === "proportion");

  it.each([
    // 126 / 20 = 6.3 and 126 / 18 = 7.0 leave the British family; 126 / 17 = 7.4 and 126 / 16 = 7.9 the handbook's 7:1 too.
    [20, ["bs-8605-1"]],
    [18, ["bs-8605-1"]],
    [17, ["bs-8605-1", "german-handbook"]],
    [16, ["bs-8605-1", "german-handbook"]],
  ])("to %s mm leave %j", (thickness, refused) => {
    const said = proportionAt(thickness);
    expect(said?.demand).toBeCloseTo(126 / thickness, 9);
    const text = say(said?.says ?? message(""), ENGLISH_MM);
    for (const id of ["bs-8605-1", "german-handbook", "german-rule"]) {
      const rule = say(message(`proof.rule.${id}`), ENGLISH_MM);
      expect({ id, refused: text.indexOf(rule) < text.indexOf("within") }).toEqual({
        id,
        refused: refused.includes(id),
      });
    }
  });
});

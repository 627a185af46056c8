/**
 * Proportion of boards as each source prints it: BS 8605-1:2014 (4:1 to 6:1, at most 150 mm), the draft Fachregel 01 of the
 * German carpentry trade (11:1; battens at most 40 times the thickness, better 25), a German handbook (7:1). All at second
 * hand. PS 20 dressed sizes serve as the boards.
 */
import { describe, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import { boardProportion } from "../../src/proof/board-proportion.ts";
import { boardsOf, proofFixture } from "../helpers/proof-fixture.ts";

/** Rule families that refuse a board of this width and thickness (mm). */
function refusing(width: number, thickness: number): string[] {
  const [found] = boardProportion(
    proofFixture({
      project: (project) => Object.assign(boardsOf(project), { widths: [width], thickness }),
      facade: ({ faces }) => void faces[0]!.pieces.splice(0),
    }),
  );
  const refused = found?.says.values.refused as unknown as { values: { rule: { key: string } } }[];
  return refused.map(({ values }) => values.rule.key.replace("proof.rule.", ""));
}

describe("dressed boards of PS 20", () => {
  it.each([
    ["1x4", 89, 19, []],
    ["1x6", 140, 19, ["bs-8605-1", "german-handbook"]],
    ["1x8", 184, 19, ["bs-8605-1", "german-handbook"]],
    ["2x2", 38, 38, ["bs-8605-1"]],
    ["2x6", 140, 38, ["bs-8605-1"]],
  ])("%s", (_, width, thickness, refused) => {
    expect(refusing(width, thickness)).toEqual(refused);
  });

  it("11 to 1 is the last that the German rule allows", () => {
    expect(refusing(220, 20)).not.toContain("german-rule");
    expect(refusing(221, 20)).toContain("german-rule");
  });

  it("a board of 6 to 1 is still too wide over 150 mm", () => {
    expect(refusing(150, 25)).toEqual([]);
    expect(refusing(151, 30)).toEqual(["bs-8605-1"]);
  });
});

it("battens for 20 mm boards: at most 800, better 500 mm", () => {
  const { boards } = demandsOf(proofFixture().project);
  expect(boards.boards?.battenCentresMm).toMatchObject({ most: 800, better: 500 });
});

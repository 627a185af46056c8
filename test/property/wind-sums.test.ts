/**
 * What the screws of a board or sheet hold of the wind adds up to all of it: the reactions of its strips times the widths that their screws
 * share, over all screws, are its area (statics; no source needed). What battens and rails hold is never less than what lies on them.
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { intervalLength } from "../../src/geometry/interval.ts";
import { readProject } from "../../src/project/read.ts";
import { proofContext } from "../../src/proof/context.ts";
import { type Member, membersOf, screwShares } from "../../src/proof/wind/members.ts";

const EXAMPLES = readdirSync("examples").filter((name) => name.endsWith(".outerleaf.json"));

const areaOf = ({ box }: Member): number => intervalLength(box.x) * intervalLength(box.y);
const held = (member: Member): number => screwShares(member).reduce((sum, { areaMm2 }) => sum + areaMm2, 0);

describe.each(EXAMPLES)("%s", (name) => {
  const read = readProject(readFileSync(`examples/${name}`, "utf8"), name);
  if (!read.ok) throw new Error(`${name} is not read`);
  const { project } = read;
  const { facade, demands } = design(project);
  const zones = proofContext({ project, facade, demands }).zones.map((view) => ({
    view,
    members: membersOf(view),
  }));

  it("every board and sheet hangs on its own screws, whole", () => {
    const skins = zones.flatMap(({ members }) => members.skins);
    expect(skins.length).toBeGreaterThan(10);
    for (const skin of skins) {
      if (skin.supports.length === 0) continue;
      expect(Math.abs(held(skin) / areaOf(skin) - 1)).toBeLessThan(1e-9);
    }
  });

  it("battens and rails hold at least what is screwed to them", () => {
    for (const { members } of zones) {
      const onto = new Map<string, number>();
      for (const skin of members.skins)
        for (const { fixing, areaMm2 } of screwShares(skin))
          onto.set(fixing.into, (onto.get(fixing.into) ?? 0) + areaMm2);
      for (const carrier of members.carriers) {
        const hung = onto.get(carrier.piece.mark);
        // Of two battens close together one is pressed on where the other is pulled off.
        if (hung === undefined || hung <= 0 || carrier.supports.length === 0) continue;
        expect(held(carrier) / hung).toBeGreaterThan(1 - 1e-9);
      }
    }
  });
});

/** Every edit that the plane search offers, put into the project and set out. */
import { describe, expect, it } from "vitest";
import { applyPatch } from "../../src/project/edit.ts";
import { planeGroups } from "../../src/setout/plane-search/index.ts";
import { exampleDocument, findingsAfter, nameOf, projectOf, search } from "../helpers/plane-search.ts";

/** By night every combination that passes as the demo is given: 204. */
const SOAK = process.env.OUTERLEAF_SOAK !== undefined;

describe("every edit that is offered", () => {
  it.each([
    ["atelier-bouleau", 0, SOAK ? 204 : 12],
    ["atelier-bouleau", 3, SOAK ? 100 : 6],
    ["imperial", 0, SOAK ? 13 : 6],
    ["two-storey", 2, SOAK ? 40 : 6],
  ])(
    "for %s with %s mm of planing, the best %s, puts the faces into one plane with screws that bite",
    (name, most, shown) => {
      const document = exampleDocument(name);
      const groups = planeGroups(projectOf(document));
      expect(groups.length).toBeGreaterThan(0);
      for (const zones of groups) {
        const { passing } = search(document, {
          zones,
          planing: { most, step: 1 },
          show: { passing: shown, failing: 0 },
        });
        expect(passing).toHaveLength(shown);
        for (const { edit, zones: plans, meetings } of passing) {
          const after = findingsAfter(document, edit);
          const failed = [...after.steps, ...after.bites, ...after.corners].filter(
            ({ outcome }) => outcome === "fail",
          );
          expect({ edit, failed }).toEqual({ edit, failed: [] });
          expect(after.steps).toHaveLength(meetings.filter(({ kind }) => kind === "side by side").length);
          for (const { face, zone, faceZ, backZ, cavity } of plans)
            expect(after.facade.planes.find((one) => one.face === face && one.zone === zone)).toMatchObject({
              faceZ,
              backZ,
              cavity,
            });
        }
      }
    },
  );

  it("does so for upright boards on rails, the batten and the rail each out of the stock", () => {
    const document = exampleDocument("porch");
    const zones = [{ face: "porch-back", zone: "boards" }];
    const { passing } = search(document, { zones, show: { passing: 6, failing: 0 } });
    expect(passing).toHaveLength(6);
    expect(new Set(passing.map(({ buildUps }) => buildUps[0]?.battens.length))).toEqual(new Set([2]));
    for (const { edit, zones: plans } of passing) {
      const after = findingsAfter(document, edit);
      expect(after.bites.filter(({ outcome }) => outcome === "fail")).toEqual([]);
      for (const { face, faceZ, cavity } of plans)
        expect(after.facade.planes.find((one) => one.face === face)).toMatchObject({ faceZ, cavity });
    }
  });

  it("leads to a project in which the search finds it as it stands", () => {
    const document = exampleDocument();
    for (const one of search(document, { planing: { most: 2, step: 1 } }).passing.slice(0, 5)) {
      const patched = applyPatch(document, one.edit);
      const again = search(patched.ok && patched.document, {
        planing: { least: -2, most: 0, step: 1 },
        show: { passing: 1e6, failing: 0 },
      });
      expect(again.passing.filter(({ present }) => present).map(nameOf)).toEqual([nameOf(one)]);
    }
  });
});

/** Elevations and the key plan use their paper: none would stand on it at the next larger scale of ISO 5455 (with 1 : 25, common practice). */
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { drawingPapers } from "../../src/output/drawings/drawing-sheets.ts";
import { usualPaper } from "../../src/output/drawings/paper.ts";
import { cutsOf, cutsOnPlan } from "../../src/output/drawings/section-places.ts";
import { fittingPaper } from "../../src/scene/sheet.ts";
import { faceElevation } from "../../src/scene/views/face-elevation.ts";
import { placedFindings } from "../../src/scene/views/finding-symbols.ts";
import { keyPlan } from "../../src/scene/views/key-plan.ts";
import { withSectionMarks } from "../../src/scene/views/section-marks.ts";
import { PAPER_SIZES } from "../../src/units/paper-sizes.ts";
import { example, exampleNames } from "../contract/cut-facade-examples.ts";

const TIMES: readonly number[] = [5, 10, 20, 25, 50, 100, 200, 500, 1000];

describe.each(exampleNames)("%s", (name) => {
  const { project, reader } = example(name);
  const made = design(project);
  const { facade, findings } = made;
  const usual = usualPaper({ units: reader.units, paper: project.sheets?.paper });
  const papers = drawingPapers({ design: made, findings, reader, only: ["set-out", "key-plan"] });

  it("draws each face at the largest scale that its paper takes", () => {
    for (const face of facade.faces) {
      const drawing = papers.find((paper) => paper.name === `face-${face.id}`)?.drawing;
      if (!drawing || !("viewports" in drawing)) throw new Error(`no sheet of ${face.id}`);
      const times = Math.round(1 / (drawing.viewports[0]?.scene.scale ?? 0));
      expect(TIMES).toContain(times);
      const larger = TIMES[TIMES.indexOf(times) - 1];
      if (larger === undefined) continue;
      const own = placedFindings(findings).filter(({ where }) => where.face === face.id);
      const rods = facade.rods.filter(({ zones }) => zones.some((zone) => zone.face === face.id));
      const scene = faceElevation({ faces: [face], rods, findings: own }, project, face.id, {
        scale: 1 / larger,
      });
      if (!scene) throw new Error(`no elevation of ${face.id}`);
      const marked = withSectionMarks(scene, cutsOf(face, { facade, project }));
      expect(fittingPaper([marked], [usual]), `${face.id} at 1 : ${larger}`).toBeUndefined();
    }
  });

  it("draws the key plan at the largest scale that its paper takes, with what stands beside it", () => {
    const drawing = papers.find((paper) => paper.name === "key-plan")?.drawing;
    if (!drawing || !("viewports" in drawing)) throw new Error("no key plan");
    const [plan, ...beside] = drawing.viewports.map(({ scene }) => scene);
    const times = Math.round(1 / (plan?.scale ?? 0));
    expect(TIMES).toContain(times);
    expect(drawing.size).toEqual(PAPER_SIZES[usual]);
    const larger = TIMES[TIMES.indexOf(times) - 1];
    if (larger === undefined) throw new Error("a plan at 1 : 5");
    const details = cutsOnPlan({ facade, project }).map(({ window, ...cut }) => ({ ...cut, at: window[0] }));
    const scene = keyPlan(facade, {
      sheetOf: (face) => ({ number: 1, name: `face-${face}` }),
      details,
      scale: 1 / larger,
    });
    expect(fittingPaper([scene, ...beside], [usual]), `1 : ${larger}`).toBeUndefined();
  });
});

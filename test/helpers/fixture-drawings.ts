/** Every view of the fixture facade, by name. */
import type { Scene } from "../../src/scene/model.ts";
import { arrange, drawingArea, makeSheet, type Sheet } from "../../src/scene/sheet.ts";
import { battenElevation } from "../../src/scene/views/batten-elevation.ts";
import { developedElevation } from "../../src/scene/views/developed-elevation.ts";
import { faceElevation } from "../../src/scene/views/face-elevation.ts";
import { verticalSection } from "../../src/scene/views/vertical-section.ts";
import { message } from "../../src/text/message.ts";
import { PAPER_SIZES } from "../../src/units/paper-sizes.ts";
import { fixtureFacade } from "./fixture-facade.ts";

export function fixtureScenes(): Readonly<Record<string, Scene>> {
  const { facade, project } = fixtureFacade();
  const scenes: Record<string, Scene | undefined> = {
    "developed-elevation": developedElevation(facade, project, { scale: 1 / 50, findings: facade.findings }),
    "face-west": faceElevation(facade, project, "west"),
    "face-front": faceElevation(facade, project, "front"),
    "battens-front": battenElevation(facade, project, "front"),
    "section-sill": verticalSection(facade, project, { face: "west", x: 1200, y: [500, 860] }),
    "section-sheets": verticalSection(facade, project, { face: "front", x: 1830, y: [1980, 2260] }),
    "section-whole": verticalSection(facade, project, { face: "west", x: 1200 }),
  };
  return Object.fromEntries(
    Object.entries(scenes).map(([name, scene]) => {
      if (!scene) throw new Error(`the fixture has no ${name}`);
      return [name, scene];
    }),
  );
}

export function fixtureSheet(scene: Scene): Sheet {
  const viewports = arrange([scene], drawingArea(PAPER_SIZES.A3));
  if (!viewports) throw new Error("the drawing does not fit A3");
  return makeSheet({
    id: "sheet-2",
    size: PAPER_SIZES.A3,
    titleBlock: {
      owner: "",
      identification: "GP-02",
      project: "Garden pavilion",
      title: message("drawing.title.face-elevation", { face: "Front" }),
      documentType: message("drawing.document-type.set-out"),
      creator: "",
      approvedBy: "",
      dateOfIssue: "",
      revision: "B, not issued",
      sheet: { number: 2, of: 6 },
    },
    viewports,
  });
}

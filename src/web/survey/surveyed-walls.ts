/** The walls that were read, one after the other, as the layer of the elevation shows them. */
import type { Design } from "../../design.ts";
import type { SurveyedWall } from "../../scene/views/survey-marks.ts";
import type { SiteState } from "../../site/journal/fold.ts";
import { leanOf } from "../../site/survey/findings.ts";
import { joinedPlanes } from "../../site/survey/joined.ts";
import { chosenPacking, type PlaneKind, surveyFace } from "../../site/survey/packing.ts";
import { readingsOfBoth } from "../../site/survey/reading.ts";

export interface WallsAsked {
  readonly design: Pick<Design, "facade" | "project">;
  readonly told: Pick<SiteState, "readings"> | undefined;
  /** The plane that was chosen to pack to; the usual one where none was. */
  readonly plane: PlaneKind | undefined;
}

/** A wall at a time, so that who draws them can let the hand go first between two. */
export function* surveyedWalls({ design, told, plane }: WallsAsked): Generator<SurveyedWall> {
  const readings = readingsOfBoth(design.project, told);
  if (readings.length === 0) return;
  const lean = leanOf(design.project);
  const { planes } = joinedPlanes(design, { readings, lean });
  const kinds: readonly PlaneKind[] = [...(plane ? [plane] : []), "joined", "outer"];
  for (const { id: face } of design.facade.faces) {
    if (!readings.some((one) => one.face === face)) continue;
    const joined = planes.get(face);
    const { spots, packings } = surveyFace(design, { face, readings, lean, joined, kinds });
    yield { face, spots, packing: chosenPacking(packings, plane) };
  }
}

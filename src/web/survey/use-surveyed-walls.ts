/** The walls as read, with the packing to the plane that is chosen, worked out while they are shown and nothing moves. */
import { useEffect, useState } from "react";
import type { Design } from "../../design.ts";
import type { SurveyedWall } from "../../scene/views/survey-marks.ts";
import type { SiteState } from "../../site/journal/fold.ts";
import type { PlaneKind } from "../../site/survey/packing.ts";

/** Planes are dear to find: a hand that moves something has rested for so long, milliseconds. */
const REST = 250;

export interface SurveyedOptions {
  /** What the site told; undefined where nobody was asked. */
  readonly told: SiteState | undefined;
  /** The plane that was chosen to pack to. */
  readonly plane: PlaneKind | undefined;
  /** Of another file nothing is shown until its own walls are worked out. */
  readonly load: number;
}

/**
 * @param design undefined while they are not shown
 * @returns the latest that were worked out; undefined until then
 */
export function useSurveyedWalls(
  design: Design | undefined,
  { told, plane, load }: SurveyedOptions,
): readonly SurveyedWall[] | undefined {
  const [latest, setLatest] = useState<{ readonly load: number; readonly walls: readonly SurveyedWall[] }>();
  const facade = design?.facade;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a design that has been proven since has the same facade
  useEffect(() => {
    if (!design) {
      setLatest(undefined);
      return;
    }
    let isLeft = false;
    const work = async (): Promise<void> => {
      const { surveyedWalls } = await import("./surveyed-walls.ts");
      const found: SurveyedWall[] = [];
      for (const wall of surveyedWalls({ design, told, plane })) {
        found.push(wall);
        await new Promise((done) => setTimeout(done));
        if (isLeft) return;
      }
      if (!isLeft) setLatest({ load, walls: found });
    };
    const rest = setTimeout(() => void work(), REST);
    return () => {
      isLeft = true;
      clearTimeout(rest);
    };
  }, [facade, told, plane, load]);
  return latest?.load === load ? latest.walls : undefined;
}

/** What of a design belongs to one face: what its sheets are drawn from. */
import type { Face } from "../../project/schema/project.ts";
import type { FaceLayout, ZonePlane } from "../../setout/facade.ts";
import type { KindFacts } from "./facts.ts";

type Facts = Pick<KindFacts, "design">;

/** As the project tells it; undefined of a face that was made from another's recess. */
export function ownFace({ design }: Facts, { id }: FaceLayout): Face | undefined {
  return design.project.faces.find((one) => one.id === id);
}

export function ownPlanes({ design }: Facts, { id }: FaceLayout): ZonePlane[] {
  return design.facade.planes.filter(({ face }) => face === id);
}

/** Marks of its pieces that differ from the revision before. */
export function changedOn({ changed }: Pick<KindFacts, "changed">, { pieces }: FaceLayout): string[] {
  return changed.size === 0 ? [] : pieces.flatMap(({ mark }) => (changed.has(mark) ? [mark] : []));
}

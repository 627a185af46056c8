/** What taking a layout writes into the file. */
import type { TakenFace } from "../../project/editing/as-built.ts";
import type { Project } from "../../project/schema/project.ts";
import type { FaceLaidAgain } from "./lay-again.ts";
import type { Measured, Side } from "./measured.ts";

export function takenFaces(
  { faces }: Pick<Project, "faces">,
  measured: Measured,
  laid: readonly FaceLaidAgain[],
): TakenFace[] {
  return laid.map(({ face, pieces }) => ({
    face,
    openings: (faces.find(({ id }) => id === face)?.openings ?? []).flatMap(({ id, x, y }) => {
      const found = measured.openings.find((one) => one.face === face && one.opening === id);
      const at = (side: Side, drawn: number): number =>
        found?.sides.find((one) => one.side === side)?.measured ?? drawn;
      return found
        ? [
            {
              opening: id,
              x: [at("left", x[0]), at("right", x[1])] as const,
              y: [at("sill", y[0]), at("head", y[1])] as const,
            },
          ]
        : [];
    }),
    pieces: pieces.map(({ mark, x, y }) => ({ mark, x, y })),
  }));
}

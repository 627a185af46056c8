/** Where packers go: behind each screw of a batten that the sheathing's timber holds. */
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";

export interface Crossing {
  /** Mark of the batten. */
  readonly batten: string;
  readonly zone: string;
  /** Of the screw (mm, face frame). */
  readonly x: number;
  readonly y: number;
  /** Of its screw in the timber, as drawn (mm). */
  readonly bite: number;
  /** Packing that the build-up has there already (mm). */
  readonly spare: number;
}

/** The crossings of one face, batten by batten from the left, each from the base up. */
export function crossingsOf(
  { facade, project }: { facade: Facade; project: Project },
  face: string,
): Crossing[] {
  const layout = facade.faces.find(({ id }) => id === face);
  if (!layout) return [];
  const spare = new Map(
    layout.zones.map(({ id, buildUp }) => [
      id,
      (project.buildUps.find((one) => one.id === buildUp)?.layers ?? []).reduce(
        (sum, layer) => (layer.kind === "packer" ? sum + layer.thickness : sum),
        0,
      ),
    ]),
  );
  return layout.pieces
    .flatMap(({ kind, mark, zone, fixings }) =>
      kind === "batten" && zone !== undefined
        ? fixings.flatMap(({ x, y, bite, side }): Crossing[] =>
            side ? [] : [{ batten: mark, zone, x, y, bite, spare: spare.get(zone) ?? 0 }],
          )
        : [],
    )
    .sort((a, b) => a.x - b.x || a.y - b.y || a.batten.localeCompare(b.batten));
}

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
  {
    facade,
    project,
  }: { readonly facade: Pick<Facade, "faces">; readonly project: Pick<Project, "buildUps"> },
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
    .flatMap(({ kind, mark, zone, fixings }) => {
      const packed = fixings.filter(({ side }) => !side);
      const [first] = packed;
      if (kind !== "batten" || zone === undefined || !first) return [];
      const crossings = packed.map(
        ({ x, y, bite }): Crossing => ({ batten: mark, zone, x, y, bite, spare: spare.get(zone) ?? 0 }),
      );
      return [{ mark, left: first.x, crossings: crossings.sort((a, b) => a.y - b.y) }];
    })
    .sort((a, b) => a.left - b.left || a.mark.localeCompare(b.mark))
    .flatMap(({ crossings }) => crossings);
}

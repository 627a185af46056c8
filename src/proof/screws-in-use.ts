/** The screws that claddings, returns and build-ups name, each once. */
import type { Screw } from "../project/schema/project.ts";
import type { ProofContext } from "./context.ts";

export interface ScrewInUse {
  readonly screw: Screw;
  /** JSON Pointer to it in the stock. */
  readonly path: string;
}

export function screwsInUse({ project, zones }: ProofContext): ScrewInUse[] {
  const claddings = new Set(zones.map(({ cladding }) => cladding));
  const lining = new Set(
    project.faces.flatMap(({ openings }) => openings.flatMap(({ reveal }) => reveal?.cladding ?? [])),
  );
  const buildUps = new Set(zones.map(({ zone }) => zone.buildUp));
  const named = new Set([
    ...[...claddings].map(({ screw }) => screw),
    ...project.claddings.filter(({ id }) => lining.has(id)).map(({ screw }) => screw),
    ...project.buildUps
      .filter(({ id }) => buildUps.has(id))
      .flatMap(({ battenScrew, railScrew }) => [battenScrew, ...(railScrew ? [railScrew] : [])]),
  ]);
  return project.stock.screws.flatMap((screw, index) =>
    named.has(screw.id) ? [{ screw, path: `/stock/screws/${index}` }] : [],
  );
}

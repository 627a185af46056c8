/** The edit of the project file that puts a combination in; only what changes is written, notes and units stay. */
import type { PatchOperation } from "../../findings/finding.ts";
import type { BuildUp, Cladding, Project } from "../../project/schema/project.ts";
import { type Choice, isOfBattens, packingPlace } from "./choices.ts";

export function editBuildUp(
  project: Project,
  buildUp: BuildUp,
  to: {
    readonly choice: Choice;
    readonly present: Choice;
    readonly screws: { readonly batten: string; readonly rail?: string };
  },
): PatchOperation[] {
  const path = `/buildUps/${project.buildUps.indexOf(buildUp)}`;
  const places = buildUp.layers.flatMap((layer, i) => (isOfBattens(layer) ? [i] : []));
  const battens = places.flatMap((place, slot): PatchOperation[] => {
    const value = to.choice.battens[slot]?.id;
    if (value === to.present.battens[slot]?.id) return [];
    return [{ op: "replace", path: `${path}/layers/${place}/stock`, value }];
  });
  return [
    ...battens,
    ...(to.choice.packing === to.present.packing ? [] : editPacking(path, buildUp, to.choice.packing)),
    ...(to.screws.batten === buildUp.battenScrew
      ? []
      : [{ op: "replace", path: `${path}/battenScrew`, value: to.screws.batten } as const]),
    ...(to.screws.rail === undefined || to.screws.rail === buildUp.railScrew
      ? []
      : [{ op: "replace", path: `${path}/railScrew`, value: to.screws.rail } as const]),
  ];
}

/** All packing of a build-up becomes one layer. */
function editPacking(path: string, { layers }: BuildUp, packing: number): PatchOperation[] {
  const places = layers.flatMap(({ kind }, i) => (kind === "packer" ? [i] : []));
  const [first, ...more] = places;
  const remove = (from: readonly number[]): PatchOperation[] =>
    // From the outside in, so that no place moves before its turn.
    [...from].reverse().map((place) => ({ op: "remove", path: `${path}/layers/${place}` }));
  if (packing === 0) return remove(places);
  if (first === undefined) {
    const value = { kind: "packer", thickness: packing };
    return [{ op: "add", path: `${path}/layers/${packingPlace(layers)}`, value }];
  }
  return [...remove(more), { op: "replace", path: `${path}/layers/${first}/thickness`, value: packing }];
}

export function editCladding(
  project: Project,
  cladding: Cladding,
  to: { readonly thickness: number; readonly screw: string },
): PatchOperation[] {
  const path = `/claddings/${project.claddings.indexOf(cladding)}`;
  return [
    ...(to.thickness === cladding.thickness
      ? []
      : [{ op: "replace", path: `${path}/thickness`, value: to.thickness } as const]),
    ...(to.screw === cladding.screw
      ? []
      : [{ op: "replace", path: `${path}/screw`, value: to.screw } as const]),
  ];
}

/** Which rod a zone hangs on, kept as zones come, go and change their cladding: level boards hang on one, and nothing else does. */
import type { PatchOperation } from "../../findings/finding.ts";
import { rodOf, type ZoneRef } from "../lookup.ts";
import type { RodSpec } from "../schema/project.ts";
import type { Source } from "./change.ts";

/** How far below a line a course of a new rod may end and still meet it (mm); common practice. */
const LINE_TOLERANCE_MM = 2;

/** Hangs a zone on the rod of another, or on the first one whose zones have its cladding, or on a new one. */
export function hang(
  { project }: Source,
  ref: ZoneRef,
  { cladding, like }: { cladding: string; like?: ZoneRef },
): PatchOperation[] {
  const rods = project.rods ?? [];
  const kin = (rod: RodSpec): boolean =>
    like
      ? rod === rodOf(project, like)
      : rod.zones.some(({ face, zone }) =>
          project.faces.some(
            (one) => one.id === face && one.zones.some((own) => own.id === zone && own.cladding === cladding),
          ),
        );
  const at = rods.findIndex(kin);
  if (at >= 0) return [{ op: "add", path: `/rods/${at}/zones/-`, value: ref }];
  const taken = rods.map(({ id }) => id);
  let number = 1;
  while (taken.includes(`rod-${number}`)) number += 1;
  const rod = { id: `rod-${number}`, zones: [ref], leads: [ref.face], lineTolerance: LINE_TOLERANCE_MM };
  return [
    project.rods ? { op: "add", path: "/rods/-", value: rod } : { op: "add", path: "/rods", value: [rod] },
  ];
}

/** Takes zones off their rods; a rod that nothing hangs on goes, and what leads it must hang on it. */
export function unhang({ project }: Source, gone: (ref: ZoneRef) => boolean): PatchOperation[] {
  const rods = project.rods ?? [];
  // From the last to the first, so that what was taken out moves nothing that is still to be found.
  return rods
    .flatMap((rod, i): PatchOperation[] => {
      const path = `/rods/${i}`;
      const left = rod.zones.filter((ref) => !gone(ref));
      if (left.length === rod.zones.length) return [];
      if (left.length === 0) return [{ op: "remove", path }];
      const leads = rod.leads.filter((id) => left.some(({ face }) => face === id));
      return [
        { op: "replace", path: `${path}/zones`, value: left },
        { op: "replace", path: `${path}/leads`, value: leads.length > 0 ? leads : [left[0]?.face] },
      ];
    })
    .reverse();
}

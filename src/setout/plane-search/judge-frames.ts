/** Rules on window and door frames beside a cladding. */
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { RuleSaid, ZonePlan } from "./model.ts";
import type { ScopeZone } from "./scope.ts";

/** A frame that stands proud of the face fails. */
export function proudFrames({ face, zone, openings }: ScopeZone, faceZ: number): RuleSaid[] {
  return openings.flatMap(({ id: opening, projection = 0 }): RuleSaid[] => {
    if (projection <= faceZ) return [];
    const says = message("proof.frame.proud", { opening, off: snap(projection - faceZ) });
    const numbers = { demand: projection, limit: faceZ, unit: "mm" } as const;
    return [{ rule: "frame", outcome: "fail", zones: [{ face, zone }], ...numbers, says }];
  });
}

/** Behind the cladding's back the reveal is open to the cavity: where no return is asked for, it deserves a look. */
export function buriedFrames({ face, zone, openings }: ScopeZone, backZ: number): RuleSaid[] {
  return openings.flatMap(({ id: opening, projection, lined }): RuleSaid[] => {
    const about = { rule: "frame", outcome: "attention", zones: [{ face, zone }], unit: "mm" } as const;
    if (projection === undefined) return [{ ...about, says: message("proof.frame.unknown", { opening }) }];
    if (lined || projection >= backZ) return [];
    const says = message("proof.frame.buried", { opening, off: snap(backZ - projection) });
    return [{ ...about, demand: projection, limit: backZ, says }];
  });
}

export function revealsOf({ openings }: ScopeZone, faceZ: number): ZonePlan["reveals"] {
  return openings.flatMap(({ id, projection }) =>
    projection === undefined ? [] : [{ opening: id, reveal: snap(faceZ - projection) }],
  );
}

/**
 * Laps of corners that a step's choice can turn with it. With another plane the cladding that leads at a lapped corner
 * reaches further past its last batten, or the one that stops there comes nearer to it; with the lead on the other side
 * both lie otherwise on their battens.
 */
import type { Finding, PatchOperation } from "../findings/finding.ts";
import type { Project } from "../project/schema/project.ts";
import { type Message, message } from "../text/message.ts";

export interface Lap {
  readonly says: Message;
  readonly edit: readonly PatchOperation[];
}

/** Where sheets stand on their last battens. */
const EDGES: Finding["code"] = "S010";

/** The turned laps of corners whose faces' sheets are upset, one each; none where more than edges is upset. */
export function turnedLaps({ corners = [] }: Project, upset: readonly Finding[]): Lap[] {
  if (upset.length === 0 || upset.some(({ code }) => code !== EDGES)) return [];
  const faces = new Set(upset.map(({ where }) => where.face));
  return corners.flatMap(({ kind, left, right, lead }, i): Lap[] => {
    if (kind !== "lapped" || (!faces.has(left) && !faces.has(right))) return [];
    const [to, over] = lead === left ? [right, left] : [left, right];
    return [
      {
        says: message("planes.choice.lap", { lead: to, over }),
        edit: [{ op: "replace", path: `/corners/${i}/lead`, value: to }],
      },
    ];
  });
}

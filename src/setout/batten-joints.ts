/** What is to be said of the joints of battens and rails that are longer than their stock. */
import { type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import { STAGGER_MM } from "./batten-lengths.ts";
import type { DraftBatten } from "./battens.ts";
import type { ZoneTask } from "./zone-layout-task.ts";

/** A block is set behind an upright's unborne joint; a rail's hangs free between two battens, or on one too narrow for both ends. */
export function lengthsFinding({ ground }: ZoneTask, sticks: readonly DraftBatten[]): Finding[] {
  const joined = sticks.filter(({ joint }) => joint !== undefined);
  if (joined.length === 0) return [];
  const loose = joined.filter(({ kind, joint }) => kind === "rail" && !joint?.borne);
  const near = joined.filter(({ joint }) => !joint?.staggered);
  const [which, bad] =
    loose.length > 0
      ? (["loose", loose] as const)
      : near.length > 0
        ? (["near", near] as const)
        : (["good", []] as const);
  return [
    finding({
      code: "S028",
      outcome: which === "good" ? "pass" : "attention",
      where: {
        face: ground.face.id,
        zone: ground.zone.id,
        ...(bad.length > 0 && { marks: bad.map(({ mark }) => mark) }),
      },
      says: message(`setout.lengths.${which}`, {
        joints: joined.length,
        bad: bad.length,
        apart: STAGGER_MM,
      }),
      ...(which !== "good" && { hint: message(`setout.lengths.${which}.hint`) }),
      source: { kind: "common practice" },
    }),
  ];
}

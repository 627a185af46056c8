/** P012: how far a window or door frame stands out, against the planes of the cladding beside it. */
import { type Finding, finding, type Outcome } from "../findings/finding.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import { rectsOverlap } from "../geometry/rect.ts";
import type { Opening } from "../project/schema/project.ts";
import type { ZonePlane } from "../setout/facade.ts";
import { message } from "../text/message.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { compared, holds, input, written } from "./working.ts";

export function windowFrame({ zones }: FaceContext): Finding[] {
  return zones.flatMap((view) =>
    view.projectFace.openings.flatMap((opening, index) => {
      if (opening.kind !== "window" && opening.kind !== "door") return [];
      const { plane } = view;
      const touches = rectsOverlap(polygonBounds(view.zone.region), { x: opening.x, y: opening.y });
      if (!plane || !touches) return [];
      return [judged({ view, plane, opening, path: `${view.facePath}/openings/${index}/frameProjection` })];
    }),
  );
}

interface Framed {
  readonly view: ZoneView;
  readonly plane: ZonePlane;
  readonly opening: Opening;
  readonly path: string;
}

function judged({ view, plane, opening, path }: Framed): Finding {
  const where = { opening: opening.id, path, ...view.where };
  const demand = opening.frameProjection ?? view.projectFace.frameProjection;
  if (demand === undefined) {
    return finding({
      code: "P012",
      outcome: "cannot evaluate",
      where,
      says: message("proof.frame.unknown", { opening: opening.id }),
      source: { kind: "common practice" },
    });
  }
  const { backZ, faceZ } = plane;
  const behind = !holds("at least", { demand, limit: backZ });
  const lining = behind ? liningOf(view, opening) : [];
  const buried = behind && lining.length === 0;
  const proud = !holds("at most", { demand, limit: faceZ });
  const outcome: Outcome = buried || proud ? "attention" : "pass";
  const key = buried ? "buried" : proud ? "proud" : behind ? "lined" : "within";
  const limit = buried ? backZ : faceZ;
  const off = behind ? backZ - demand : Math.abs(demand - faceZ);
  return finding({
    code: "P012",
    outcome,
    where: { ...where, ...(lining.length > 0 && { marks: lining }) },
    says: message(`proof.frame.${key}`, { opening: opening.id, off, reveal: faceZ - demand }),
    ...(outcome === "pass" ? {} : { hint: message(`proof.frame.${key}-hint`) }),
    ...compared(buried ? "at least" : "at most", { demand, limit, unit: "mm" }),
    working: {
      formula: "z_b ≤ p ≤ z_f",
      inputs: [
        input("p", { meaning: "frame-projection", value: demand, unit: "mm", basis: "given" }),
        input("z_b", { meaning: "cladding-back", value: backZ, unit: "mm", basis: "derived" }),
        input("z_f", { meaning: "cladding-face", value: faceZ, unit: "mm", basis: "derived" }),
      ],
      substituted: `${written(backZ)} ${behind ? ">" : "≤"} ${written(demand)} ${proud ? ">" : "≤"} ${written(faceZ)}`,
    },
    source: { kind: "common practice" },
  });
}

/** Marks of the returns or trims that line the opening. */
function liningOf({ returns, face, where }: ZoneView, { id }: Opening): string[] {
  const lines = [
    `${where.face} jamb left ${id}`,
    `${where.face} jamb right ${id}`,
    `${where.face} head ${id}`,
  ];
  const trims = face.pieces.filter(({ planProfile }) => planProfile);
  return [...returns, ...trims].filter(({ why }) => lines.includes(why.line ?? "")).map(({ mark }) => mark);
}

/**
 * What passes the wall, as pieces: a sleeve for a duct from the studs' inner side to the cladding's plane, a box or block
 * for a lamp or a tap from the sheathing to that plane, so that it is set before the membrane is stuck to it.
 */
import { type Finding, finding } from "../../findings/finding.ts";
import type { Interval } from "../../geometry/interval.ts";
import { circumscribed } from "../../geometry/polygon.ts";
import { rectsOverlap } from "../../geometry/rect.ts";
import { faceCode } from "../../project/lookup.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { faceLength } from "../corners.ts";
import type { Piece } from "../facade.ts";
import { looseFrom, type Wall, zoneAt } from "./wall.ts";

/** What hangs on the wall and does not go through it whole; whatever else is round goes through. */
const HUNG = /\b(?:lamp|light|tap|hose|box|socket|outlet|bell|lampe|luminaire|robinet|boîte|prise)\b/i;
const SIDES = 24;

export function sleeves(wall: Wall): {
  readonly pieces: readonly Piece[];
  readonly findings: readonly Finding[];
} {
  const { project, face, path, rounds } = wall;
  const { sheathingThickness, studs } = project.structure;
  const pieces: Piece[] = [];
  const findings: Finding[] = [];
  const placed: { readonly x: number; readonly y: number; readonly diameter: number }[] = [];
  (face.penetrations ?? []).forEach(({ id, kind, x, y, diameter }, i) => {
    const at = zoneAt(wall, x);
    const ring = rounds.find(({ of }) => of === id);
    if (!at || !ring) return;
    const { bounds } = at.ground;
    const clear =
      ring.bounds.x[0] >= bounds.x[0] &&
      ring.bounds.x[1] <= bounds.x[1] &&
      ring.bounds.y[0] > bounds.y[0] + 1 &&
      ring.bounds.y[1] < bounds.y[1] - 1;
    const hung = HUNG.test(kind);
    const inCorner = !hung && standsInCorner(wall, ring.bounds.x);
    const crowded = placed.some(
      (other) => Math.hypot(other.x - x, other.y - y) < (other.diameter + diameter) / 2,
    );
    const inOpening = at.ground.keepOuts.some(({ rect }) => rectsOverlap(rect, ring.bounds));
    const where = { path: `${path}/penetrations/${i}`, face: face.id, zone: at.ground.zone.id };
    if (!clear || inOpening || inCorner || crowded) {
      const why = !clear ? "edge" : inOpening ? "opening" : inCorner ? "corner" : "crowded";
      findings.push(
        finding({
          code: "S023",
          outcome: "attention",
          where,
          says: message(`setout.sleeve.${why}`, { id, kind }),
          hint: message(`setout.sleeve.${why}.hint`),
          source: { kind: "common practice" },
        }),
      );
      return;
    }
    placed.push({ x, y, diameter });
    const to = at.plane.faceZ;
    const from = hung ? 0 : snap(-sheathingThickness - studs.depth);
    const mark = `${faceCode(face)}-V-${id}`;
    const length = snap(to - from);
    pieces.push(
      looseFrom({
        mark,
        kind: "sleeve",
        face: face.id,
        zone: at.ground.zone.id,
        outline: circumscribed({
          centre: [x, y],
          radius: (diameter / 2) * Math.cos(Math.PI / SIDES),
          sides: SIDES,
        }),
        z: [from, to],
        material: hung ? "box or block" : "sleeve",
        cut: { length, width: diameter, thickness: diameter },
        massKg: 0,
        why: { rule: message(hung ? "setout.why.sleeve.box" : "setout.why.sleeve.duct") },
        removeBefore: [],
      }),
    );
    findings.push(
      finding({
        code: "S023",
        outcome: "pass",
        where: { marks: [mark], ...where },
        says: message(hung ? "setout.sleeve.box" : "setout.sleeve.duct", {
          id,
          kind,
          diameter,
          length,
          out: to,
          clear: snap(ring.radius - diameter / 2),
        }),
        demand: length,
        unit: "mm",
        source: { kind: "common practice" },
      }),
    );
  });
  return { pieces, findings };
}

/** At an outside corner the neighbour's wall stands behind this one, as deep as its studs and sheathing. */
function standsInCorner({ project, face, ends }: Wall, x: Interval): boolean {
  const deep = project.structure.sheathingThickness + project.structure.studs.depth;
  return (
    (ends.left.kind === "external" && x[0] < deep) ||
    (ends.right.kind === "external" && x[1] > faceLength(face) - deep)
  );
}

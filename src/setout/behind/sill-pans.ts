/**
 * A pan under every window and door: what gets past the frame runs out over the membrane below, not into the wall. It
 * covers the rough sill's whole depth, turns up at its back and its ends, and laps down over the membrane.
 *
 * Source: International Residential Code R703.4.1 asks for a pan, sealed or sloped so that it drains to the membrane. Back
 * dam, end dams and lap: Info-302, Pan Flashing for Exterior Wall Openings, which names them; their sizes are common practice.
 */
import { type Finding, finding } from "../../findings/finding.ts";
import type { Point } from "../../geometry/point.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { type Rect, rectOutline, rectsOverlap } from "../../geometry/rect.ts";
import { faceCode } from "../../project/lookup.ts";
import type { Opening } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { Piece } from "../facade.ts";
import { buildUpOf } from "../resolve.ts";
import { type Ground, looseFrom, massOfArea, type Wall, zoneAt } from "./wall.ts";

const BACK_UPSTAND_MM = 25;
/** Up both jambs; what is stuck on takes 100 to 150 mm. */
const END_UPSTAND_MM = 150;
/** Down over the membrane where its laps are not known. */
const FRONT_LAP_MM = 100;
/** Less than this over the membrane is no lap. */
const LEAST_LAP_MM = 50;
const THICKNESS_MM = 1;
/** Self-adhered bitumen or butyl sheet, common practice. */
const KG_PER_M2 = 1.2;

const SOURCE = {
  kind: "document",
  document: "International Residential Code",
  clause: "R703.4.1",
} as const;

export function sillPans(wall: Wall): {
  readonly pieces: readonly Piece[];
  readonly findings: readonly Finding[];
} {
  const made = wall.face.openings.flatMap((opening) => {
    const at = zoneAt(wall, (opening.x[0] + opening.x[1]) / 2);
    return at && (opening.kind === "window" || opening.kind === "door") ? [pan(wall, opening, at)] : [];
  });
  if (made.length === 0) return { pieces: [], findings: [] };
  const short = made.filter(({ lap }) => lap < LEAST_LAP_MM);
  return {
    pieces: made.map(({ piece }) => piece),
    findings: [told(wall, made), ...short.map((one) => tooShort(wall, one))],
  };
}

interface Pan {
  readonly piece: Piece;
  readonly of: string;
  readonly lap: number;
}

function pan({ project, face, laid }: Wall, { id, x, y }: Opening, { ground, plane }: Ground): Pan {
  const { sheathingThickness, studs } = project.structure;
  const layer = buildUpOf(project, ground.zone).layers.find(({ kind }) => kind === "membrane");
  const wanted = layer?.kind === "membrane" && layer.laps ? layer.laps.level : FRONT_LAP_MM;
  const lap = snap(Math.min(wanted, Math.max(0, y[0] - ground.bounds.y[0])));
  const back = snap(-sheathingThickness - studs.depth);
  const front = plane.layers.find(({ kind }) => kind === "membrane")?.z[1] ?? 0;
  const profile: Point[] = [
    [back, snap(y[0] + BACK_UPSTAND_MM)],
    [back, y[0]],
    [front, y[0]],
    ...(lap > 0 ? [[front, snap(y[0] - lap)] as const] : []),
  ];
  const box: Rect = { x, y: lap > 0 ? [snap(y[0] - lap), y[0]] : [y[0], snap(y[0] + BACK_UPSTAND_MM)] };
  const length = snap(x[1] - x[0] + 2 * END_UPSTAND_MM);
  const width = snap(BACK_UPSTAND_MM + front - back + lap);
  return {
    of: id,
    lap,
    piece: looseFrom({
      mark: `${faceCode(face)}-Mp-${id}`,
      kind: "membrane",
      face: face.id,
      zone: ground.zone.id,
      outline: rectOutline(box),
      z: [front, front],
      profile,
      material: "sill pan",
      cut: { length, width, thickness: THICKNESS_MM },
      massKg: massOfArea(length, width, KG_PER_M2),
      why: {
        line: `${face.id} sill ${id}`,
        rule: message("setout.why.pan", { back: BACK_UPSTAND_MM, ends: END_UPSTAND_MM, lap }),
      },
      removeBefore: laid
        .filter(
          ({ kind, outline }) =>
            (kind === "flashing" || kind === "closure" || kind === "batten") &&
            rectsOverlap(polygonBounds(outline), box),
        )
        .map(({ mark }) => mark),
    }),
  };
}

function told({ face }: Wall, pans: readonly Pan[]): Finding {
  const typical = (symbol: string, meaning: string, value: number) =>
    ({ symbol, meaning: message(`setout.pan.${meaning}`), value, unit: "mm", basis: "typical" }) as const;
  const widest = Math.max(...pans.map(({ piece }) => piece.cut.width));
  return finding({
    code: "S021",
    outcome: "pass",
    where: { face: face.id, marks: pans.map(({ piece }) => piece.mark) },
    says: message("setout.pan", { pans: pans.length, width: widest }),
    working: {
      formula: "b = u + d + l",
      inputs: [typical("u", "back", BACK_UPSTAND_MM), typical("e", "ends", END_UPSTAND_MM)],
      substituted: pans.map(({ of, piece: { cut } }) => `${of}: ${cut.length} × ${cut.width}`).join("; "),
    },
    source: SOURCE,
  });
}

function tooShort({ face }: Wall, { of, lap, piece }: Pan): Finding {
  return finding({
    code: "S021",
    outcome: "attention",
    where: { face: face.id, opening: of, marks: [piece.mark] },
    says: message("setout.pan.short", { of, lap }),
    hint: message("setout.pan.short.hint"),
    demand: lap,
    limit: LEAST_LAP_MM,
    unit: "mm",
    source: { kind: "common practice" },
  });
}

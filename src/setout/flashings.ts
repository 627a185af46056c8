/**
 * Bent-metal flashings over and under openings: an upstand behind the membrane, a slope outward, a drip before the
 * cladding's plane, end dams at both sides. They lie in the clearances that the openings keep.
 *
 * Source: Ontario Building Code 9.27.3.8 with its note, as in the National Building Code of Canada: slope 6 % or more
 * after shrinkage, 50 mm or more up behind the membrane, end dams of 25 mm or more; 9.20.13.12 for a sill's drip, 25 mm from the wall.
 */
import { type Finding, finding } from "../findings/finding.ts";
import type { Interval } from "../geometry/interval.ts";
import type { Point } from "../geometry/point.ts";
import type { Polygon } from "../geometry/polygon.ts";
import { rectOutline } from "../geometry/rect.ts";
import { faceCode } from "../project/lookup.ts";
import { message } from "../text/message.ts";
import { snap } from "../units/length.ts";
import { massOfArea } from "./behind/wall.ts";
import { BENT_METAL, developedWidth } from "./bent-metal.ts";
import { DRIP_MM, type FaceEnds } from "./corners.ts";
import { NO_HOLES, type Piece, SQUARE_ENDS, type ZonePlane } from "./facade.ts";
import type { KeepOut, ZoneGround } from "./ground-plan.ts";
import { cavityBack, planeOf } from "./planes.ts";

export const SLOPE = 0.06;
const UPSTAND_MM = 50;
const HEAD_DRIP_MM = 10;
/** How far the drip hangs below the slope's edge. */
const DRIP_EDGE_MM = 8;
/** Between a flashing and the frame, and between its ends and the cladding beside it. */
export const PLAY_MM = 2;
/** How high a dam turns up at each end. */
const END_DAM_MM = 25;

type Where = "head" | "sill";

/** The flashings of a face's openings, and whether each fits the clearance that is kept for it. */
export function flashingsOf(
  {
    face,
    ends,
    keepOuts,
    grounds,
  }: {
    readonly face: { readonly id: string; readonly code?: string | undefined };
    readonly ends: FaceEnds;
    readonly keepOuts: readonly KeepOut[];
    readonly grounds: readonly ZoneGround[];
  },
  planes: readonly ZonePlane[],
): { readonly pieces: readonly Piece[]; readonly findings: readonly Finding[] } {
  const pieces: Piece[] = [];
  const findings: Finding[] = [];
  for (const keepOut of keepOuts) {
    const middle = (keepOut.opening.x[0] + keepOut.opening.x[1]) / 2;
    const ground = grounds.find(({ bounds }) => middle >= bounds.x[0] && middle <= bounds.x[1]);
    if (!ground) continue;
    const plane = planeOf(planes, face.id, ground.zone.id);
    const open: Interval = [ends.left.openTo, ends.right.openTo];
    const behind = keepOut.opening.x[0] < open[0] || keepOut.opening.x[1] > open[1];
    if (behind) findings.push(behindCorner(ground, keepOut.of));
    for (const where of placesOf(keepOut)) {
      const made = flashing({ ground, plane, keepOut, open }, where);
      const room =
        where === "head" ? keepOut.headLine - keepOut.opening.y[1] : keepOut.opening.y[0] - keepOut.rect.y[0];
      findings.push(
        roomFinding(ground, {
          of: keepOut.of,
          where,
          needs: made.height,
          room: snap(room),
          mark: made.piece.mark,
        }),
      );
      if (made.height <= room && made.piece.cut.length > 0) pieces.push(made.piece);
    }
  }
  return { pieces, findings };
}

/** Where the clearance under an opening runs down to the base there is a threshold, not a sill. */
function placesOf({ sillLine }: KeepOut): Where[] {
  return sillLine === undefined ? ["head"] : ["head", "sill"];
}

function flashing(
  {
    ground,
    plane,
    keepOut,
    open,
  }: {
    readonly ground: ZoneGround;
    readonly plane: ZonePlane;
    readonly keepOut: KeepOut;
    /** Between the neighbours' claddings. */
    readonly open: Interval;
  },
  where: Where,
): { piece: Piece; height: number } {
  const back = cavityBack(plane);
  const front = snap(plane.faceZ + (where === "head" ? HEAD_DRIP_MM : DRIP_MM));
  const fall = snap((front - back) * SLOPE);
  const height = snap(PLAY_MM + fall + DRIP_EDGE_MM);
  // Over the head the drip clears the frame; under the sill the back edge lies close under it.
  const top = where === "head" ? snap(keepOut.opening.y[1] + height) : snap(keepOut.opening.y[0] - PLAY_MM);
  const edge = snap(top - fall);
  const x: Interval = [
    snap(Math.max(keepOut.rect.x[0], open[0]) + PLAY_MM),
    snap(Math.min(keepOut.rect.x[1], open[1]) - PLAY_MM),
  ];
  const profile: Point[] = [
    [back, snap(top + (where === "head" ? UPSTAND_MM : 0))],
    [back, top],
    [front, edge],
    [front, snap(edge - DRIP_EDGE_MM)],
  ];
  // Over a head the dams stand behind the cladding and its rails, where the mesh is slit for them; under a sill beside the frame, to
  // the cladding's face.
  const rail = plane.layers.find(({ kind }) => kind === "rail");
  const damTo = where === "head" ? (rail?.z[0] ?? plane.backZ) : plane.faceZ;
  const low = snap(top - (damTo - back) * SLOPE);
  const dam: Polygon = [
    [back, top],
    [damTo, low],
    [damTo, snap(low + END_DAM_MM)],
    [back, snap(top + END_DAM_MM)],
  ];
  const developed = snap(developedWidth(profile));
  const length = blankLength(x);
  return {
    height,
    piece: {
      mark: `${faceCode(ground.face)}-H${where === "head" ? "h" : "s"}-${keepOut.of}`,
      kind: "flashing",
      face: ground.face.id,
      zone: ground.zone.id,
      outline: rectOutline({ x, y: [snap(edge - DRIP_EDGE_MM), top] }),
      holes: NO_HOLES,
      z: [back, front],
      ends: SQUARE_ENDS,
      profile,
      dams: x.map((at) => ({ x: at, outline: dam })),
      material: "bent metal",
      cut: { length, width: developed, thickness: BENT_METAL.thickness },
      massKg: massOfArea(length, developed, BENT_METAL.kgPerM2),
      why: {
        line: `${ground.face.id} ${where} ${keepOut.of}`,
        rule: message(`setout.why.flashing.${where}`),
      },
      supports: [],
      removeBefore: [],
      fixings: [],
    },
  };
}

/** Of the flat sheet that lies between two ends, with a dam turned up at each. */
export function blankLength([from, to]: Interval): number {
  return snap(
    developedWidth([
      [from, END_DAM_MM],
      [from, 0],
      [to, 0],
      [to, END_DAM_MM],
    ]),
  );
}

/** An opening so near an inside corner that the cladding round the corner stands before it. */
function behindCorner({ face, zone }: ZoneGround, of: string): Finding {
  return finding({
    code: "S014",
    outcome: "fail",
    where: { face: face.id, zone: zone.id, opening: of },
    says: message("setout.corner.opening-behind", { of }),
    hint: message("setout.corner.opening-behind.hint"),
    source: { kind: "common practice" },
  });
}

function roomFinding(
  ground: ZoneGround,
  at: { of: string; where: Where; needs: number; room: number; mark: string },
): Finding {
  const fits = at.needs <= at.room;
  return finding({
    code: "S018",
    outcome: fits ? "pass" : "fail",
    where: { face: ground.face.id, zone: ground.zone.id, opening: at.of, ...(fits && { marks: [at.mark] }) },
    says: message(`setout.flashing.${at.where}.${fits ? "fits" : "tight"}`, {
      of: at.of,
      needs: at.needs,
      room: at.room,
    }),
    ...(!fits && { hint: message("setout.flashing.hint", { needs: at.needs }) }),
    demand: at.needs,
    limit: at.room,
    unit: "mm",
    ratio: Math.round((at.needs / Math.max(at.room, 0.001)) * 1000) / 1000,
    source: {
      kind: "document",
      document: "Ontario Building Code, O. Reg. 332/12",
      clause: "9.27.3.8, 9.20.13.12",
    },
  });
}

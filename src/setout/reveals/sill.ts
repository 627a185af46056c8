/**
 * The sill of a deep reveal: bent metal from the frame to over the sill flashing, which begins at the cavity's back. It
 * turns up before the frame, falls outward over the rough sill, and ends as a lap over the flashing below it.
 *
 * Source of the slope: Ontario Building Code 9.27.3.8, 6 % or more; lap and upstand are common practice.
 */
import type { Point } from "../../geometry/point.ts";
import { rectOutline } from "../../geometry/rect.ts";
import { faceCode } from "../../project/lookup.ts";
import type { Face } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { looseFrom, massOfArea } from "../behind/wall.ts";
import { BENT_METAL, developedWidth } from "../bent-metal.ts";
import type { Piece } from "../facade.ts";
import { blankLength, PLAY_MM, SLOPE } from "../flashings.ts";
import type { Asked } from "./asked.ts";

const LAP_MM = 20;
const UPSTAND_MM = 10;
/** Under the foot of a jamb return: New Zealand asks 5 mm of cladding over flashings, US siding guides 6 mm. */
const OVER_FLASHING_MM = 6;
/** Under the foot of a jamb return at a door, whose threshold lies within its frame (common practice). */
const OVER_THRESHOLD_MM = 10;

/** Undefined where the flashing itself reaches the frame, and at a door. */
export function revealSill(face: Face, asked: Asked, removeBefore: readonly string[]): Piece | undefined {
  const { opening, frame, gap, cavityBack, at } = asked;
  const back = snap(frame + Math.min(PLAY_MM, gap / 2));
  if (opening.toBase || back >= cavityBack) return undefined;
  const front = snap(cavityBack + LAP_MM);
  const low = opening.y[0];
  const high = sillAt(asked, back);
  const profile: Point[] = [
    [back, snap(high + UPSTAND_MM)],
    [back, high],
    [front, low],
  ];
  const x = [snap(opening.x[0] + PLAY_MM), snap(opening.x[1] - PLAY_MM)] as const;
  const length = blankLength(x);
  const width = snap(developedWidth(profile));
  return looseFrom({
    mark: `${faceCode(face)}-Hr-${opening.id}`,
    kind: "flashing",
    face: face.id,
    zone: at.ground.zone.id,
    outline: rectOutline({ x, y: [low, snap(high + UPSTAND_MM)] }),
    z: [back, front],
    profile,
    material: "bent metal",
    cut: { length, width, thickness: BENT_METAL.thickness },
    massKg: massOfArea(length, width, BENT_METAL.kgPerM2),
    why: {
      line: `${face.id} sill ${opening.id}`,
      rule: message("setout.why.flashing.reveal", { lap: LAP_MM }),
    },
    removeBefore,
  });
}

/** Height of the reveal's sill at a depth. */
function sillAt({ opening, cavityBack }: Asked, z: number): number {
  return snap(opening.y[0] + Math.max(0, cavityBack + LAP_MM - z) * SLOPE);
}

/** Where the jamb returns begin. */
export function footOf(asked: Asked): number {
  const { opening, z, cavityBack } = asked;
  if (opening.toBase) return snap(opening.y[0] + OVER_THRESHOLD_MM);
  return snap((z[0] < cavityBack ? sillAt(asked, z[0]) : opening.y[0]) + OVER_FLASHING_MM);
}

/** What an opening asks of its returns: how deep they are, of what, and how far from frame, sill and each other. */
import type { Interval } from "../../geometry/interval.ts";
import { overlaps } from "../../geometry/interval.ts";
import type { Cladding, Opening } from "../../project/schema/project.ts";
import { snap } from "../../units/length.ts";
import { type Ground, type Wall, zoneAt } from "../behind/wall.ts";
import { cavityBack } from "../planes.ts";
import { claddingOf } from "../resolve.ts";

/** Open joint to the frame where the file gives none: the frame moves and is taken out by itself (common practice). */
const TO_FRAME_MM = 5;
/** Behind the cladding's back, so that the cladding moves, and comes off, without the returns (common practice). */
const BEHIND_CLADDING_MM = 2;

export interface Asked {
  readonly opening: Opening;
  readonly path: string;
  readonly at: Ground;
  readonly cladding: Cladding;
  /** The frame's outer side. */
  readonly frame: number;
  /** Open joint to the frame (mm). */
  readonly gap: number;
  /** From the frame's joint to behind the cladding. */
  readonly z: Interval;
  /** From the frame to the cladding's plane (mm). */
  readonly reveal: number;
  /** Between two returns (mm): the sheets' joint, the boards' gap at an end. */
  readonly joint: number;
  readonly cavityBack: number;
}

/** Undefined where the opening stands in no zone or how far its frame stands out is not known. */
export function askedOf(wall: Wall, opening: Opening, path: string): Asked | undefined {
  const at = zoneAt(wall, (opening.x[0] + opening.x[1]) / 2);
  const frame = opening.frameProjection ?? wall.face.frameProjection;
  if (!at || frame === undefined || !opening.reveal) return undefined;
  const gap = opening.reveal.gap ?? TO_FRAME_MM;
  const named = wall.project.claddings.find(({ id }) => id === opening.reveal?.cladding);
  const cladding = named ?? claddingOf(wall.project, at.ground.zone);
  // Two claddings beside one opening: behind the one that lies deeper.
  const backs = wall.grounds
    .filter(({ bounds }) => overlaps(bounds.x, opening.x))
    .flatMap(({ zone }) => wall.planes.filter((plane) => plane.zone === zone.id).map(({ backZ }) => backZ));
  return {
    opening,
    path,
    at,
    cladding,
    frame,
    gap,
    z: [snap(frame + gap), snap(Math.min(at.plane.backZ, ...backs) - BEHIND_CLADDING_MM)],
    reveal: snap(at.plane.faceZ - frame),
    joint: cladding.kind === "sheets" ? cladding.joint : cladding.endGap,
    cavityBack: cavityBack(at.plane),
  };
}

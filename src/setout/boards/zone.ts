/** What laying out a board zone needs to know. */
import type { BoardCladding } from "../../project/schema/project.ts";
import type { Message } from "../../text/message.ts";
import type { FaceEnds } from "../corners.ts";
import type { RodResult, ZonePlane } from "../facade.ts";
import type { ZoneGround } from "../ground-plan.ts";

export interface BoardZone {
  readonly ground: ZoneGround;
  readonly cladding: BoardCladding;
  readonly plane: ZonePlane;
  readonly ends: FaceEnds;
  readonly rod: RodResult;
  /** The rod that came second. */
  readonly runnerUp?: Message;
  /** Centres of the studs behind the zone. */
  readonly studs: readonly number[];
  readonly studSpacing: number;
  /** Width of the batten behind (mm). */
  readonly battenWidth: number;
}

/** What laying out one zone is given. */
import type { Demands } from "../codes/demands.ts";
import type { Project } from "../project/schema/project.ts";
import type { Message } from "../text/message.ts";
import type { FaceEnds } from "./corners.ts";
import type { RodResult, Solid, ZonePlane } from "./facade.ts";
import type { ZoneGround } from "./ground-plan.ts";
import type { Relaid } from "./laid/index.ts";

export interface ZoneTask {
  readonly project: Project;
  readonly demands: Demands;
  readonly ground: ZoneGround;
  /** JSON Pointer of the zone in the project file, for findings. */
  readonly path: string;
  readonly plane: ZonePlane;
  readonly ends: FaceEnds;
  readonly rod: RodResult | undefined;
  /** The rod that came second, told with every course. */
  readonly runnerUp?: Message;
  /** Level lines that sheet joints like to follow. */
  readonly lines: readonly number[];
  /** Cladding that was laid again; `ground` is then what it was set out on at first. */
  readonly relaid?: Relaid;
  /** The face's timber; blocks set on the way are added. */
  readonly solids: Solid[];
}

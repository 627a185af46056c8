/** What stands on a face, as it is handed to the scene. */
import type { FillRole } from "../../scene/roles.ts";
import type { SolidLayer } from "../drawing/layers.ts";
import type { Pick } from "../picks/pick.ts";
import type { Mesh } from "./mesh.ts";

export interface Shape {
  /** Openings and the ground stay when all else is taken away. */
  readonly layer: SolidLayer | "always";
  readonly fill: FillRole;
  readonly mesh: Mesh;
  /** What a press on it picks; the ground and timber of the frame have no names on the sheet. */
  readonly pick?: Pick;
}

/** The head of a screw. */
export interface Head {
  /** The layer of the piece that it holds, which it goes away with. */
  readonly layer: SolidLayer;
  /** Face frame, mm. */
  readonly at: readonly [x: number, y: number, z: number];
}

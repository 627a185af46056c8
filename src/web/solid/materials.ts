/** The drawing's inks as materials: one for each colour, shared by all faces, coloured anew by day and by night. */
import {
  DoubleSide,
  FrontSide,
  LineBasicMaterial,
  type Material,
  MeshBasicMaterial,
  MeshLambertMaterial,
} from "three";
import type { FillRole, InkRole } from "../../scene/roles.ts";

export type ColourOf = (name: FillRole | InkRole) => string;

/** The custom properties that the page's style sheet holds for screen, night and print. */
export function inksOfPage(): ColourOf {
  const style = getComputedStyle(document.documentElement);
  return (name) => style.getPropertyValue(`--drawing-${name}`).trim();
}

/** How far sides are pushed behind their own edges: any farther, and the edges of what lies behind them show through. */
const PUSHED = 0.5;

export interface Materials {
  fill(role: FillRole): MeshLambertMaterial;
  readonly edge: LineBasicMaterial;
  readonly head: MeshBasicMaterial;
  readonly pickedEdge: LineBasicMaterial;
  readonly pickedFill: MeshBasicMaterial;
  colour(of: ColourOf): void;
  dispose(): void;
}

export function createMaterials(): Materials {
  const fills = new Map<FillRole, MeshLambertMaterial>();
  const edge = new LineBasicMaterial();
  const head = new MeshBasicMaterial({ side: DoubleSide });
  // What is picked shows through what stands before it.
  const pickedEdge = new LineBasicMaterial({ depthTest: false });
  const pickedFill = new MeshBasicMaterial({
    transparent: true,
    opacity: 0.4,
    side: DoubleSide,
    depthWrite: false,
    polygonOffset: true,
    polygonOffsetFactor: -1,
    polygonOffsetUnits: -1,
  });
  let colourOf: ColourOf = () => "#000000";
  return {
    fill(role) {
      const held = fills.get(role);
      if (held) return held;
      const made = new MeshLambertMaterial({
        color: colourOf(role),
        // Seen from below, the ground hides nothing.
        side: role === "ground" ? FrontSide : DoubleSide,
        polygonOffset: true,
        polygonOffsetFactor: PUSHED,
        polygonOffsetUnits: PUSHED,
      });
      fills.set(role, made);
      return made;
    },
    edge,
    head,
    pickedEdge,
    pickedFill,
    colour(of) {
      colourOf = of;
      for (const [role, material] of fills) material.color.set(of(role));
      edge.color.set(of("ink"));
      head.color.set(of("ink"));
      pickedEdge.color.set(of("red"));
      pickedFill.color.set(of("red"));
    },
    dispose() {
      const all: Material[] = [...fills.values(), edge, head, pickedEdge, pickedFill];
      for (const material of all) material.dispose();
    },
  };
}

/** The ground before a face, and the wall under its cladding down to it. */
import type { Design } from "../../design.ts";
import type { Point } from "../../geometry/point.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { groundLine } from "../../scene/views/ground.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import { prismMesh } from "./mesh.ts";
import type { Shape } from "./shape.ts";

/** How far the ground is drawn before a face and beside it, mm: the file tells its height at the wall alone. */
const BREADTH = 2500;
/** The wall under the cladding is drawn before the timber that reaches down behind it, mm. */
const BEFORE_FRAMING = 1;

export function groundBefore(face: FaceLayout, { structure }: Design["project"]): Shape[] {
  const first = face.ground[0];
  const last = face.ground.at(-1);
  if (!first || !last) return [];
  const line = groundLine(face.ground, { from: first[0] - BREADTH, to: last[0] + BREADTH });
  const triangles: number[] = [];
  for (const [i, [x, y]] of line.entries()) {
    const next = line[i + 1];
    if (!next) continue;
    triangles.push(x, y, BREADTH, next[0], next[1], BREADTH, next[0], next[1], 0);
    triangles.push(x, y, BREADTH, next[0], next[1], 0, x, y, 0);
  }
  const back = BEFORE_FRAMING - structure.sheathingThickness;
  const base = polygonBounds(face.outline).y[0];
  const outline: Point[] = [...face.ground, [last[0], base], [first[0], base]];
  const below = base > Math.max(...face.ground.map(([, y]) => y));
  return [
    { layer: "always", fill: "ground", mesh: { triangles, edges: [] } },
    ...(below
      ? [
          {
            layer: "always" as const,
            fill: "paper" as const,
            mesh: prismMesh({ outline, holes: [], z: [back, back] }),
          },
        ]
      : []),
  ];
}

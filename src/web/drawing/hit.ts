/** What lies under a point of the drawing. */
import type { Design } from "../../design.ts";
import { distance, type Point } from "../../geometry/point.ts";
import { polygonContains } from "../../geometry/polygon.ts";
import { rectContains } from "../../geometry/rect.ts";
import { faceById } from "../../project/lookup.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import { jointId } from "../picks/joint-id.ts";
import type { Pick } from "../picks/pick.ts";
import type { PlacedFace } from "./elevation.ts";

/** @param reach how far beside a thing still counts, mm: a finger is wider than a joint */
export function pickAt(
  { design, faces }: { readonly design: Design; readonly faces: readonly PlacedFace[] },
  [x, y]: Point,
  reach: number,
): Pick | undefined {
  const placed = faces.find(({ extent }) => x >= extent.x[0] - reach && x <= extent.x[1] + reach);
  if (!placed) return undefined;
  const at = [x - placed.dx, y] as const;
  const given = faceById(design.project, placed.face.id);
  const through = given?.penetrations?.find(
    (one) => distance(at, [one.x, one.y]) <= Math.max(one.diameter / 2, reach),
  );
  if (through) return { kind: "penetration", face: placed.face.id, id: through.id };
  const line = given?.lines?.find((one) => Math.abs(one.y - y) <= reach / 2);
  if (line) return { kind: "line", face: placed.face.id, id: line.id };
  return pickOnFace(placed.face, at, reach);
}

function pickOnFace(face: FaceLayout, at: Point, reach: number): Pick | undefined {
  const lining = face.pieces.find(({ kind, outline }) => kind === "return" && polygonContains(outline, at));
  if (lining) return { kind: "piece", face: face.id, id: lining.mark };
  const opening = face.openings.find(({ region }) => rectContains(region, at));
  if (opening) return { kind: "opening", face: face.id, id: opening.id };
  const joint = face.joints.findIndex(
    ({ region, holes, width }) =>
      // A joint too thin to be seen cannot be meant.
      width > reach / 3 && polygonContains(region, at) && !holes.some((hole) => polygonContains(hole, at)),
  );
  if (joint >= 0) return { kind: "joint", face: face.id, id: jointId(face, joint) };
  const piece = face.pieces.find(
    ({ kind, outline, holes }) =>
      (kind === "sheet" || kind === "board" || kind === "flashing") &&
      polygonContains(outline, at) &&
      !holes.some((hole) => polygonContains(hole, at)),
  );
  if (piece) return { kind: "piece", face: face.id, id: piece.mark };
  const zone = face.zones.find(({ region }) => polygonContains(region, at));
  return zone && nearestPiece(face, { zone: zone.id, at });
}

/** In a gap too thin to be meant, the board or sheet beside it. */
function nearestPiece(face: FaceLayout, { zone, at: [x, y] }: { zone: string; at: Point }): Pick {
  let best: { readonly far: number; readonly mark: string } | undefined;
  for (const { kind, mark, outline } of face.pieces) {
    if (kind !== "sheet" && kind !== "board") continue;
    const xs = outline.map((point) => point[0]);
    const ys = outline.map((point) => point[1]);
    const far = Math.hypot(
      Math.max(Math.min(...xs) - x, x - Math.max(...xs), 0),
      Math.max(Math.min(...ys) - y, y - Math.max(...ys), 0),
    );
    if (!best || far < best.far) best = { far, mark };
  }
  return best ? { kind: "piece", face: face.id, id: best.mark } : { kind: "zone", face: face.id, id: zone };
}

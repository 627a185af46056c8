/**
 * Under a rake a course ends in a point. Where the point becomes high enough to hold a screw, a short batten on the top
 * plates takes it, unless a stud's batten is near.
 */
import type { Interval } from "../../geometry/interval.ts";
import { polygonBounds, sliceVertical } from "../../geometry/polygon.ts";
import { snap } from "../../units/length.ts";
import type { BattenWish, DraftPiece } from "../draft.ts";
import type { BoardZone } from "./zone.ts";

const STEP_MM = 10;
/** Height of the short batten: two screws in the plates. */
const HEIGHT_MM = 100;

export function tipWishes(zone: BoardZone, pieces: readonly DraftPiece[]): BattenWish[] {
  if (zone.ground.rectangular) return [];
  const needed = 2 * zone.cladding.edgeDistance.value + 2;
  return pieces.flatMap((piece) => {
    const box = polygonBounds(piece.outline);
    return (["left", "right"] as const).flatMap((side) => tipOf(zone, piece, box.x, { side, needed }));
  });
}

function tipOf(
  zone: BoardZone,
  piece: DraftPiece,
  x: Interval,
  { side, needed }: { side: "left" | "right"; needed: number },
): BattenWish[] {
  const into = side === "left" ? 1 : -1;
  const start = side === "left" ? x[0] : x[1];
  if (heightAt(piece, start + into) >= needed) return [];
  let at = start;
  while (at >= x[0] && at <= x[1] && heightAt(piece, at) < needed) at += into * STEP_MM;
  if (at < x[0] || at > x[1]) return [];
  const inside: Interval = [snap(at), snap(at + into * zone.battenWidth)];
  const strip: Interval = into > 0 ? inside : [inside[1], inside[0]];
  const top = Math.max(...sliceVertical(zone.ground.region, (strip[0] + strip[1]) / 2).map(([, y]) => y));
  // A stud's batten a little further in does as well, since the point bears nothing but itself.
  const near = zone.studs.some((centre) => {
    const inward = (centre - at) * into;
    return inward >= 0 && inward < zone.cladding.maxOverhang.value;
  });
  return near ? [] : [{ x: strip, reason: "short", y: [snap(top - HEIGHT_MM), top] }];
}

function heightAt(piece: DraftPiece, x: number): number {
  return sliceVertical(piece.outline, x).reduce((sum, [from, to]) => sum + to - from, 0);
}

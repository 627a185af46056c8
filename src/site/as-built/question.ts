/** What is asked of a face's cladding so that it can be laid again: bounds on its edges, from what was measured and what stands. */
import type { Demands } from "../../codes/demands.ts";
import { type Edge, edgesOf, facingEdges } from "../../geometry/edges.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import type { Project } from "../../project/schema/project.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import { toGridSteps } from "../../units/length.ts";
import type { SiteState } from "../journal/fold.ts";
import { type Allowed, allowedOf, UNSEEN_MM, type Weights, weightsOf } from "./allowed.ts";
import { bearings } from "./bearings.ts";
import type { Gives } from "./bounds.ts";
import type { LevelCosts } from "./cheapest-cover.ts";
import { type FacePiece, facePieces } from "./face-pieces.ts";
import type { CutQuestion } from "./fewest-cuts.ts";
import type { Measured, Side } from "./measured.ts";
import { sizes } from "./sizes.ts";
import { type Handle, Unknowns, wallAt } from "./unknowns.ts";

/** Further apart than this nothing stands beside another (mm): flashings and thresholds take no more. */
const REACH_MM = 60;
/** No piece leaves its place by more (mm): further off it would be another layout. */
const FARTHEST_MOVE_MM = 40;

export interface AskedFace {
  readonly project: Project;
  readonly demands: Pick<Demands, "boards">;
  readonly face: FaceLayout;
  readonly measured: Measured;
  readonly told?: Pick<SiteState, "pieces" | "short">;
}

/** What a bound is for, named where it cannot hold. */
export interface Asked {
  readonly marks: readonly string[];
  readonly opening?: string;
}

/** A gap or clearance: between two pieces, or a piece and something that does not move. */
export interface Gap {
  readonly kind: "joint" | "clearance";
  readonly axis: 0 | 1;
  readonly marks: readonly string[];
  readonly opening?: string;
  readonly side?: Side;
  readonly before: Handle;
  readonly after: Handle;
  /** What it was set out to, and its band (steps). */
  readonly nominal: number;
  readonly least: number;
  readonly most: number;
}

export interface FaceQuestion extends CutQuestion {
  readonly pieces: readonly FacePiece[];
  readonly unknowns: readonly [x: Unknowns, y: Unknowns];
  readonly gaps: readonly Gap[];
  /** By the numbers that bounds carry. */
  readonly asked: readonly Asked[];
  readonly allowed: Allowed;
}

/** Of the weights one is a thousand, so that among equal costs fewer pieces change at all. */
const WEIGHT = 1000;

export function questionOf(asking: AskedFace): FaceQuestion {
  const { project, face, told } = asking;
  const pieces = facePieces(project, face, told);
  const unknowns: readonly [Unknowns, Unknowns] = [new Unknowns("x", pieces), new Unknowns("y", pieces)];
  const asked: Asked[] = [];
  const gaps: Gap[] = [];
  const making: Making = { ...asking, pieces, unknowns, asked, gaps, allowed: allowedOf(project) };
  for (const i of pieces.keys()) shapeOf(making, i);
  besideEachOther(making);
  throughZones(making);
  inOneLine(making);
  bearings(making);
  return {
    pieces,
    unknowns,
    gaps,
    asked,
    allowed: making.allowed,
    costs: pieces.map((piece) => costsOf(piece, weightsOf(project))),
    axes: unknowns.map(({ drawn, bounds }) => ({ unknowns: drawn.length, bounds })),
  };
}

export interface Making extends AskedFace {
  readonly pieces: readonly FacePiece[];
  readonly unknowns: readonly [Unknowns, Unknowns];
  readonly asked: Asked[];
  readonly gaps: Gap[];
  readonly allowed: Allowed;
}

function costsOf({ isFree, come }: FacePiece, weights: Weights): LevelCosts {
  if (!isFree) return [undefined, undefined];
  if (come === "uncut") return [1, 1];
  const [trim, remake] =
    come === "cut" ? [weights.trimCut, weights.remakeCut] : [weights.trimFinished, weights.remakeFinished];
  return [trim * WEIGHT + 1, Math.max(trim, remake) * WEIGHT + 2];
}

/** A kept piece keeps its shape; trimmed, its edges go inward; made again, what its stock gives. */
function shapeOf(making: Making, index: number): void {
  const piece = making.pieces[index] as FacePiece;
  if (!piece.isFree) return;
  const of = askedBy(making, { marks: [piece.piece.mark] });
  for (const unknowns of making.unknowns) {
    const place = unknowns.place(index);
    const drawn = unknowns.drawn[place.unknown] as number;
    const far = toGridSteps(FARTHEST_MOVE_MM);
    unknowns.between(wallAt(0), place, { least: drawn - far, most: drawn + far }, { of });
    const trim: Gives = { piece: index, level: 1 };
    const remake: Gives = { piece: index, level: 2 };
    for (const { axis, at, side } of piece.edges) {
      if (axis !== unknowns.axis) continue;
      const off = toGridSteps(at) - drawn;
      const edge = unknowns.edge(index, at);
      // Outward is a low edge lower, a high edge higher.
      unknowns.between(place, edge, { least: off }, { of, gives: side === "low" ? remake : trim });
      unknowns.between(place, edge, { most: off }, { of, gives: side === "low" ? trim : remake });
    }
    for (const { axis, at } of piece.holes) {
      if (axis !== unknowns.axis) continue;
      const edge = unknowns.edge(index, at);
      const off = toGridSteps(at) - drawn;
      unknowns.between(place, edge, { least: off, most: off }, { of, gives: remake });
      const play = toGridSteps(making.allowed.clearance);
      const stands = toGridSteps(at);
      unknowns.between(wallAt(0), edge, { least: stands - play, most: stands + play }, { of });
    }
    for (const at of new Set(piece.locked[unknowns.axis])) {
      const stands = toGridSteps(at);
      unknowns.between(wallAt(0), unknowns.edge(index, at), { least: stands, most: stands }, { of });
    }
    sizes(making, { index, unknowns, of });
  }
}

function askedBy({ asked }: Pick<Making, "asked">, what: Asked): number {
  asked.push(what);
  return asked.length - 1;
}

type Standing =
  | { readonly piece: number }
  | { readonly opening: string; readonly sideOf: Side; readonly real: number };

/** Gaps between pieces, and clearances beside openings where those were measured to be. */
function besideEachOther(making: Making): void {
  const { pieces, face, unknowns, measured, allowed } = making;
  const own = pieces.flatMap(({ edges }, piece) =>
    edges.map((edge): Edge & Standing => ({ ...edge, piece })),
  );
  const openings = face.openings.flatMap(({ id, region }) =>
    edgesOf(rectOutline(region)).map((edge): Edge & Standing => {
      const sideOf: Side =
        edge.axis === "x" ? (edge.side === "low" ? "left" : "right") : edge.side === "low" ? "sill" : "head";
      const found = measured.openings
        .find((one) => one.face === face.id && one.opening === id)
        ?.sides.find(({ side }) => side === sideOf)?.measured;
      return { ...edge, opening: id, sideOf, real: found ?? edge.at };
    }),
  );
  const seen = new Set<string>();
  for (const { before, after } of facingEdges([...own, ...openings], REACH_MM)) {
    const ends = [before, after] as const;
    if (ends.every((edge) => "opening" in edge)) continue;
    const axis = before.axis === "x" ? 0 : 1;
    const name = ends.map((edge) =>
      "piece" in edge ? `${edge.piece} ${edge.at}` : `${edge.opening} ${edge.sideOf}`,
    );
    const key = `${axis} ${name.join(" ")}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const handles = ends.map(
      (edge): Handle => ("piece" in edge ? unknowns[axis].edge(edge.piece, edge.at) : wallAt(edge.real)),
    ) as [Handle, Handle];
    const marks = ends.flatMap((edge) => ("piece" in edge ? [pieces[edge.piece]?.piece.mark ?? ""] : []));
    const opening = ends.flatMap((edge) => ("opening" in edge ? [edge] : []))[0];
    const gap = after.at - before.at;
    const [least, most] = opening
      ? [Math.max(0, gap - allowed.clearance), gap + allowed.clearance]
      : jointBand(
          making,
          ends.flatMap((edge) => ("piece" in edge ? (pieces[edge.piece] ?? []) : [])),
          before,
          gap,
        );
    const band = { least: toGridSteps(least), most: toGridSteps(most) };
    const of = askedBy(making, { marks, ...(opening && { opening: opening.opening }) });
    unknowns[axis].between(handles[0], handles[1], band, { of, drawn: toGridSteps(gap) });
    making.gaps.push({
      kind: opening ? "clearance" : "joint",
      axis,
      marks,
      ...(opening && { opening: opening.opening, side: opening.sideOf }),
      before: handles[0],
      after: handles[1],
      nominal: toGridSteps(gap),
      ...band,
    });
  }
}

/** A joint may spread as allowed, within what boards may be apart, sheets at least, and the membrane at most; never narrower a band than it has. */
function jointBand(
  { project, demands, allowed }: Making,
  sides: readonly FacePiece[],
  { axis }: Edge,
  gap: number,
): readonly [number, number] {
  let [least, most] = [Math.max(0, gap - allowed.joint), gap + allowed.joint];
  for (const { cladding, piece } of sides) {
    if (cladding?.kind === "boards" && piece.grain !== axis) {
      const band = demands.boards[cladding.id]?.gapBand ?? cladding.gapBand;
      [least, most] = [Math.max(least, band[0]), Math.min(most, band[1])];
    }
    if (cladding?.kind === "sheets") least = Math.max(least, cladding.dataSheet.minJoint);
  }
  const membrane = project.limits.membrane?.maxGap.value;
  if (membrane !== undefined) most = Math.min(most, membrane);
  return [Math.min(least, gap), Math.max(most, gap)];
}

/** Where cladding ends at its zone's edge, it stays there, or goes with the end of the wall where that was measured. */
function throughZones(making: Making): void {
  const { face, pieces, unknowns, measured, allowed } = making;
  const reach = polygonBounds(face.outline).x;
  const shifts = new Map(
    measured.ends
      .filter((one) => one.face === face.id)
      .map(({ end, drawn, measured: at }) => [end === "left" ? reach[0] : reach[1], at - drawn]),
  );
  pieces.forEach(({ piece, edges, isFree }, index) => {
    const zone = face.zones.find(({ id }) => id === piece.zone);
    if (!isFree || !zone) return;
    const rim = edgesOf(zone.region);
    for (const edge of edges) {
      const near = rim.find(
        (one) =>
          one.axis === edge.axis &&
          one.side === edge.side &&
          Math.abs(one.at - edge.at) <= REACH_MM &&
          (edge.side === "low" ? one.at <= edge.at : one.at >= edge.at) &&
          one.over[0] < edge.over[1] &&
          one.over[1] > edge.over[0],
      );
      if (!near) continue;
      const shift = edge.axis === "x" ? shifts.get(near.at) : undefined;
      const play = shift !== undefined ? allowed.clearance : near.at === edge.at ? UNSEEN_MM : allowed.joint;
      const stands = edge.at + (shift ?? 0);
      const axis = edge.axis === "x" ? 0 : 1;
      const of = askedBy(making, { marks: [piece.mark] });
      const band = { least: toGridSteps(stands - play), most: toGridSteps(stands + play) };
      const to = unknowns[axis].edge(index, edge.at);
      unknowns[axis].between(wallAt(0), to, band, { of, drawn: toGridSteps(stands) });
    }
  });
}

/** Courses run on in one line past butts and openings, and round the corners of the building; so do level joints of neighbours. */
function inOneLine(making: Making): void {
  const { pieces, face } = making;
  const reach = polygonBounds(face.outline).x;
  const courses = new Map<string, number[]>();
  pieces.forEach(({ piece, cladding }, index) => {
    if (cladding?.kind !== "boards" || piece.course === undefined) return;
    const key = `${piece.zone} ${piece.course} ${piece.grain}`;
    courses.set(key, [...(courses.get(key) ?? []), index]);
  });
  const along = (index: number): number => {
    const { piece } = pieces[index] as FacePiece;
    return polygonBounds(piece.outline)[piece.grain === "y" ? "y" : "x"][0];
  };
  for (const course of courses.values()) {
    const row = [...course].sort((a, b) => along(a) - along(b));
    for (const [i, next] of row.slice(1).entries()) alike(making, row[i] as number, next);
  }
  pieces.forEach(({ piece, isFree, edges }, index) => {
    const { x } = polygonBounds(piece.outline);
    if (!isFree || piece.grain === "y" || (x[0] > reach[0] && x[1] < reach[1])) return;
    const of = askedBy(making, { marks: [piece.mark] });
    const y = making.unknowns[1];
    for (const { axis, at } of edges) {
      if (axis !== "y") continue;
      const [least, most] = [toGridSteps(at - UNSEEN_MM), toGridSteps(at + UNSEEN_MM)];
      y.between(wallAt(0), y.edge(index, at), { least, most }, { of });
    }
  });
  const own = pieces.flatMap(({ edges, cladding }, piece) =>
    cladding?.kind === "sheets" ? edges.map((edge) => ({ ...edge, piece })) : [],
  );
  for (const { before, after } of facingEdges(own, REACH_MM)) {
    if (before.axis === "x") alike(making, before.piece, after.piece);
  }
}

/** Edges along the run that were in one line stay in it, but for what is not seen. */
function alike(making: Making, one: number, other: number): void {
  const [a, b] = [making.pieces[one], making.pieces[other]];
  if (!a || !b) return;
  const axis = a.piece.grain === "y" && a.cladding?.kind === "boards" ? 0 : 1;
  const unknowns = making.unknowns[axis];
  const of = askedBy(making, { marks: [a.piece.mark, b.piece.mark] });
  const play = toGridSteps(UNSEEN_MM);
  for (const edge of a.edges) {
    if (edge.axis !== unknowns.axis) continue;
    if (!b.edges.some((same) => same.axis === edge.axis && same.at === edge.at && same.side === edge.side))
      continue;
    const [from, to] = [unknowns.edge(one, edge.at), unknowns.edge(other, edge.at)];
    unknowns.between(from, to, { least: -play, most: play }, { of });
  }
}

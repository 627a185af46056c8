/** What setting-out has to say of a zone's supports: missing holds, screw lengths, overhangs, backing, packers. */
import { type Finding, finding } from "../findings/finding.ts";
import { polygonBounds, sliceVertical } from "../geometry/polygon.ts";
import type { BoardCladding, Cladding, SheetCladding } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import { snap } from "../units/length.ts";
import type { DraftBatten } from "./battens.ts";
import type { Fixing, Piece } from "./facade.ts";
import { buildUpOf } from "./resolve.ts";
import { turnedPolygon } from "./transpose.ts";
import type { ZoneTask } from "./zone-layout-task.ts";

interface Laid {
  readonly pieces: readonly Piece[];
  readonly battens: readonly DraftBatten[];
  readonly backing: readonly Piece[];
  readonly missed: readonly { readonly batten: DraftBatten; readonly missed: readonly number[] }[];
}

export function supportFindings(task: ZoneTask, cladding: Cladding, laid: Laid): Finding[] {
  const clad = laid.pieces.filter(({ kind }) => kind === "sheet" || kind === "board");
  const battens = laid.pieces.filter(({ kind }) => kind === "batten");
  return [
    ...unheld(task, clad),
    ...missedTimber(task, laid),
    ...bites(task, "cladding", [
      ...clad,
      ...laid.pieces.filter(({ kind }) => kind === "rail" || kind === "post"),
    ]),
    ...bites(task, "studs", battens),
    ...(cladding.kind === "boards" ? overhangs(task, cladding, clad) : edgeDistances(task, cladding, clad)),
    ...backingFinding(task, laid.backing),
    ...softPackers(task, laid.pieces),
  ];
}

function where(task: ZoneTask, marks: readonly string[] = []) {
  return { face: task.ground.face.id, zone: task.ground.zone.id, ...(marks.length > 0 && { marks }) };
}

/** Pieces that fewer than two screws hold turn about the one. */
function unheld(task: ZoneTask, clad: readonly Piece[]): Finding[] {
  const loose = clad.filter(({ fixings }) => fixings.length < 2).map(({ mark }) => mark);
  return [
    finding({
      code: "S008",
      outcome: loose.length > 0 ? "fail" : "pass",
      where: where(task, loose),
      says: message(loose.length > 0 ? "setout.support.loose" : "setout.support.held", {
        pieces: clad.length,
        loose: loose.length,
      }),
      ...(loose.length > 0 && { hint: message("setout.support.loose.hint") }),
      source: { kind: "common practice" },
    }),
  ];
}

function missedTimber(task: ZoneTask, laid: Laid): Finding[] {
  const marks = laid.missed.filter(({ missed }) => missed.length > 0).map(({ batten }) => batten.mark);
  if (marks.length === 0) return [];
  return [
    finding({
      code: "S009",
      outcome: "fail",
      where: where(task, marks),
      says: message("setout.support.no-timber", { battens: marks.length }),
      hint: message("setout.support.no-timber.hint"),
      source: { kind: "common practice" },
    }),
  ];
}

function bites(task: ZoneTask, kind: "cladding" | "studs", pieces: readonly Piece[]): Finding[] {
  const limit = task.project.limits.screwBite[kind];
  let least: { readonly mark: string; readonly fixing: Fixing } | undefined;
  for (const { mark, fixings } of pieces) {
    for (const fixing of fixings) {
      if (!least || fixing.bite < least.fixing.bite) least = { mark, fixing };
    }
  }
  if (!least) return [];
  const { fixing } = least;
  const passed = fixing.through.map(({ thickness }) => thickness).join(" − ");
  const length = task.project.stock.screws.find(({ id }) => id === fixing.screw)?.length ?? 0;
  const short = fixing.bite < limit.value;
  return [
    finding({
      code: "S016",
      outcome: short ? "fail" : "pass",
      where: where(task, [least.mark]),
      says: message(`setout.bite.${kind}`, {
        screw: fixing.screw,
        bite: fixing.bite,
        limit: limit.value,
        into: fixing.into,
      }),
      ...(short && { hint: message("setout.bite.hint") }),
      demand: fixing.bite,
      limit: limit.value,
      unit: "mm",
      ratio: Math.round((limit.value / Math.max(fixing.bite, 0.001)) * 1000) / 1000,
      working: {
        formula: "b = min(l − Σt, s)",
        inputs: [
          { symbol: "l", meaning: message("setout.bite.length"), value: length, unit: "mm", basis: "given" },
          {
            symbol: "Σt",
            meaning: message("setout.bite.through"),
            value: snap(fixing.through.reduce((sum, { thickness }) => sum + thickness, 0)),
            unit: "mm",
            basis: "given",
          },
          {
            symbol: "limit",
            meaning: message("setout.bite.limit"),
            value: limit.value,
            unit: "mm",
            basis: limit.basis,
          },
        ],
        substituted: `${length} − ${passed} ≥ ${fixing.bite}`,
      },
      source: { kind: "common practice" },
    }),
  ];
}

/** How far boards stand past their last screw, measured to where a point under a rake is high enough for a screw. */
function overhangs(task: ZoneTask, cladding: BoardCladding, clad: readonly Piece[]): Finding[] {
  const limit = cladding.maxOverhang;
  const worst = clad
    .map((piece) => ({ mark: piece.mark, over: overhangOf(piece, cladding) }))
    .sort((a, b) => b.over - a.over);
  const far = worst.filter(({ over }) => over > limit.value + 1e-9);
  const most = worst[0];
  if (!most) return [];
  return [
    finding({
      code: "S010",
      outcome: far.length > 0 ? "attention" : "pass",
      where: where(
        task,
        (far.length > 0 ? far : [most]).map(({ mark }) => mark),
      ),
      says: message(far.length > 0 ? "setout.overhang.far" : "setout.overhang.good", {
        pieces: far.length,
        most: most.over,
        limit: limit.value,
      }),
      ...(far.length > 0 && { hint: message("setout.overhang.hint") }),
      demand: most.over,
      limit: limit.value,
      unit: "mm",
      ratio: Math.round((most.over / limit.value) * 1000) / 1000,
      source: { kind: "common practice" },
    }),
  ];
}

function overhangOf(piece: Piece, cladding: BoardCladding): number {
  if (piece.fixings.length === 0) return 0;
  const along = alongGrain(piece);
  const xs = along.fixings.map(({ x }) => x);
  const [left, right] = holdableExtent(along, 2 * cladding.edgeDistance.value);
  return snap(Math.max(Math.min(...xs) - left, right - Math.max(...xs)));
}

/** An upright board turned level, so that its length lies along x. */
function alongGrain(piece: Piece): Piece {
  if (piece.grain !== "y") return piece;
  return {
    ...piece,
    outline: turnedPolygon(piece.outline),
    holes: piece.holes.map(turnedPolygon),
    fixings: piece.fixings.map((fixing) => ({ ...fixing, x: fixing.y, y: fixing.x })),
  };
}

/** The stretch of a piece that is high enough for a screw, to the centimetre. */
function holdableExtent(piece: Piece, needed: number): readonly [number, number] {
  const { x } = polygonBounds(piece.outline);
  if (piece.outline.length === 4 && piece.holes.length === 0 && squareEnded(piece)) return x;
  const heightAt = (at: number): number =>
    sliceVertical(piece.outline, at).reduce((most, [from, to]) => Math.max(most, to - from), 0);
  let [left, right] = x;
  while (left < right && heightAt(left + 1) < needed) left += 10;
  while (right > left && heightAt(right - 1) < needed) right -= 10;
  return [left, right];
}

function squareEnded({ outline }: Piece): boolean {
  return outline.every((point, i) => {
    const next = outline[(i + 1) % outline.length];
    return next !== undefined && (point[0] === next[0] || point[1] === next[1]);
  });
}

/** How far the outermost screws of sheets stand from their upright edges, against the data sheet's band. */
function edgeDistances(task: ZoneTask, cladding: SheetCladding, clad: readonly Piece[]): Finding[] {
  const [least, most] = cladding.dataSheet.edgeDistance;
  const all = clad
    .filter(({ fixings }) => fixings.length > 0)
    .map((piece) => {
      const { x } = polygonBounds(piece.outline);
      const xs = piece.fixings.map((fixing) => fixing.x);
      const distances = [Math.min(...xs) - x[0], x[1] - Math.max(...xs)];
      return {
        mark: piece.mark,
        nearest: snap(Math.min(...distances)),
        farthest: snap(Math.max(...distances)),
      };
    });
  const off = all.filter(({ nearest, farthest }) => nearest < least - 1e-6 || farthest > most + 1e-6);
  const farthest = Math.max(...all.map((one) => one.farthest));
  const nearest = Math.min(...all.map((one) => one.nearest));
  if (all.length === 0) return [];
  return [
    finding({
      code: "S010",
      outcome: off.length > 0 ? "fail" : "pass",
      where: where(
        task,
        off.map(({ mark }) => mark),
      ),
      says: message(off.length > 0 ? "setout.edges.off" : "setout.edges.good", {
        pieces: off.length,
        nearest,
        farthest,
        least,
        most,
      }),
      ...(off.length > 0 && { hint: message("setout.edges.hint") }),
      demand: farthest,
      limit: most,
      unit: "mm",
      ratio: Math.round((farthest / most) * 1000) / 1000,
      source: { kind: "your data sheet" },
    }),
  ];
}

function backingFinding(task: ZoneTask, backing: readonly Piece[]): Finding[] {
  if (backing.length === 0) return [];
  return [
    finding({
      code: "S011",
      outcome: "attention",
      where: where(
        task,
        backing.map(({ mark }) => mark),
      ),
      says: message("setout.backing", { pieces: backing.length }),
      hint: message("setout.backing.hint"),
      source: { kind: "common practice" },
    }),
  ];
}

/** A packer over soft insulation has nothing to bear on: the screw bends and the batten sags into the wool. */
function softPackers(task: ZoneTask, pieces: readonly Piece[]): Finding[] {
  const packers = pieces.filter(({ kind }) => kind === "packer");
  const soft = buildUpOf(task.project, task.ground.zone).layers.some(
    (layer) =>
      layer.kind === "insulation" &&
      layer.bearing === "soft" &&
      (layer.battensHeldBy === undefined || layer.battensHeldBy === "adjustable screws"),
  );
  if (packers.length === 0 || !soft) return [];
  return [
    finding({
      code: "S017",
      outcome: "attention",
      where: where(task),
      says: message("setout.packers.soft", { packers: packers.length }),
      hint: message("setout.packers.soft.hint"),
      source: { kind: "common practice" },
    }),
  ];
}

/** P018: each sheet has one point that holds it, and room to move at every other. */
import { type Finding, finding } from "../findings/finding.ts";
import { distance } from "../geometry/point.ts";
import type { SheetCladding } from "../project/schema/project.ts";
import type { Fixing, Piece } from "../setout/facade.ts";
import { message } from "../text/message.ts";
import { type FaceContext, sheetZones, type ZoneView } from "./context.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

export function slidingHoles(context: FaceContext): Finding[] {
  return [...sheetZones(context).map(withReturns), ...returnsOfOthers(context)].flatMap((view) => {
    const loose = view.pieces.filter(({ fixings }) => fixings.length > 0 && !fixings.some(isFixed));
    return [...(loose.length > 0 ? [withoutFixedPoint(view, loose)] : []), ...tightest(context, view)];
  });
}

/** Returns cut from the zone's own sheets are judged with them. */
function withReturns(view: ZoneView<SheetCladding>): ZoneView<SheetCladding> {
  const own = view.returns.filter(({ cladding }) => cladding === undefined);
  return own.length === 0 ? view : { ...view, pieces: [...view.pieces, ...own] };
}

/** Returns of sheets that their zone is not clad with, one view a zone and cladding. */
function returnsOfOthers({ project, zones }: FaceContext): ZoneView<SheetCladding>[] {
  return zones.flatMap((view) => {
    const others = new Set(view.returns.flatMap(({ cladding }) => cladding ?? []));
    return [...others].flatMap((id) => {
      const index = project.claddings.findIndex((one) => one.id === id);
      const cladding = project.claddings[index];
      if (cladding?.kind !== "sheets") return [];
      const pieces = view.returns.filter((piece) => piece.cladding === id);
      return [{ ...view, cladding, claddingPath: `/claddings/${index}`, pieces }];
    });
  });
}

function isFixed({ kind }: Fixing): boolean {
  return kind === "fixed";
}

function withoutFixedPoint(view: ZoneView, loose: readonly Piece[]): Finding {
  return finding({
    code: "P018",
    outcome: "fail",
    where: { marks: loose.map(({ mark }) => mark), ...view.where },
    says: message("proof.holes.no-fixed-point", { count: loose.length }),
    hint: message("proof.holes.fix-one"),
    source: { kind: "common practice" },
  });
}

interface Sliding {
  readonly mark: string;
  readonly hole: number;
  readonly shank: number;
  readonly reach: number;
}

function tightest(context: FaceContext, view: ZoneView<SheetCladding>): Finding[] {
  const shank = context.project.stock.screws.find(({ id }) => id === view.cladding.screw)?.diameter;
  const movement = context.demands.sheets[view.cladding.id]?.movementMmPerM;
  const where = { path: view.claddingPath, ...view.where };
  const sliding = view.pieces.flatMap((piece) => slidingOf(piece, shank ?? 0));
  if (sliding.length === 0 || shank === undefined) return [];
  if (movement === undefined) {
    return [
      finding({
        code: "P018",
        outcome: "cannot evaluate",
        where: { ...where, path: "/site/climate/extremeTempC" },
        says: message("proof.sheet-joint.no-temperatures"),
        hint: message("proof.enter-temperatures"),
        source: { kind: "your data sheet" },
      }),
    ];
  }
  const needed = ({ reach }: Sliding): number => shank + (2 * movement * reach) / 1000;
  const governing = greatest(sliding, (one) => needed(one) - one.hole);
  if (!governing) return [];
  const limit = needed(governing);
  const free = holds("at least", { demand: governing.hole, limit });
  return [
    finding({
      code: "P018",
      outcome: free ? "pass" : "fail",
      where: { marks: [governing.mark], ...where },
      says: message(free ? "proof.holes.free" : "proof.holes.tight", {
        hole: governing.hole,
        needed: limit,
        reach: governing.reach,
      }),
      ...(free ? {} : { hint: message("proof.holes.larger") }),
      ...compared("at least", { demand: governing.hole, limit, unit: "mm" }),
      working: {
        formula: "d_h ≥ d + 2·m·L",
        inputs: [
          input("d_h", { meaning: "hole", value: governing.hole, unit: "mm", basis: "derived" }),
          input("d", { meaning: "shank", value: shank, unit: "mm", basis: "given" }),
          input("m", { meaning: "movement", value: movement, unit: "mm/m", basis: "typical" }),
          input("L", { meaning: "from-fixed-point", value: governing.reach, unit: "mm", basis: "derived" }),
        ],
        substituted: `${written(governing.hole)} ${free ? "≥" : "<"} ${shank} + 2 × ${written(movement, 2)} × ${written(governing.reach / 1000, 3)} = ${written(limit, 2)}`,
      },
      source: { kind: "your data sheet" },
    }),
  ];
}

/** The sliding points of a sheet that has a fixed one, each with its distance from the nearest. */
function slidingOf({ mark, fixings }: Piece, shank: number): Sliding[] {
  const fixed = fixings.filter(isFixed);
  if (fixed.length === 0) return [];
  return fixings
    .filter(({ kind }) => kind === "sliding")
    .map(({ x, y, hole }) => ({
      mark,
      hole,
      shank,
      reach: Math.min(...fixed.map((point) => distance([x, y], [point.x, point.y]))),
    }));
}

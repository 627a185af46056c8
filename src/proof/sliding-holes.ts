/** P018: each sheet has one point that holds it, and room to move at every other, under the head of a screw that serves. */
import { type Finding, finding } from "../findings/finding.ts";
import type { Screw, SheetCladding } from "../project/schema/project.ts";
import type { Fixing, Piece } from "../setout/facade.ts";
import { message } from "../text/message.ts";
import { type FaceContext, sheetZones, type ZoneView } from "./context.ts";
import {
  type Asked,
  askedOfScrews,
  headFor,
  holeFor,
  type SlidingPoint,
  serves,
  slidingPoints,
  smallestServing,
} from "./serving-screw.ts";
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

function tightest(context: FaceContext, view: ZoneView<SheetCladding>): Finding[] {
  const screw = context.project.stock.screws.find(({ id }) => id === view.cladding.screw);
  const shank = screw?.diameter;
  const movement = context.demands.sheets[view.cladding.id]?.movementMmPerM;
  const where = { path: view.claddingPath, ...view.where };
  const points = slidingPoints(view);
  if (points.length === 0 || shank === undefined) return [];
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
  const needed = ({ reach }: SlidingPoint): number => shank + (2 * movement * reach) / 1000;
  const governing = greatest(points, (one) => needed(one) - one.fixing.hole);
  if (!governing) return [];
  const asked = askedOfScrews(context.project, view, { points, movement });
  const smallest = smallestServing(context.project, asked);
  const { hole } = governing.fixing;
  const limit = needed(governing);
  const free = holds("at least", { demand: hole, limit });
  return [
    finding({
      code: "P018",
      outcome: free ? "pass" : "fail",
      where: { marks: [governing.mark], ...where },
      says: message(free ? "proof.holes.free" : "proof.holes.tight", {
        hole,
        needed: limit,
        reach: governing.reach,
        smallest: smallest
          ? message("proof.holes.smallest", {
              screw: smallest.id,
              diameter: smallest.diameter,
              length: smallest.length,
              drilled: holeFor(smallest, asked),
            })
          : message("proof.holes.none-serves"),
      }),
      ...(free ? {} : { hint: message("proof.holes.larger") }),
      ...compared("at least", { demand: hole, limit, unit: "mm" }),
      working: {
        formula: "d_h ≥ d + 2·m·L",
        inputs: [
          input("d_h", { meaning: "hole", value: hole, unit: "mm", basis: "derived" }),
          input("d", { meaning: "shank", value: shank, unit: "mm", basis: "given" }),
          input("m", { meaning: "movement", value: movement, unit: "mm/m", basis: "typical" }),
          input("L", { meaning: "from-fixed-point", value: governing.reach, unit: "mm", basis: "derived" }),
        ],
        substituted: `${written(hole)} ${free ? "≥" : "<"} ${shank} + 2 × ${written(movement, 2)} × ${written(governing.reach / 1000, 3)} = ${written(limit, 2)}`,
      },
      source: { kind: "your data sheet" },
      figures: context.demands.sheets[view.cladding.id]?.temperatures?.figures ?? [],
    }),
    ...(screw && !serves(screw, asked) ? [notServing(context, view, { screw, asked, smallest })] : []),
  ];
}

interface NotServing {
  readonly screw: Screw;
  readonly asked: Asked;
  /** Of stock, where there is one that serves. */
  readonly smallest: Screw | undefined;
}

/**
 * The screw that was chosen leaves a hole uncovered, bites too little or comes out behind. No failure: movement is an upper
 * bound, and what bites too little another rule fails.
 */
function notServing(
  { project }: FaceContext,
  view: ZoneView<SheetCladding>,
  { screw, asked, smallest }: NotServing,
): Finding {
  const limit = headFor(screw, asked);
  const [least, most] = asked.lengths;
  const covers = holds("at least", { demand: screw.headDiameter, limit });
  const short = screw.length < least;
  const bound = short ? least : most;
  const bite = project.limits.screwBite.cladding;
  const comparison = covers
    ? compared(short ? "at least" : "at most", { demand: screw.length, limit: bound, unit: "mm" })
    : compared("at least", { demand: screw.headDiameter, limit, unit: "mm" });
  return finding({
    code: "P018",
    outcome: "attention",
    where: { path: `${view.claddingPath}/screw`, ...view.where },
    says: message(`proof.holes.${covers ? (short ? "short" : "long") : "uncovered"}`, {
      screw: screw.id,
      head: screw.headDiameter,
      length: screw.length,
      drilled: holeFor(screw, asked),
      limit: covers ? bound : limit,
    }),
    hint: smallest
      ? message("proof.holes.take", {
          screw: smallest.id,
          diameter: smallest.diameter,
          length: smallest.length,
          drilled: holeFor(smallest, asked),
        })
      : message("proof.holes.buy", {
          diameter: screw.diameter,
          head: limit,
          drilled: holeFor(screw, asked),
          least,
        }),
    ...comparison,
    working: covers
      ? {
          formula: short ? "l ≥ p + b" : "l ≤ p + h",
          inputs: [
            input("l", { meaning: "screw-length", value: screw.length, unit: "mm", basis: "given" }),
            short
              ? input("b", { meaning: "least-bite", value: bite.value, unit: "mm", basis: bite.basis })
              : input("p + h", { meaning: "passed-and-held", value: most, unit: "mm", basis: "derived" }),
          ],
          substituted: `${written(screw.length)} ${short ? "<" : ">"} ${written(bound)}`,
        }
      : {
          formula: "d_k ≥ 2·d_h − d",
          inputs: [
            input("d_k", { meaning: "head", value: screw.headDiameter, unit: "mm", basis: "given" }),
            input("d_h", { meaning: "hole", value: holeFor(screw, asked), unit: "mm", basis: "derived" }),
            input("d", { meaning: "shank", value: screw.diameter, unit: "mm", basis: "given" }),
          ],
          substituted: `${written(screw.headDiameter)} < 2 × ${written(holeFor(screw, asked))} − ${screw.diameter} = ${written(limit)}`,
        },
    source: { kind: "common practice" },
  });
}

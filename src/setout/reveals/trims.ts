/**
 * Trims of a reveal that is too shallow for returns: bent metal at each jamb, from over the sill to under the head flashing.
 * A flange lies on the battens beside the opening and is held there under the cladding; a leg goes back along their side
 * to the cavity's back, and one across it to the frame. Before a frame that stands deeper a last leg goes on along the
 * opening's side. They fill no joint: the cladding keeps its jamb clearance, and air and water pass above and below them.
 */
import { common, type Interval, intervalLength } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { rectOutline, rectsOverlap } from "../../geometry/rect.ts";
import { faceCode } from "../../project/lookup.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { massOfArea, type Wall } from "../behind/wall.ts";
import { BENT_METAL, developedWidth } from "../bent-metal.ts";
import { wholePiece } from "../draft.ts";
import { NO_HOLES, type Piece, SQUARE_ENDS } from "../facade.ts";
import { PLAY_MM } from "../flashings.ts";
import type { Asked } from "./asked.ts";
import { footOf } from "./sill.ts";

/** On the battens: it ends short of the cladding's screws, so that metal and cladding move by themselves (common practice). */
const FLANGE_MM = 15;
/** Narrower no bench folds a leg of thin sheet (common practice). */
export const LEAST_LEG_MM = 6;
/** Farther from the opening a batten is not its own. */
const REACH_MM = 60;
/** Between two rails that hold a flange, and from the last one to its end (common practice). */
const UNHELD_MM = 600;
const OVERHANG_MM = 300;

export interface Trim {
  readonly piece: Piece;
  /** Over the outer corners, from the flange (mm). */
  readonly legs: readonly number[];
}

/** The trims of both jambs; undefined where one cannot be bent, or finds nothing to be held by. */
export function trimsOf(wall: Wall, asked: Asked): readonly Trim[] | undefined {
  if (asked.reveal <= 0) return undefined;
  const left = trimOf(wall, asked, "left");
  const right = trimOf(wall, asked, "right");
  return left && right ? [left, right] : undefined;
}

function trimOf(wall: Wall, asked: Asked, side: "left" | "right"): Trim | undefined {
  const { opening, at, frame, gap, cavityBack } = asked;
  const y: Interval = [footOf(asked), opening.y[1]];
  const jamb = side === "left" ? opening.x[0] : opening.x[1];
  /** Towards the opening. */
  const inward = side === "left" ? 1 : -1;
  const held = holdersOf(wall, { y, jamb, inward });
  if (!held || y[1] <= y[0]) return undefined;
  const { holders, edge, front } = held;
  const base = snap(cavityBack + PLAY_MM);
  const inner = snap(frame + gap);
  const lip = cavityBack - inner >= LEAST_LEG_MM;
  const end = lip ? jamb : snap(jamb - inward * PLAY_MM);
  const flange = snap(edge - inward * FLANGE_MM);
  const profile: Point[] = [
    [flange, front],
    [edge, front],
    [edge, base],
    [end, base],
    ...(lip ? [[end, inner] as const] : []),
  ];
  const legs = profile.slice(1).map(([x, z], i) => {
    const [fromX, fromZ] = profile[i] as Point;
    return snap(Math.abs(x - fromX) + Math.abs(z - fromZ));
  });
  if (front <= base || (end - edge) * inward <= 0 || legs.some((leg) => leg < LEAST_LEG_MM)) return undefined;
  const length = snap(intervalLength(y));
  const width = snap(developedWidth(profile));
  const x: Interval = [Math.min(flange, end), Math.max(flange, end)];
  const under = { x: [Math.min(flange, edge), Math.max(flange, edge)] as const, y };
  const piece = wholePiece(
    {
      mark: `${faceCode(wall.face)}-Hj${side[0]}-${opening.id}`,
      kind: "flashing",
      face: wall.face.id,
      zone: at.ground.zone.id,
      outline: rectOutline({ x, y }),
      holes: NO_HOLES,
      z: [lip ? inner : base, front],
      ends: SQUARE_ENDS,
      planProfile: profile,
      material: "bent metal",
      cut: { length, width, thickness: BENT_METAL.thickness },
      why: {
        line: `${wall.face.id} jamb ${side} ${opening.id}`,
        rule: message("setout.why.flashing.jamb", { flange: FLANGE_MM }),
      },
    },
    {
      massKg: massOfArea(length, width, BENT_METAL.kgPerM2),
      supports: holders.map(({ mark }) => mark),
      removeBefore: wall.laid
        .filter(({ kind, outline }) => isCladding(kind) && rectsOverlap(polygonBounds(outline), under))
        .map(({ mark }) => mark),
      fixings: [],
    },
  );
  return { piece, legs };
}

function isCladding(kind: Piece["kind"]): boolean {
  return kind === "board" || kind === "sheet";
}

interface Held {
  readonly holders: readonly Piece[];
  /** The side nearest to the opening, which the trim's leg passes. */
  readonly edge: number;
  /** Where their outer side lies. */
  readonly front: number;
}

/** The battens or rails under the cladding's edge beside an opening, where they hold a flange all along it. */
function holdersOf(
  { laid }: Wall,
  { y, jamb, inward }: { readonly y: Interval; readonly jamb: number; readonly inward: 1 | -1 },
): Held | undefined {
  const near = laid.flatMap((piece) => {
    if (piece.kind !== "batten" && piece.kind !== "counter-batten" && piece.kind !== "rail") return [];
    const box = polygonBounds(piece.outline);
    const edge = inward === 1 ? box.x[1] : box.x[0];
    const off = (jamb - edge) * inward;
    const along = common(box.y, y);
    return off > 0 && off <= REACH_MM && along ? [{ piece, edge, along }] : [];
  });
  const front = Math.max(...near.map(({ piece }) => piece.z[1]));
  const outer = near.filter(({ piece }) => piece.z[1] === front);
  const edge = inward * Math.max(...near.map((one) => inward * one.edge));
  const reached = outer.filter((one) => (edge - one.edge) * inward <= FLANGE_MM / 2);
  return isHeldAlong(
    y,
    reached.map(({ along }) => along),
  )
    ? { holders: reached.map(({ piece }) => piece), edge, front }
    : undefined;
}

function isHeldAlong([from, to]: Interval, held: readonly Interval[]): boolean {
  const sorted = [...held].sort((a, b) => a[0] - b[0]);
  const [first] = sorted;
  if (!first || first[0] - from > OVERHANG_MM) return false;
  let reached = first[1];
  for (const [low, high] of sorted) {
    if (low - reached > UNHELD_MM) return false;
    reached = Math.max(reached, high);
  }
  return to - reached <= OVERHANG_MM;
}

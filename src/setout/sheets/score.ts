/**
 * What a layout costs, so that layouts can be compared. The weights are ours, in the order of common practice: no notch
 * round an opening, no piece beyond the stock, no sliver, few sheets, joints that line up, few blocks behind them.
 */

export const WEIGHTS = {
  /** Each piece that is too large for the stock. */
  oversize: 5000,
  /** Each opening that a sheet is cut round in an L or a U. */
  notch: 1000,
  /** Each piece under the floor, rising to twice this as it nears nothing. */
  sliver: 300,
  /** Each pair of neighbouring level joints closer than the offset pattern asks. */
  crowded: 150,
  /** A piece under the wish: this times the share by which it falls short. */
  narrow: 40,
  /** Each sheet. */
  sheet: 20,
  /** A joint that no opening, line of the face, pin or equal division asks for. */
  offLine: 4,
  /** A level joint on a line of the face, but of no opening in the zone. */
  otherLine: 2,
  /** A level joint on a sill of the zone: heads come first. */
  sill: 1,
  /** Each edge at an upright joint whose batten stands beside the studs, so that blocks go in behind it. */
  backing: 2,
  /** Between layouts that are equal otherwise, the more even one: by the square of each side over the module. */
  even: 0.1,
} as const;

export interface Score {
  readonly total: number;
  readonly notches: number;
  readonly slivers: number;
  readonly sheets: number;
  readonly oversize: number;
  /** Edges at upright joints whose battens need blocks between the studs. */
  readonly backing: number;
  /** Joints off every line, and neighbouring joints that break the pattern. */
  readonly misaligned: number;
}

export const NO_COST: Score = {
  total: 0,
  notches: 0,
  slivers: 0,
  sheets: 0,
  oversize: 0,
  backing: 0,
  misaligned: 0,
};

export function addScores(a: Score, b: Score): Score {
  return {
    total: a.total + b.total,
    notches: a.notches + b.notches,
    slivers: a.slivers + b.slivers,
    sheets: a.sheets + b.sheets,
    oversize: a.oversize + b.oversize,
    backing: a.backing + b.backing,
    misaligned: a.misaligned + b.misaligned,
  };
}

/** A piece by its size, what it is measured against, and the openings that it is cut round. */
export interface PieceFacts {
  readonly width: number;
  readonly height: number;
  readonly module: number;
  readonly sliver: { readonly wish: number; readonly floor: number };
  readonly notches: number;
  readonly fits: boolean;
}

export function pieceCost({ width, height, module, sliver, notches, fits }: PieceFacts): number {
  const share = Math.min(width, height) / module;
  const thin =
    share < sliver.floor
      ? WEIGHTS.sliver * (2 - share / sliver.floor)
      : share < sliver.wish
        ? WEIGHTS.narrow * (1 - share / sliver.wish)
        : 0;
  const uneven = (WEIGHTS.even * (width * width + height * height)) / (module * module);
  return WEIGHTS.sheet + notches * WEIGHTS.notch + (fits ? 0 : WEIGHTS.oversize) + thin + uneven;
}

export function pieceScore(piece: PieceFacts): Score {
  const isSliver = Math.min(piece.width, piece.height) / piece.module < piece.sliver.floor;
  return {
    ...NO_COST,
    total: pieceCost(piece),
    notches: piece.notches,
    slivers: isSliver ? 1 : 0,
    sheets: 1,
    oversize: piece.fits ? 0 : 1,
  };
}

/** A level joint by the cost of its line. */
export function levelJointScore(cost: number): Score {
  return { ...NO_COST, total: cost, misaligned: cost >= WEIGHTS.offLine ? 1 : 0 };
}

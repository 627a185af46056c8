/**
 * The plane search done the plain way, sharing no code with it: every batten of every thickness, every handful of packers,
 * every planed thickness, one after another, each rule looked up in the file as it is written.
 */
export interface SmallWall {
  readonly battens: readonly number[];
  readonly packers: readonly number[];
  /** Lengths of the stock. */
  readonly screws: {
    readonly sheet: readonly number[];
    readonly board: readonly number[];
    readonly batten: readonly number[];
  };
  readonly insulation: number;
  readonly sheathing: number;
  readonly gasket: number;
  readonly board: number;
  readonly sheet: number;
  readonly frame: number;
  readonly within: number;
  readonly cavityMin: number;
  readonly bite: { readonly cladding: number; readonly studs: number };
  readonly planing: { readonly least: number; readonly most: number; readonly step: number };
  /** Board thickness of each lot. */
  readonly lots: readonly number[];
}

export interface BruteAnswer {
  readonly all: number;
  /** By `batten+packing|batten+packing board`: the rules that fail, sorted. Faces that stand apart are not in it. */
  readonly meeting: ReadonlyMap<string, string>;
  /** Of those that keep every rule: fewest rules of proportion newly broken, then fewest packers, then least planing. */
  readonly best: Best | undefined;
}

export interface Best {
  readonly broken: number;
  readonly packers: number;
  readonly planing: number;
}

const round = (value: number): number => Math.round(value * 1e4) / 1e4;

export function bruteForce(wall: SmallWall): BruteAnswer {
  const piles = pilesOf(wall.packers);
  const thicknesses = [...new Set(wall.battens)];
  const boards = boardsOf(wall);
  const meeting = new Map<string, string>();
  let best: BruteAnswer["best"];
  for (const board of boards) {
    for (const left of thicknesses) {
      for (const [leftPile, leftPieces] of piles) {
        for (const right of thicknesses) {
          for (const [rightPile, rightPieces] of piles) {
            const boardFace = round(wall.insulation + leftPile + left + board);
            const sheetFace = round(wall.insulation + rightPile + right + wall.gasket + wall.sheet);
            if (round(Math.abs(boardFace - sheetFace)) > wall.within) continue;
            const failed = new Set<string>();
            if (round(leftPile + left) < wall.cavityMin) failed.add("cavity");
            if (round(rightPile + right + wall.gasket) < wall.cavityMin) failed.add("cavity");
            if (!holds(wall.screws.board, { passes: board, batten: left, bite: wall.bite.cladding }))
              failed.add("cladding-screw");
            const passes = wall.sheet + wall.gasket;
            if (!holds(wall.screws.sheet, { passes, batten: right, bite: wall.bite.cladding }))
              failed.add("cladding-screw");
            const longest = Math.max(...wall.screws.batten);
            for (const stack of [leftPile + left, rightPile + right]) {
              const intoStud = round(longest - wall.insulation - stack - wall.sheathing);
              if (Math.min(intoStud, 140) < wall.bite.studs) failed.add("batten-screw");
            }
            if (wall.frame > boardFace || wall.frame > sheetFace) failed.add("frame");
            if (wall.lots.some((lot) => lot < board)) failed.add("lot");
            if (refusing(board).length === 3) failed.add("proportion");
            const name = `${left}+${leftPile}|${right}+${rightPile} ${board}`;
            meeting.set(name, [...failed].sort().join(" "));
            if (failed.size > 0) continue;
            const one = {
              broken: refusing(board).filter((family) => !refusing(wall.board).includes(family)).length,
              packers: leftPieces + rightPieces,
              planing: round(Math.abs(wall.board - board)),
            };
            if (!best || rank(one) < rank(best)) best = one;
          }
        }
      }
    }
  }
  return { all: boards.length * (thicknesses.length * piles.size) ** 2, meeting, best };
}

/** No count comes near a thousand, no length either. */
function rank({ broken, packers, planing }: Best): number {
  return broken * 1e6 + packers * 1e3 + planing;
}

/** Boards are 100 mm wide here: 4:1 to 6:1 (BS 8605-1), up to 7:1 and up to 11:1 (German handbook and rule). */
function refusing(board: number): string[] {
  const ratio = 100 / board;
  return [
    ...(ratio < 4 || ratio > 6 ? ["British"] : []),
    ...(ratio > 7 ? ["handbook"] : []),
    ...(ratio > 11 ? ["German"] : []),
  ];
}

function boardsOf({ board, planing: { least, most, step } }: SmallWall): number[] {
  const found = new Set<number>([board]);
  for (let k = -100; k <= 100; k++) {
    const off = round(k * step);
    if (off >= least && off <= most && board - off > 0) found.add(round(board - off));
  }
  return [...found];
}

/** Thickness of every pile of up to four packers that is no thicker than 20 mm, with the fewest pieces that make it. */
function pilesOf(packers: readonly number[]): Map<number, number> {
  const piles = new Map<number, number>([[0, 0]]);
  const sizes = [0, ...packers];
  for (const a of sizes)
    for (const b of sizes)
      for (const c of sizes)
        for (const d of sizes) {
          const sum = round(a + b + c + d);
          const pieces = [a, b, c, d].filter((one) => one > 0).length;
          if (sum <= 20) piles.set(sum, Math.min(pieces, piles.get(sum) ?? 4));
        }
  return piles;
}

function holds(
  lengths: readonly number[],
  { passes, batten, bite }: { passes: number; batten: number; bite: number },
): boolean {
  return lengths.some((length) => {
    const inside = round(length - passes);
    return inside >= bite && batten >= bite && inside <= batten;
  });
}

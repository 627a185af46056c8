/**
 * Boards asked of the pile, and what it cannot give asked of the boards in stock. What neither has is listed as boards
 * to find, before a saw is switched on.
 */
import type { BoardCladding, Project, PileBoard as ProjectBoard } from "../../project/schema/project.ts";
import type { Piece } from "../../setout/facade.ts";
import type { LengthSolver, PileBoard, RippedBoard } from "../model.ts";
import type { PilePieces, PileRequest, PileResult } from "../pile.ts";
import { alikeNames } from "./alike.ts";
import { type BoughtSection, lengthPart, narrowest } from "./length-parts.ts";
import type { SawnPiece } from "./pieces.ts";
import { gathered, isCladding } from "./pieces.ts";
import type { BoardsToFind, LengthPart, PilePart, PileWant } from "./plan.ts";

export type PileSolver = (request: PileRequest) => PileResult;

/** How many improving steps the search of the pile may take. */
const BUDGET = 1500;

interface BoardPiece {
  readonly piece: Piece;
  readonly cladding: BoardCladding;
}

export interface Want extends PileWant {
  readonly lots: readonly string[];
  readonly pieces: readonly Piece[];
}

export interface BoardParts {
  readonly rips?: PilePart;
  readonly bought: readonly LengthPart[];
  readonly toFind: readonly BoardsToFind[];
}

export function boardParts(
  project: Project,
  sawn: readonly SawnPiece[],
  solvers: { readonly lengths: LengthSolver; readonly pile: PileSolver },
): BoardParts {
  const wants = wantsOf(project, sawn);
  const rips = ripPart(
    project,
    wants.filter(({ lots }) => lots.length > 0),
    solvers.pile,
  );
  const missing = new Set(rips?.result.lengths.plan.unplaced.map(({ demandId }) => demandId));
  const left = wants.flatMap((want) => {
    const pieces = want.lots.length > 0 ? want.pieces.filter(({ mark }) => missing.has(mark)) : want.pieces;
    return pieces.length > 0 ? [{ ...want, pieces }] : [];
  });
  const bought = boughtParts(project, left, solvers.lengths);
  const had = new Set(
    bought.flatMap(({ result }) =>
      result.plan.bars.flatMap((bar) => bar.pieces.map(({ demandId }) => demandId)),
    ),
  );
  return {
    ...(rips === undefined ? {} : { rips }),
    bought,
    toFind: left.flatMap((want) => stillToFind(want, had)),
  };
}

/** One want a cladding and width, in the facade's order. */
export function wantsOf(project: Project, sawn: readonly SawnPiece[]): Want[] {
  const boards = sawn.flatMap(({ piece, cladding }): BoardPiece[] =>
    isCladding(piece) && cladding?.kind === "boards" ? [{ piece, cladding }] : [],
  );
  const groups = gathered(
    boards,
    ({ piece: { cut }, cladding }) => `${cladding.id} ${cut.width}x${cut.thickness}`,
  );
  return [...groups].flatMap(([section, group]) => {
    const [first] = group;
    if (first === undefined) return [];
    return [
      {
        section,
        cladding: first.cladding.id,
        species: first.cladding.species,
        width: first.piece.cut.width,
        thickness: first.piece.cut.thickness,
        lots: lotsOf(project, first.cladding),
        pieces: group.map(({ piece }) => piece),
      },
    ];
  });
}

/** The lots that a cladding names; where it names none, those of its own species. */
function lotsOf({ pile }: Project, { lots, species }: BoardCladding): readonly string[] {
  const known = pile?.lots ?? [];
  return known.filter((lot) => (lots ? lots.includes(lot.id) : lot.species === species)).map(({ id }) => id);
}

function ripPart(project: Project, wants: readonly Want[], solve: PileSolver): PilePart | undefined {
  if (!project.pile || wants.length === 0) return undefined;
  const { saw } = project.stock;
  const alike = alikeNames(project);
  const request: PileRequest = {
    boards: project.pile.boards.map(pileBoard),
    wanted: wants.map((want) => pilePieces(want, alike)),
    kerf: saw.kerf,
    straighten: saw.boardEdgeTrim,
    endTrim: saw.boardEndTrim,
    budget: BUDGET,
  };
  const result = solve(request);
  return {
    wants: wants.map(({ section, cladding, species, width, thickness }) => ({
      section,
      cladding,
      species,
      width,
      thickness,
    })),
    request,
    result,
    ripped: rippedForPieces(result),
  };
}

/** A board is not ripped for strips that nothing is cut from: it stays whole in the pile. */
function rippedForPieces({ rips, lengths }: PileResult): RippedBoard[] {
  const used = new Set(
    lengths.plan.bars.filter(({ pieces }) => pieces.length > 0).map(({ stockId }) => stockId),
  );
  return rips.boards.filter(({ strips }) => strips.some(({ id }) => used.has(id)));
}

/** Every defect, nail rows too, spoils the board's whole width from where it starts to where it ends. */
export function pileBoard({
  id,
  lot,
  face,
  grade,
  length,
  width,
  thickness,
  wane,
  defects,
}: ProjectBoard): PileBoard {
  const look = grade ?? face;
  return {
    id,
    lot,
    ...(look === undefined ? {} : { look }),
    length,
    width,
    thickness,
    ...(wane ? { wane: { edge: wane.edge, width: wane.width } } : {}),
    defects: defects.map(({ from, to }) => ({ from, to })),
  };
}

/** @param alike the name of what a piece keeps to few looks with; absent: any board serves */
export function pilePieces(
  { section, width, thickness, lots, pieces }: Want,
  alike: (piece: Piece) => string | undefined,
): PilePieces {
  return {
    section,
    width,
    minThickness: thickness,
    lots,
    pieces: pieces.map((piece) => {
      const group = alike(piece);
      return { id: piece.mark, length: piece.cut.length, ...(group !== undefined && { group }) };
    }),
  };
}

function boughtParts(project: Project, left: readonly Want[], solve: LengthSolver): LengthPart[] {
  const known = left.flatMap((want) => {
    const section = sectionFor(project, want);
    return section ? [{ want, section }] : [];
  });
  // Claddings that take the same board share its lengths.
  return [...gathered(known, ({ section }) => section.id).values()].flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    const pieces = group.flatMap(({ want }) => want.pieces);
    return [
      lengthPart({
        use: "boards",
        pieces,
        section: first.section,
        kerf: project.stock.saw.kerf,
        solve,
      }),
    ];
  });
}

/** The narrowest board in stock of the species that is wide and thick enough. */
function sectionFor({ stock }: Project, { species, width, thickness }: Want): BoughtSection | undefined {
  return narrowest(
    (stock.boards ?? []).filter(
      (one) => one.species === species && one.width >= width && one.thickness >= thickness,
    ),
  );
}

function stillToFind(want: Want, had: ReadonlySet<string>): BoardsToFind[] {
  const pieces = want.pieces
    .filter(({ mark }) => !had.has(mark))
    .map(({ mark, cut }) => ({ mark, length: cut.length }));
  if (pieces.length === 0) return [];
  const { cladding, species, width, thickness } = want;
  return [{ cladding, species, width, thickness, pieces }];
}

/** What another rod would ask of the pile, reckoned from the pieces of the rod as it is set out. */
import type { BoardCladding } from "../../project/schema/project.ts";
import type { Facade, Piece } from "../../setout/facade.ts";
import type { RodSummary } from "../../setout/rod/index.ts";
import type { RodTask } from "../../setout/storey/task.ts";
import { sameLength } from "../../units/length.ts";
import type { PilePieces } from "../pile.ts";
import type { Want } from "./board-parts.ts";

/** Courses are numbered by hundreds of their segment. */
const COURSES_A_SEGMENT = 100;

export interface RipNeeds {
  /** The pieces of the rod's cladding if the rod had these widths. */
  readonly piecesFor: (widths: readonly number[], rod: RodSummary) => PilePieces[];
}

/**
 * A course of the new rod is cut into pieces as the present course at its height is. Widths take turns over a segment as their
 * counts have it. Pieces that hang on no course of the rod keep their length, and their width by its rank among those of the cladding.
 */
export function ripNeeds({
  facade,
  task: { spec },
  cladding,
  wants,
}: {
  readonly facade: Facade;
  readonly task: RodTask;
  readonly cladding: BoardCladding;
  readonly wants: readonly Want[];
}): RipNeeds {
  const segments = facade.rods.find(({ id }) => id === spec.id)?.segments ?? [];
  const onRod = (piece: Piece): boolean =>
    piece.course !== undefined &&
    spec.zones.some(({ face, zone }) => face === piece.face && zone === piece.zone);
  const pieces = wants.flatMap((want) => want.pieces);
  const rising = [...cladding.widths].sort((a, b) => a - b);
  const rankOf = (width: number): number =>
    Math.max(
      0,
      rising.findIndex((one) => one >= width || sameLength(one, width)),
    );
  const courses = segments.map((segment, at) =>
    segment.courses.map((_, number) =>
      pieces.filter((piece) => onRod(piece) && piece.course === (at + 1) * COURSES_A_SEGMENT + number + 1),
    ),
  );
  const laid = new Set(courses.flat(2));
  const beside = pieces.filter((piece) => !laid.has(piece));
  const lots = wants[0]?.lots ?? [];
  return {
    piecesFor: (widths, rod) => {
      const own = widths.map((): { id: string; length: number }[] => []);
      const add = (at: number, { cut: { length } }: Piece): void => {
        const list = own[at];
        list?.push({ id: `${at} ${list.length}`, length });
      };
      for (const piece of beside) add(Math.min(rankOf(piece.cut.width), widths.length - 1), piece);
      rod.segments.forEach(({ counts }, segment) => {
        const present = courses[segment] ?? [];
        const order = inTurns(
          widths.map((width) => counts.find((one) => sameLength(one.width, width))?.count ?? 0),
        );
        order.forEach((width, number) => {
          const at = Math.floor(((number + 0.5) / order.length) * present.length);
          for (const piece of present[at] ?? []) add(width, piece);
        });
      });
      return widths.map((width, at) => ({
        section: `${cladding.id} ${width}`,
        width,
        minThickness: cladding.thickness,
        lots,
        pieces: own[at] ?? [],
      }));
    },
  };
}

/** So many of each, spread evenly over one another. */
function inTurns(counts: readonly number[]): number[] {
  return counts
    .flatMap((count, width) =>
      Array.from({ length: count }, (_, number) => ({ width, at: (number + 0.5) / count })),
    )
    .sort((a, b) => a.at - b.at || a.width - b.width)
    .map(({ width }) => width);
}

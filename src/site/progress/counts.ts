/** How far the cladding of each face is, by what was told of its pieces. */
import { signedArea } from "../../geometry/polygon.ts";
import type { Facade, Piece } from "../../setout/facade.ts";
import { STAGES, type Stage } from "../journal/entry.ts";
import type { SiteState } from "../journal/fold.ts";

export interface Tally {
  readonly pieces: number;
  /** Seen from outside, without holes (m²). */
  readonly areaM2: number;
}

export interface FaceProgress {
  readonly face: string;
  /** All cladding pieces of the face. */
  readonly all: Tally;
  /** Those that are so far at least: a piece that is fixed was cut, whether or not anyone ticked that. */
  readonly reached: Readonly<Record<Stage, Tally>>;
}

export interface Progress {
  readonly faces: readonly FaceProgress[];
  /** Marks that were told and that no piece bears now: the drawings changed under them. */
  readonly strays: readonly string[];
}

const SQUARE_MILLIMETRES = 1_000_000;

export function progressOf(
  { faces }: Pick<Facade, "faces">,
  { pieces: told }: Pick<SiteState, "pieces">,
): Progress {
  const known = new Set(faces.flatMap(({ pieces }) => pieces.map(({ mark }) => mark)));
  return {
    faces: faces.map(({ id, pieces }): FaceProgress => {
      const skin = pieces.filter(isSkin);
      const reached = (stage: Stage): Tally =>
        tally(
          skin.filter(({ mark }) => {
            const at = told.stage(mark);
            return at !== undefined && STAGES.indexOf(at) >= STAGES.indexOf(stage);
          }),
        );
      return {
        face: id,
        all: tally(skin),
        reached: {
          cut: reached("cut"),
          finished: reached("finished"),
          delivered: reached("delivered"),
          fixed: reached("fixed"),
        },
      };
    }),
    strays: told
      .marks()
      .filter((mark) => !known.has(mark))
      .sort(),
  };
}

/** What is seen from outside. */
export function isSkin({ kind }: Piece): boolean {
  return kind === "sheet" || kind === "board" || kind === "post";
}

function tally(pieces: readonly Piece[]): Tally {
  return { pieces: pieces.length, areaM2: pieces.reduce((sum, piece) => sum + areaM2(piece), 0) };
}

export function areaM2({ outline, holes }: Piece): number {
  const area = holes.reduce((sum, hole) => sum - Math.abs(signedArea(hole)), Math.abs(signedArea(outline)));
  return area / SQUARE_MILLIMETRES;
}

/** The cladding of a face as the question of laying again sees it: what each piece's edges are, and how far it has come. */
import { type Edge, edgesOf, slantedCorners } from "../../geometry/edges.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Cladding, Project } from "../../project/schema/project.ts";
import type { FaceLayout, Piece } from "../../setout/facade.ts";
import type { SiteState } from "../journal/fold.ts";
import { isSkin } from "../progress/counts.ts";
import type { Come } from "./allowed.ts";

export interface FacePiece {
  readonly piece: Piece;
  readonly come: Come;
  /** It may move, and be cut where it is not fixed. */
  readonly isFree: boolean;
  readonly edges: readonly Edge[];
  /** Where its holes reach: what stands in them stays. */
  readonly holes: readonly Edge[];
  /** Coordinates of corners at a rake or round a duct, which stay where they are. */
  readonly locked: Readonly<Record<"x" | "y", readonly number[]>>;
  readonly cladding: Cladding | undefined;
}

/** @param told absent where nothing was told: all is uncut */
export function facePieces(
  project: Pick<Project, "claddings">,
  { pieces, zones }: Pick<FaceLayout, "pieces" | "zones">,
  told?: Pick<SiteState, "pieces" | "short">,
): FacePiece[] {
  const short = new Set((told?.short ?? []).map(({ place }) => place.piece));
  return pieces.filter(isSkin).map((piece): FacePiece => {
    const id = piece.cladding ?? zones.find((zone) => zone.id === piece.zone)?.cladding;
    const come = short.has(piece.mark) ? "uncut" : comeOf(told?.pieces.stage(piece.mark));
    const slanted = slantedCorners(piece.outline);
    return {
      piece,
      come,
      isFree: come !== "fixed" && piece.kind !== "post",
      edges: edgesOf(piece.outline),
      locked: { x: slanted.map(([x]) => x), y: slanted.map(([, y]) => y) },
      holes: piece.holes.flatMap((hole) => boundsAsEdges(hole)),
      cladding: project.claddings.find((one) => one.id === id),
    };
  });
}

function boundsAsEdges(hole: Piece["outline"]): Edge[] {
  const { x, y } = polygonBounds(hole);
  return [
    { axis: "x", at: x[0], over: y, side: "high" },
    { axis: "x", at: x[1], over: y, side: "low" },
    { axis: "y", at: y[0], over: x, side: "high" },
    { axis: "y", at: y[1], over: x, side: "low" },
  ];
}

function comeOf(stage: string | undefined): Come {
  if (stage === undefined) return "uncut";
  return stage === "fixed" ? "fixed" : stage === "cut" ? "cut" : "finished";
}

/** The cladding in elevation: dark cavity, boards in two tones, sheets, fixings, marks. */

import type { Point } from "../../geometry/point.ts";
import { type Polygon, polygonBounds } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import { intersect } from "../../geometry/region.ts";
import { BENT_METAL } from "../../setout/bent-metal.ts";
import type { FaceLayout, Piece } from "../../setout/facade.ts";
import type { Item } from "../model.ts";
import { type FillRole, layerName } from "../roles.ts";
import { openingNameBoxes } from "./openings.ts";
import { dotRadius, markItems } from "./piece-marks.ts";

const BOARD = layerName("BOARD");
const SHEET = layerName("SHEET");
const FIXING = layerName("FIXING");

export interface CladdingOptions {
  readonly scale: number;
  /** Marks on boards as well as on sheets. */
  readonly boardMarks: boolean;
  /** Screws of boards as well as fixings of sheets. */
  readonly boardScrews: boolean;
}

export function claddingItems(face: FaceLayout, options: CladdingOptions): Item[] {
  const boards = face.pieces.filter(({ kind }) => kind === "board");
  const sheets = face.pieces.filter(({ kind }) => kind === "sheet");
  const posts = face.pieces.filter(({ kind }) => kind === "post");
  const tones = boardTones(boards);
  const texts = openingNameBoxes(face, options.scale);
  return [
    ...face.zones.map(
      (zone): Item => ({
        kind: "polygon",
        layer: layerName("MEMBR"),
        of: `${face.id}/${zone.id}`,
        outline: zone.region,
        fill: "membrane",
      }),
    ),
    // What of bent metal stands behind the cladding, as trims and the dams over heads, is hidden by it.
    ...face.pieces
      .filter((piece) => piece.planProfile || (piece.kind === "flashing" && !isInReveal(piece, face)))
      .map(bentItem),
    ...boards.map((piece) => pieceItem(piece, { layer: BOARD, fill: tones.get(piece.mark) ?? "board" })),
    ...sheets.map((piece) => pieceItem(piece, { layer: SHEET, fill: "sheet" })),
    ...posts.map((piece) => pieceItem(piece, { layer: BOARD, fill: "board" })),
    ...sheets.flatMap((piece) => fixingItems(piece, options)),
    ...(options.boardScrews ? boards.flatMap((piece) => fixingItems(piece, options)) : []),
    ...(options.boardScrews ? posts.flatMap((piece) => fixingItems(piece, options)) : []),
    ...markItems(sheets, { scale: options.scale, texts }),
    ...(options.boardMarks ? markItems([...boards, ...posts], { scale: options.scale, texts }) : []),
  ];
}

/** Returns and the sills of reveals stand before the frames of their openings, and are drawn over them. */
export function revealItems(face: FaceLayout): Item[] {
  return face.pieces.flatMap((piece): Item[] => {
    if (piece.kind === "flashing") return isInReveal(piece, face) ? [bentItem(piece)] : [];
    if (piece.kind !== "return") return [];
    const boards = piece.grain !== undefined;
    return [pieceItem(piece, boards ? { layer: BOARD, fill: "board-alt" } : { layer: SHEET, fill: "sheet" })];
  });
}

/** Trims of jambs lie behind the cladding; other flashings keep a little room to the frame. */
function isInReveal({ outline, planProfile }: Piece, { openings }: FaceLayout): boolean {
  if (planProfile) return false;
  return openings.some(({ region }) => intersect(outline, rectOutline(region)).length > 0);
}

function bentItem({ mark, outline, dams }: Piece): Item {
  const item = {
    kind: "polygon",
    layer: layerName("TRIM"),
    of: mark,
    line: "detail",
    fill: "metal",
  } as const;
  return { ...item, outline: dams ? betweenDams(outline, dams) : outline };
}

/** The outline with its dams turned up, each as thick as the sheet. */
function betweenDams(outline: Polygon, dams: NonNullable<Piece["dams"]>): Polygon {
  const { x, y } = polygonBounds(outline);
  const high = Math.max(...dams.flatMap((dam) => dam.outline.map(([, top]) => top)));
  const { thickness } = BENT_METAL;
  return [
    [x[0], y[0]],
    [x[1], y[0]],
    [x[1], high],
    [x[1] - thickness, high],
    [x[1] - thickness, y[1]],
    [x[0] + thickness, y[1]],
    [x[0] + thickness, high],
    [x[0], high],
  ];
}

/** Neighbouring courses differ in tone; upright boards take turns from left to right. */
export function boardTones(boards: readonly Piece[]): Map<string, FillRole> {
  const place = (piece: Piece): number => piece.course ?? polygonBounds(piece.outline).x[0];
  const rank = new Map([...new Set(boards.map(place))].sort((a, b) => a - b).map((at, i) => [at, i]));
  return new Map(
    boards.map((piece) => [piece.mark, (rank.get(place(piece)) ?? 0) % 2 === 0 ? "board" : "board-alt"]),
  );
}

function pieceItem(piece: Piece, { layer, fill }: { layer: typeof BOARD; fill: FillRole }): Item {
  return {
    kind: "polygon",
    layer,
    of: piece.mark,
    outline: piece.outline,
    holes: piece.holes,
    line: piece.kind === "board" ? "gap" : "detail",
    fill,
  };
}

export function fixingItems(piece: Piece, { scale }: { scale: number }): Item[] {
  const radius = dotRadius(piece.kind, scale);
  const of = piece.mark;
  return piece.fixings.map(({ kind, x, y }): Item => {
    const centre: Point = [x, y];
    // Larger than the head, so that it can be seen; drilling templates give the true hole.
    if (kind === "plain") return { kind: "circle", layer: FIXING, of, centre, radius, fill: "membrane" };
    return kind === "fixed"
      ? { kind: "circle", layer: FIXING, of, centre, radius: radius * 1.25, line: "detail", fill: "ink" }
      : { kind: "circle", layer: FIXING, of, centre, radius, line: "detail", fill: "paper" };
  });
}

/** Marks written on pieces, where they fit. */

import type { Point } from "../../geometry/point.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { type Rect, rectOutline, rectsOverlap } from "../../geometry/rect.ts";
import type { Piece, PieceKind } from "../../setout/facade.ts";
import type { Item } from "../model.ts";
import { type LayerElement, layerName } from "../roles.ts";
import { type MarkSpot, markSpot } from "./mark-spot.ts";
import { fixingRadius, SCREW_RADIUS, TEXT } from "./style.ts";

/** How large a fixing of a piece is drawn, model mm. */
export function dotRadius(kind: PieceKind, scale: number): number {
  return (kind === "sheet" ? fixingRadius(scale) : SCREW_RADIUS) / scale;
}

interface Placed {
  readonly piece: Piece;
  readonly text: string;
  readonly spot: MarkSpot;
}

export interface MarkOptions {
  readonly scale: number;
  /** Pieces drawn over these, which marks keep clear of. */
  readonly over?: readonly Piece[];
  /** Places of other texts. */
  readonly texts?: readonly Rect[];
}

/**
 * Marks of pieces of one kind on one face. All are written whole, or all without the part before the hyphen where more
 * fit so and none can be mistaken: one drawing, one way of writing.
 */
export function markItems(pieces: readonly Piece[], options: MarkOptions): Item[] {
  const whole = place(pieces, (mark) => mark, options);
  const best =
    whole.length === pieces.length || !shortIsClear(pieces)
      ? whole
      : longer(place(pieces, withoutFace, options), whole);
  return best.map((placed) => markItem(placed, options.scale));
}

function longer(a: readonly Placed[], b: readonly Placed[]): readonly Placed[] {
  return b.length > a.length ? b : a;
}

/** Whether no two of the pieces read alike without the part before the hyphen. */
export function shortIsClear(pieces: readonly Piece[]): boolean {
  return new Set(pieces.map(({ mark }) => withoutFace(mark))).size === pieces.length;
}

/** `W-B101a` as `B101a`: the drawing says which face it shows. */
export function withoutFace(mark: string): string {
  return mark.slice(mark.indexOf("-") + 1);
}

function place(
  pieces: readonly Piece[],
  write: (mark: string) => string,
  { scale, over = [], texts = [] }: MarkOptions,
): Placed[] {
  return pieces.flatMap((piece) => {
    const box = polygonBounds(piece.outline);
    const covers = over.filter((one) => one !== piece && rectsOverlap(polygonBounds(one.outline), box));
    const text = write(piece.mark);
    const spot = markSpot({
      mark: text,
      outline: piece.outline,
      holes: [...piece.holes, ...covers.map(({ outline }) => outline), ...texts.map(rectOutline)],
      dots: [...piece.fixings, ...(piece.reliefs ?? [])].map(({ x, y }): Point => [x, y]),
      clear: clads(piece) ? 0.25 : 0.1,
      dotRadius: dotRadius(piece.kind, scale) * 1.25,
      height: TEXT,
      scale,
      weight: weight(piece),
    });
    return spot ? [{ piece, text, spot }] : [];
  });
}

function clads({ kind }: Piece): boolean {
  return kind === "sheet" || kind === "board";
}

function weight({ kind }: Piece): "regular" | "bold" {
  return kind === "sheet" ? "bold" : "regular";
}

function markItem({ piece, text, spot }: Placed, scale: number): Item {
  const element: LayerElement =
    piece.kind === "sheet" ? "SHEET" : piece.kind === "board" ? "BOARD" : "BATTEN";
  const half = TEXT / 2 / scale;
  const [x, y] = spot.at;
  return {
    kind: "text",
    layer: layerName(element, "T"),
    of: piece.mark,
    // The capitals are centred on the spot.
    at: spot.angleDeg === 0 ? [x, y - half] : [x + half, y],
    text,
    height: TEXT,
    weight: weight(piece),
    anchor: "middle",
    angleDeg: spot.angleDeg,
    ink: piece.kind === "board" ? "on-board" : "ink",
    // The dashed timber behind battens would run through their marks.
    ...(clads(piece) ? {} : { plate: piece.kind === "batten" ? ("batten" as const) : ("timber" as const) }),
  };
}

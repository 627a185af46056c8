/**
 * The developed elevation as the page draws it, at whatever scale the eye is. Each face is drawn by itself and its drawing
 * kept while its layout lives, so that an edit draws the faces that it touches.
 */
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import type { Rect } from "../../geometry/rect.ts";
import type { FaceLight } from "../../proof/light/face-lights.ts";
import type { FaceUse } from "../../proof/wind/uses.ts";
import type { Item } from "../../scene/model.ts";
import { layerName } from "../../scene/roles.ts";
import { textWidth } from "../../scene/text-widths.ts";
import { behindItems } from "../../scene/views/batten-elevation.ts";
import { fixingItems } from "../../scene/views/cladding.ts";
import { itemsOver, placeAll, rodsBeside, wallItems } from "../../scene/views/developed-elevation.ts";
import { faceExtent } from "../../scene/views/extent.ts";
import { lightUseItems } from "../../scene/views/light-use.ts";
import { openingNameBoxes } from "../../scene/views/openings.ts";
import { markItems } from "../../scene/views/piece-marks.ts";
import { progressItems } from "../../scene/views/progress.ts";
import { type SurveyedWall, surveyItems } from "../../scene/views/survey-marks.ts";
import { windUseItems } from "../../scene/views/wind-use.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import type { PieceStates } from "../../site/journal/ticks.ts";
import type { Reader } from "../../text/say.ts";
import { isBehindBattens, isShown, type Shown } from "./layers.ts";
import { type Body, bodyOf } from "./scene-body.ts";

/** Where a face stands on the drawing: add `dx` to an x of its own frame. */
export interface PlacedFace {
  readonly face: FaceLayout;
  readonly dx: number;
  /** On the drawing. */
  readonly extent: Rect;
}

/** A part of the drawing that is made anew by itself. */
export interface DrawnPart {
  readonly key: string;
  /** To be moved right by so many model millimetres. */
  readonly dx: number;
  readonly layers: Body["layers"];
}

export interface Elevation {
  readonly scale: number;
  readonly faces: readonly PlacedFace[];
  /** In painting order. */
  readonly parts: readonly DrawnPart[];
  /** Of all that is drawn, model mm. */
  readonly bounds: Rect;
}

/** From this scale on boards carry their marks and screws. */
const DETAILED_FROM = 1 / 32;

/** Under this scale the marks of findings would cover the openings that they stand beside; the notes tell them all. */
const SYMBOLS_FROM = 1 / 130;

/** Drawings of one face at most: of the whole, and of a few steps nearer. */
const MOST_KEPT = 4;

export interface ElevationOptions {
  readonly scale: number;
  readonly reader: Reader;
  readonly findings: readonly Finding[];
  readonly shown: Shown;
  /** A hand moves something: what is drawn for a frame alone need not tell its pieces apart. */
  readonly moving?: boolean;
  /** How far wind uses what is on the faces, where that is shown. */
  readonly uses?: readonly FaceUse[];
  /** The light behind the cladding, where that is shown. */
  readonly lights?: readonly FaceLight[];
  /** The walls as read, where they are shown. */
  readonly walls?: readonly SurveyedWall[];
  /** How far the pieces are, where that is shown. */
  readonly told?: PieceStates | undefined;
}

export function drawElevation(
  design: Design,
  {
    scale,
    reader,
    findings,
    shown,
    moving = false,
    uses = [],
    lights = [],
    walls: read = [],
    told,
  }: ElevationOptions,
): Elevation {
  const { facade } = design;
  const placed = placeAll(facade, scale);
  const rods = bodyOf(shown.has("lines") ? rodsBeside(facade, { placed, scale }) : [], { scale, reader });
  const over = bodyOf(
    itemsOver(facade, { placed, scale, findings: scale < SYMBOLS_FROM ? [] : findings }).filter(
      (item) => isShown(item, shown) && !isCrampedName(item, { faces: facade.faces, scale }),
    ),
    { scale, reader },
  );
  const walls = placed.map(({ face, dx }) => ({
    face,
    dx,
    body: wallBody(face, { design, scale, reader, shown, moving }),
  }));
  const painted = <Of extends { readonly face: string }>(
    list: readonly Of[],
    items: (of: Of, face: FaceLayout) => readonly Item[],
    { onPieces = false } = {},
  ) =>
    placed.flatMap(({ face, dx }) => {
      const own = list.find((one) => one.face === face.id);
      if (!own) return [];
      const on = onPieces ? face : undefined;
      return [{ face, dx, body: paintedBody(own, { on, scale, reader }, () => items(own, face)) }];
    });
  const windy = painted(uses, (own, face) => windUseItems(face, own, scale), { onPieces: true });
  const lit = painted(lights, (own) => lightUseItems(own, scale));
  const surveyed = painted(read, (own) => surveyItems(own, scale));
  const worked = told
    ? placed.map(({ face, dx }) => ({ face, dx, body: bodyOf(progressItems(face, told), { scale, reader }) }))
    : [];
  const part = (key: string, { layers }: Body, dx = 0): DrawnPart => ({ key, dx, layers });
  return {
    scale,
    faces: placed.map(({ face, dx }) => {
      const { x, y } = faceExtent(face);
      return { face, dx, extent: { x: [x[0] + dx, x[1] + dx], y } };
    }),
    parts: [
      part("rods", rods),
      ...walls.map(({ face, dx, body }) => part(`face ${face.id}`, body, dx)),
      ...windy.map(({ face, dx, body }) => part(`wind ${face.id}`, body, dx)),
      ...lit.map(({ face, dx, body }) => part(`light ${face.id}`, body, dx)),
      ...surveyed.map(({ face, dx, body }) => part(`survey ${face.id}`, body, dx)),
      ...worked.map(({ face, dx, body }) => part(`work ${face.id}`, body, dx)),
      part("over", over),
    ],
    bounds: around([
      rods.bounds,
      over.bounds,
      ...walls.map(({ dx, body: { bounds } }) => ({
        x: [bounds.x[0] + dx, bounds.x[1] + dx] as const,
        y: bounds.y,
      })),
    ]),
  };
}

const FIXING = layerName("FIXING");

/** Marks a drawing whose pieces are not told apart. */
const MOVING = "moving";

const kept = new WeakMap<FaceLayout, Map<string, Body>>();

function wallBody(
  face: FaceLayout,
  {
    design: { project },
    scale,
    reader,
    shown,
    moving,
  }: { design: Design; scale: number; reader: Reader; shown: Shown; moving: boolean },
): Body {
  const own = kept.get(face) ?? new Map<string, Body>();
  kept.set(face, own);
  const key = `${scale} ${reader.language} ${reader.units} ${reader.denominator} ${[...shown].sort().join(" ")}`;
  const held = own.get(key) ?? (moving ? own.get(`${key} ${MOVING}`) : undefined);
  if (held) return held;
  const drawn = [
    ...wallItems(face, { project, scale }),
    ...(scale < DETAILED_FROM ? [] : boardDetails(face, { scale, marks: !moving })),
  ].filter((item) => isShown(item, shown));
  const behind = shown.has("battens") || shown.has("closures") ? behindShown(face, { scale, shown }) : [];
  const items =
    behind.length > 0
      ? [...drawn.filter(isBehindBattens), ...behind, ...drawn.filter((item) => !isBehindBattens(item))]
      : drawn;
  const body = bodyOf(items, { scale, reader, join: moving ? "pieces" : "circles" });
  const [eldest] = own.keys();
  if (own.size >= MOST_KEPT && eldest !== undefined) own.delete(eldest);
  own.set(moving ? `${key} ${MOVING}` : key, body);
  return body;
}

/** Battens with the timber behind them, and closures, each where it is shown. */
function behindShown(face: FaceLayout, { scale, shown }: { scale: number; shown: Shown }): Item[] {
  const closures = new Set(face.pieces.filter(({ kind }) => kind === "closure").map(({ mark }) => mark));
  return behindItems(face, scale).filter(
    ({ layer, of }) =>
      (layer !== FIXING || shown.has("fixings")) &&
      shown.has(of !== undefined && closures.has(of) ? "closures" : "battens"),
  );
}

const keptOver = new WeakMap<
  object,
  { readonly on: FaceLayout | undefined; readonly key: string; readonly body: Body }
>();

/** What is painted over a face is worked out at rest: of each the latest drawing is kept. */
function paintedBody(
  of: object,
  {
    on,
    scale,
    reader,
  }: { readonly on: FaceLayout | undefined; readonly scale: number; readonly reader: Reader },
  items: () => readonly Item[],
): Body {
  const key = `${scale} ${reader.language} ${reader.units} ${reader.denominator}`;
  const held = keptOver.get(of);
  if (held?.key === key && held.on === on) return held.body;
  const body = bodyOf(items(), { scale, reader });
  keptOver.set(of, { on, key, body });
  return body;
}

/** An opening's name that would reach out over the cladding, where it cannot be read; the item list and a press tell it. */
function isCrampedName(
  item: Item,
  { faces, scale }: { faces: readonly FaceLayout[]; scale: number },
): boolean {
  if (item.kind !== "text" || typeof item.text !== "string" || item.text !== item.of) return false;
  const region = faces.flatMap(({ openings }) => openings).find(({ id }) => id === item.of)?.region;
  if (!region) return false;
  const [from, to] = item.angleDeg === 90 ? region.y : region.x;
  return (
    textWidth({ text: item.text, height: item.height, weight: item.weight ?? "regular" }) >
    (to - from) * scale
  );
}

/** What the view leaves out because on paper it would be too small to read; nobody reads marks while they move. */
function boardDetails(
  face: FaceLayout,
  { scale, marks }: { readonly scale: number; readonly marks: boolean },
): Item[] {
  const boards = face.pieces.filter(({ kind }) => kind === "board");
  const texts = openingNameBoxes(face, scale);
  return [
    ...boards.flatMap((piece) => fixingItems(piece, { scale })),
    ...(marks ? markItems(boards, { scale, texts }) : []),
  ];
}

function around(boxes: readonly Rect[]): Rect {
  const drawn = boxes.filter(({ x }) => x[0] <= x[1]);
  if (drawn.length === 0) return { x: [0, 0], y: [0, 0] };
  return {
    x: [Math.min(...drawn.map(({ x }) => x[0])), Math.max(...drawn.map(({ x }) => x[1]))],
    y: [Math.min(...drawn.map(({ y }) => y[0])), Math.max(...drawn.map(({ y }) => y[1]))],
  };
}

/** The developed elevation as the page draws it: the same scene at whatever scale the eye is. */
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import type { Item, Scene } from "../../scene/model.ts";
import { shiftItems } from "../../scene/shift.ts";
import { textWidth } from "../../scene/text-widths.ts";
import { fixingItems } from "../../scene/views/cladding.ts";
import { developedElevation } from "../../scene/views/developed-elevation.ts";
import { faceExtent } from "../../scene/views/extent.ts";
import { openingNameBoxes } from "../../scene/views/openings.ts";
import { markItems } from "../../scene/views/piece-marks.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import type { Reader } from "../../text/say.ts";
import { type SceneBody, sceneBody } from "./scene-body.ts";

/** Where a face stands on the drawing: add `dx` to an x of its own frame. */
export interface PlacedFace {
  readonly face: FaceLayout;
  readonly dx: number;
  /** On the drawing. */
  readonly extent: Rect;
}

export interface Elevation extends SceneBody {
  readonly faces: readonly PlacedFace[];
}

/** From this scale on boards carry their marks and screws. */
const DETAILED_FROM = 1 / 32;

/** Under this scale the marks of findings would cover the openings that they stand beside; the notes tell them all. */
const SYMBOLS_FROM = 1 / 130;

export interface ElevationOptions {
  readonly scale: number;
  readonly reader: Reader;
  readonly findings: readonly Finding[];
}

export function drawElevation(design: Design, { scale, reader, findings }: ElevationOptions): Elevation {
  const scene = developedElevation(design.facade, design.project, {
    scale,
    findings: scale < SYMBOLS_FROM ? [] : findings,
  });
  const faces = placesOf(scene, design.facade.faces);
  const legible = scene.items.filter((item) => !isCrampedName(item, { faces: design.facade.faces, scale }));
  const details = scale < DETAILED_FROM ? [] : faces.flatMap((placed) => boardDetails(placed, scale));
  return { ...sceneBody({ ...scene, items: [...legible, ...details] }, reader), faces };
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

/** What the view leaves out because on paper it would be too small to read. */
function boardDetails({ face, dx }: PlacedFace, scale: number): Item[] {
  const boards = face.pieces.filter(({ kind }) => kind === "board");
  const texts = openingNameBoxes(face, scale);
  const items = [
    ...boards.flatMap((piece) => fixingItems(piece, { scale })),
    ...markItems(boards, { scale, texts }),
  ];
  return shiftItems(items, { dx, dy: 0 });
}

/** Read off the drawing itself: each zone is drawn with its own outline, moved with its face. */
function placesOf(scene: Scene, faces: readonly FaceLayout[]): PlacedFace[] {
  const drawn = new Map<string, Item>();
  for (const item of scene.items) {
    if (item.kind === "polygon" && item.of !== undefined && !drawn.has(item.of)) drawn.set(item.of, item);
  }
  return faces.flatMap((face): PlacedFace[] => {
    const zone = face.zones.find(({ id }) => drawn.has(`${face.id}/${id}`));
    const item = zone && drawn.get(`${face.id}/${zone.id}`);
    if (!zone || item?.kind !== "polygon") return [];
    const dx = polygonBounds(item.outline).x[0] - polygonBounds(zone.region).x[0];
    const { x, y } = faceExtent(face);
    return [{ face, dx, extent: { x: [x[0] + dx, x[1] + dx], y } }];
  });
}

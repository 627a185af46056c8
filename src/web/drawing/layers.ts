/** What of the facade a view shows: layers taken away show what lies behind them. */
import type { Item } from "../../scene/model.ts";
import type { LayerElement } from "../../scene/roles.ts";
import type { PieceKind } from "../../setout/facade.ts";

/** From the outside in, then what is written over them. */
export const ELEVATION_LAYERS = [
  "cladding",
  "fixings",
  "battens",
  "closures",
  "membrane",
  "lines",
  "findings",
  "wind",
  "light",
  "survey",
  "progress",
] as const;

export type ElevationLayer = (typeof ELEVATION_LAYERS)[number];

/** Of the axonometric view, from the outside in. */
export const SOLID_LAYERS = [
  "cladding",
  "fixings",
  "battens",
  "membrane",
  "insulation",
  "sheathing",
  "framing",
] as const;

export type SolidLayer = (typeof SOLID_LAYERS)[number];

export type Layer = ElevationLayer | SolidLayer;

export type Shown = ReadonlySet<Layer>;

/** Battens and closures would show through every joint, wind, light, survey and progress are painted over the cladding: they are drawn when they are asked for. */
export const USUALLY_SHOWN: ReadonlySet<ElevationLayer> = new Set([
  "cladding",
  "fixings",
  "membrane",
  "lines",
  "findings",
]);

const ELEMENTS: Readonly<Partial<Record<LayerElement, ElevationLayer>>> = {
  BOARD: "cladding",
  SHEET: "cladding",
  TRIM: "cladding",
  FIXING: "fixings",
  MEMBR: "membrane",
  CTRLIN: "lines",
  ROD: "lines",
  FINDNG: "findings",
  WIND: "wind",
  LIGHT: "light",
  SURVEY: "survey",
  WORK: "progress",
};

const WITH_CLADDING: ReadonlySet<PieceKind> = new Set(["board", "sheet", "post", "return", "flashing"]);

/** The layer that a piece is taken away with. */
export function layerOfPiece(kind: PieceKind): SolidLayer {
  if (kind === "membrane") return "membrane";
  return WITH_CLADDING.has(kind) ? "cladding" : "battens";
}

/** The element stands behind the two letters of the agent and a hyphen in a layer's name (ISO 13567-2). */
function elementOf({ layer }: Item): LayerElement {
  return layer.slice(2, 8).replace(/-+$/, "") as LayerElement;
}

export function isShown(item: Item, shown: Shown): boolean {
  const layer = ELEMENTS[elementOf(item)];
  return layer === undefined || shown.has(layer);
}

/** Whether it is painted before battens: ground and membrane lie behind them. */
export function isBehindBattens(item: Item): boolean {
  const element = elementOf(item);
  return element === "MEMBR" || element === "GROUND";
}

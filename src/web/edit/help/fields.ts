/** Every field of the sheet that can be typed or chosen: the place of the file that it writes, and the figures of its help. */
import type { Path } from "../../../project/pointer.ts";

export interface Helped {
  /** Where the file holds it; absent for a choice that the file does not keep. */
  readonly at?: Path;
  /** Usual sizes that its help names, as each system rounds them: millimetres, and inches; common practice. */
  readonly usual?: Readonly<Record<string, readonly [mm: number, inches: number]>>;
}

const FACE: Path = ["faces", 0];
const OPENING: Path = [...FACE, "openings", 0];
const PENETRATION: Path = [...FACE, "penetrations", 0];
const WIND: Path = ["site", "wind"];
const SAW: Path = ["stock", "saw"];
const BUILT: Path = ["asBuilt"];
const LABELS: Path = ["sheets", "labels"];
const ZONE: Path = [...FACE, "zones", 0];

export const FIELDS = {
  "opening-left": { at: [...OPENING, "x", 0] },
  "opening-sill": { at: [...OPENING, "y", 0], usual: { room: [900, 36], worktop: [1050, 42] } },
  "opening-width": { at: [...OPENING, "x", 1], usual: { from: [600, 24], to: [1800, 72], door: [1000, 38] } },
  "opening-height": {
    at: [...OPENING, "y", 1],
    usual: { from: [600, 24], to: [1500, 60], door: [2100, 82] },
  },
  "opening-kind": { at: [...OPENING, "kind"] },
  "opening-under": { at: [...OPENING, "toBase"] },
  "opening-with": {},
  "penetration-left": { at: [...PENETRATION, "x"] },
  "penetration-height": { at: [...PENETRATION, "y"], usual: { tap: [600, 24] } },
  "penetration-diameter": {
    at: [...PENETRATION, "diameter"],
    usual: { from: [100, 4], to: [160, 6], tap: [35, 1.5] },
  },
  "line-height": { at: [...FACE, "lines", 0, "y"] },
  "zone-side-x": { at: [...ZONE, "x", 0] },
  "zone-side-y": { at: [...ZONE, "y", 0] },
  "zone-cladding": { at: [...ZONE, "cladding"] },
  "zone-build-up": { at: [...ZONE, "buildUp"] },
  "zone-alike": { at: [...ZONE, "alike"] },
  "edge-zone-width": {
    at: ["claddings", 0, "dataSheet", "edgeZone", "width"],
    usual: { from: [1000, 40], to: [1500, 60] },
  },
  "edge-zone-spacing": {
    at: ["claddings", 0, "dataSheet", "edgeZone", "fixingSpacing", 1],
    usual: { from: [200, 8], to: [400, 16] },
  },
  "zone-split-along": {},
  "zone-split-x": { at: [...ZONE, "x", 1] },
  "zone-split-y": { at: [...ZONE, "y", 1] },
  "joint-x": { at: [...ZONE, "joints", "pinned", "x", 0] },
  "joint-y": { at: [...ZONE, "joints", "pinned", "y", 0] },
  "face-width": { at: [...FACE, "plan", "to"], usual: { from: [2400, 96], to: [12000, 480] } },
  "face-height": { at: [...FACE, "outline", 0, 1], usual: { from: [2400, 96], to: [2700, 108] } },
  "face-top": { at: [...FACE, "outline", 0, 1] },
  "face-azimuth": { at: [...FACE, "azimuthDeg"] },
  "face-rules": {},
  "drawing-file": {},
  "drawing-layer": {},
  "model-walls": {},
  "model-turned": {},
  "pile-file": {},
  "readings-file": {},
  "table-column": {},
  "table-unit": {},
  "pile-grade": { at: ["pile", "boards", 0, "grade"] },
  "drawing-unit": {},
  "wind-code": { at: [...WIND, "code"] },
  "wind-pressure": { at: ["site", "windPressure1in50Pa", "value"] },
  "wind-speed": { at: [...WIND, "speedMPerS", "value"] },
  "wind-source": { at: [...WIND, "speedMPerS", "source"] },
  "wind-terrain": { at: [...WIND, "terrain"] },
  "wind-roof-height": { at: [...WIND, "roofHeight"], usual: { from: [3000, 120], to: [9000, 360] } },
  "wind-plan": { at: [...WIND, "plan", 0], usual: { from: [6000, 240], to: [15000, 600] } },
  "wind-importance": { at: [...WIND, "importance"] },
  "wind-enclosure": { at: [...WIND, "enclosure"] },
  "wind-topography": { at: [...WIND, "topography", "value"] },
  "wind-relief": { at: [...WIND, "reliefPercent", "value"] },
  "saw-kerf": { at: [...SAW, "kerf"], usual: { from: [2.4, 0.09375], to: [3.2, 0.125] } },
  "saw-table": { at: [...SAW, "table", "length"] },
  "saw-fence": { at: [...SAW, "fence"], usual: { from: [600, 24] } },
  "saw-lift": { at: [...SAW, "lift"] },
  "packing-minutes-packer": { at: ["packingWork", "minutesPerPacker"] },
  "packing-minutes-spot": { at: ["packingWork", "minutesPerSpot"] },
  "packing-price-packer": { at: ["packingWork", "pricePerPacker"] },
  "packing-price-hour": { at: ["packingWork", "pricePerHour"] },
  "built-opening": {},
  "built-diagonal-rising": { at: [...BUILT, "openings", 0, "diagonals", 0] },
  "built-diagonal-falling": { at: [...BUILT, "openings", 0, "diagonals", 1] },
  "laying-joint": { at: [...BUILT, "within", "joint"], usual: { on: [2, 0.0625] } },
  "laying-clearance": { at: [...BUILT, "within", "clearance"], usual: { on: [3, 0.125] } },
  "laying-trim-cut": { at: [...BUILT, "weights", "trimCut"] },
  "laying-remake-cut": { at: [...BUILT, "weights", "remakeCut"] },
  "laying-trim-finished": { at: [...BUILT, "weights", "trimFinished"] },
  "laying-remake-finished": { at: [...BUILT, "weights", "remakeFinished"] },
  "crew-face": { at: ["crews"] },
  "sheet-paper": { at: ["sheets", "paper"] },
  "label-paper": { at: [...LABELS, "paper"] },
  "label-columns": { at: [...LABELS, "columns"] },
  "label-rows": { at: [...LABELS, "rows"] },
  "label-width": { at: [...LABELS, "width"], usual: { on: [99, 4] } },
  "label-height": { at: [...LABELS, "height"], usual: { on: [38, 1.34375] } },
  "label-left": { at: [...LABELS, "left"], usual: { on: [4.5, 0.15625] } },
  "label-top": { at: [...LABELS, "top"], usual: { on: [15.5, 0.828125] } },
  "label-gap-x": { at: [...LABELS, "gapX"], usual: { on: [3, 0.1875] } },
  "label-gap-y": { at: [...LABELS, "gapY"] },
  "plan-run": { at: [...FACE, "plan"] },
} as const satisfies Readonly<Record<string, Helped>>;

export type Field = keyof typeof FIELDS;

/** What a note of help says, in this order. */
export const SAID = ["what", "where", "usual"] as const;

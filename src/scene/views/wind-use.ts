/**
 * Wind painted on an elevation: the strips over the face with their pressures, and how far each sheet, board, batten and screw is used.
 * Five steps, each with its own hatch, so that no step is told by colour alone.
 */
import type { Polygon } from "../../geometry/polygon.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import type { FaceUse, PartUse, ScrewPlaceUse } from "../../proof/wind/uses.ts";
import type { FaceLayout, Piece } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import { makeScene } from "../bounds.ts";
import type { HatchItem, Item, Scene } from "../model.ts";
import { type FillRole, layerName } from "../roles.ts";
import { faceExtent } from "./extent.ts";
import { SCREW_RADIUS, TEXT } from "./style.ts";
import { windStripItems } from "./wind-strips.ts";

const WIND = layerName("WIND");
const WIND_TEXT = layerName("WIND", "T");

/** From nothing to a half, three quarters, nine tenths, the whole, and over it; `unknown` where something is missing. */
export const USE_STEPS = ["half", "three-quarters", "nine-tenths", "whole", "over", "unknown"] as const;

export type UseStep = (typeof USE_STEPS)[number];

export function stepOfUse(use: number | undefined): UseStep {
  if (use === undefined) return "unknown";
  if (use <= 0.5) return "half";
  if (use <= 0.75) return "three-quarters";
  if (use <= 0.9) return "nine-tenths";
  return use <= 1 ? "whole" : "over";
}

interface StepLook {
  readonly fill: FillRole;
  /** Between its lines, mm on paper; none where absent. */
  readonly hatch?: Pick<HatchItem, "pattern" | "spacing">;
  /** Of a screw’s dot, in shares of the usual. */
  readonly dot: number;
}

const LOOKS: Readonly<Record<UseStep, StepLook>> = {
  half: { fill: "use-low", dot: 0.7 },
  "three-quarters": { fill: "use-fair", hatch: { pattern: "diagonal", spacing: 5 }, dot: 0.85 },
  "nine-tenths": { fill: "use-near", hatch: { pattern: "diagonal", spacing: 2.8 }, dot: 1 },
  whole: { fill: "use-full", hatch: { pattern: "diagonal", spacing: 1.5 }, dot: 1.2 },
  over: { fill: "use-over", hatch: { pattern: "end-grain", spacing: 1 }, dot: 1.7 },
  unknown: { fill: "paper", hatch: { pattern: "earth", spacing: 4 }, dot: 1 },
};

/** What is drawn over the cladding of one face, in its own frame. */
export function windUseItems(face: FaceLayout, uses: FaceUse, scale: number): Item[] {
  const pieces = new Map(face.pieces.map((piece) => [piece.mark, piece]));
  const each = (list: readonly PartUse[], items: (piece: Piece, use: PartUse) => Item[]): Item[] =>
    list.flatMap((use) => {
      const piece = pieces.get(use.mark);
      return piece ? items(piece, use) : [];
    });
  const painted = ({ mark, outline, holes }: Piece, { use }: PartUse): Item[] =>
    usedArea({ outline, holes, of: mark }, stepOfUse(use), "WIND");
  return [
    ...each(uses.skins, painted),
    ...each(uses.carriers, painted),
    ...uses.screws.map((screw) => screwItem(screw, scale)),
    ...each(uses.skins, ({ mark, outline }, { use }) => percent(outline, mark, use, scale)),
    ...windStripItems(uses.bands, { y: faceExtent(face).y, scale }),
  ];
}

interface Area {
  readonly outline: Polygon;
  readonly holes?: readonly Polygon[];
  readonly of?: string;
}

export function usedArea(where: Area, step: UseStep, element: "WIND" | "LIGHT"): Item[] {
  const { fill, hatch } = LOOKS[step];
  return [
    { kind: "polygon", layer: layerName(element), line: "detail", fill, ...where },
    ...(hatch ? [{ kind: "hatch" as const, layer: layerName(element, "H"), ...hatch, ...where }] : []),
  ];
}

/** What letters over the area stand on. */
export function fillOfStep(step: UseStep): FillRole {
  return LOOKS[step].fill;
}

/** Written where the piece leaves room for it. */
function percent(outline: Polygon, of: string, use: number | undefined, scale: number): Item[] {
  const { x, y } = polygonBounds(outline);
  if (use === undefined || (y[1] - y[0]) * scale < TEXT * 1.5) return [];
  return [
    {
      kind: "text",
      layer: WIND_TEXT,
      of,
      at: [(x[0] + x[1]) / 2, (y[0] + y[1]) / 2],
      text: message("drawing.use.percent", { percent: use * 100 }),
      height: TEXT,
      anchor: "middle",
      baseline: "middle",
      fitWidth: (x[1] - x[0]) * 0.8,
      plate: LOOKS[stepOfUse(use)].fill,
    },
  ];
}

/** The further it is used the larger; one that gives is a ring round a dot. */
function screwItem({ at, mark, use }: ScrewPlaceUse, scale: number): Item {
  const step = stepOfUse(use);
  return {
    kind: "circle",
    layer: WIND,
    of: mark,
    centre: at,
    radius: (SCREW_RADIUS * LOOKS[step].dot) / scale,
    line: "detail",
    fill: step === "unknown" ? "paper" : step === "over" ? "use-over" : "ink",
  };
}

/** Millimetres on paper: a swatch, and from one to the next. */
const SWATCH = [9, 4] as const;
const STEP_DOWN = 5.4;

/** The steps in words, each with its swatch and its screw. */
export function legendOfUses(scale: number): Scene {
  const paper = 1 / scale;
  const items = USE_STEPS.flatMap((step, i): Item[] => {
    const top = -i * STEP_DOWN * paper;
    const y = [top - SWATCH[1] * paper, top] as const;
    const middle = (y[0] + y[1]) / 2;
    const screw: ScrewPlaceUse = {
      mark: "",
      at: [(SWATCH[0] + 3) * paper, middle],
      holds: "skin",
      use: { half: 0.5, "three-quarters": 0.75, "nine-tenths": 0.9, whole: 1, over: 2, unknown: undefined }[
        step
      ],
      governs: "strength",
    };
    return [
      ...usedArea({ outline: rectOutline({ x: [0, SWATCH[0] * paper], y }) }, step, "WIND"),
      screwItem(screw, scale),
      {
        kind: "text",
        layer: WIND_TEXT,
        at: [(SWATCH[0] + 6) * paper, middle],
        text: message(`drawing.use.${step}`),
        height: TEXT,
        baseline: "middle",
      },
    ];
  });
  return makeScene({ id: "wind-legend", title: message("drawing.use.title"), scale, items });
}

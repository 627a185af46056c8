/** The slot of a light proof in section at full size: boards, cavity, membrane, the last rays that pass, and where it is brightest. */
import type { Point } from "../../geometry/point.ts";
import { rectOutline } from "../../geometry/rect.ts";
import type { ShownLight, SlotLight } from "../../proof/light/zone-light.ts";
import { message } from "../../text/message.ts";
import { positionMm } from "../../units/rounding.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import { DIMENSION_STEP, TEXT } from "./style.ts";

/** Of each board this much is drawn, more where a ray lands further (mm). */
const BOARD = 26;
const BEYOND = 6;
/** How far outside the boards the rays are drawn (mm). */
const OUTSIDE = 34;
/** Room for the words at the cut-off angle (mm). */
const WORDS = 50;
/** Behind the membrane (mm). */
const BACKING = 7;

/** Section frame: z to the right from the membrane outward, y up (or to the left, for an upright slot seen from above). */
export function slotItems({ view, worst }: ShownLight): {
  readonly items: Item[];
  readonly top: number;
  readonly right: number;
} {
  if (!worst) return { items: [], top: 0, right: 0 };
  const { kind, point } = worst;
  const { gapMm, thicknessMm, cavityMm, bevelDeg } = kind.slot;
  const rise = thicknessMm * Math.tan((bevelDeg * Math.PI) / 180);
  const back = cavityMm;
  const front = cavityMm + thicknessMm;
  const steepest = (gapMm - rise) / thicknessMm;
  const flattest = -(gapMm + rise) / thicknessMm;
  const landed = [rise - steepest * back, gapMm + rise - flattest * back, point.at];
  const low = Math.min(-BOARD, ...landed.map((at) => at - BEYOND));
  const high = Math.max(gapMm + BOARD, ...landed.map((at) => at + BEYOND));
  const isBoard = view.cladding.kind === "boards";
  const cladding = isBoard ? "BOARD" : "SHEET";
  const piece = (outline: Point[]): Item[] => [
    {
      kind: "polygon",
      layer: layerName(cladding),
      outline,
      line: "visible",
      fill: isBoard ? "board" : "sheet",
    },
  ];
  const ray = (tangent: number, through: Point): { from: Point; to: Point } => ({
    from: [front + OUTSIDE, through[1] + tangent * (front + OUTSIDE - through[0])],
    to: [0, through[1] - tangent * through[0]],
  });
  const rays = [ray(steepest, [back, rise]), ray(flattest, [back, rise + gapMm])];
  const items: Item[] = [
    {
      kind: "polygon",
      layer: layerName("INSUL"),
      outline: rectOutline({ x: [-BACKING, 0], y: [low, high] }),
      fill: "insulation",
    },
    { kind: "line", layer: layerName("MEMBR"), from: [0, low], to: [0, high], line: "cut" },
    ...piece([
      [back, low],
      [front, low],
      [front, 0],
      [back, rise],
    ]),
    ...piece([
      [back, gapMm + rise],
      [front, gapMm],
      [front, high],
      [back, high],
    ]),
    ...rays.map(({ from, to }, i): Item => {
      const line = i === 0 ? "control" : "hidden";
      return { kind: "line", layer: layerName("CTRLIN"), from, to, line };
    }),
    ...cutOffItems({ kind, front, steepest }),
    {
      kind: "circle",
      layer: layerName("MEMBR"),
      centre: [0, point.at],
      radius: 1,
      line: "visible",
      fill: "paper",
    },
    {
      kind: "leader",
      layer: layerName("MEMBR", "T"),
      points: [
        [0, point.at],
        [-BACKING - 3, point.at],
      ],
      text: message("light.sheet.brightest"),
      height: TEXT,
      anchor: "end",
    },
    {
      kind: "dimension",
      layer: layerName("FRAME", "D"),
      style: "chain",
      along: "y",
      at: front + OUTSIDE + DIMENSION_STEP,
      from: front + 1,
      points: [0, gapMm],
      // To the tenth that the figures beside it give, not to the half millimetre of a tape.
      labels: [message("drawing.length", { value: positionMm(gapMm, { step: 0.1 }) })],
    },
    {
      kind: "dimension",
      layer: layerName("FRAME", "D"),
      style: "chain",
      along: "x",
      at: low - DIMENSION_STEP,
      from: low - 1,
      points: back > 0 ? [0, back, front] : [0, front],
    },
  ];
  return { items, top: high, right: front + OUTSIDE + DIMENSION_STEP };
}

/** The level line and the angle over which no beam passes; none where not even a level beam does. */
function cutOffItems({
  kind,
  front,
  steepest,
}: {
  kind: SlotLight;
  front: number;
  steepest: number;
}): Item[] {
  const top = kind.slot.gapMm;
  const angle = (Math.atan(steepest) * 180) / Math.PI;
  const radius = OUTSIDE * 0.7;
  const layer = layerName("CTRLIN");
  const label: Item = {
    kind: "text",
    layer: layerName("CTRLIN", "T"),
    at: [front + OUTSIDE + 2, top + Math.max(2, steepest * OUTSIDE) + 1],
    text: message(kind.across === "level" ? "light.sheet.cut-off" : "light.sheet.cut-off-upright", { angle }),
    height: TEXT,
    ink: "chalk",
    wrapWidth: WORDS,
  };
  if (angle <= 0) return [label];
  return [
    { kind: "line", layer, from: [front, top], to: [front + OUTSIDE, top], line: "detail" },
    { kind: "arc", layer, centre: [front, top], radius, fromDeg: 0, toDeg: angle, line: "detail" },
    label,
  ];
}

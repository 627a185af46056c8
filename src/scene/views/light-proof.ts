/** The light proof of one zone on a page: its slot at full size with the last rays that pass, the dose by month, the figures. */

import type { GapAtBevel } from "../../proof/light/keep-under.ts";
import type { ShownLight } from "../../proof/light/zone-light.ts";
import { bareWeeks } from "../../proof/light-dose.ts";
import { type Message, message } from "../../text/message.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { layerName } from "../roles.ts";
import { heading } from "./extent.ts";
import { MONTHS_WIDTH, monthItems } from "./light-months.ts";
import { slotItems } from "./light-slot.ts";
import { LABEL_STEP, TEXT } from "./style.ts";

export interface LightProofFacts {
  readonly light: ShownLight;
  /** Stated by the membrane's data sheet (MJ/m² a year). */
  readonly limit?: number | undefined;
  /** Which gap keeps the limit at which bevel; empty where none is stated. */
  readonly gaps: readonly GapAtBevel[];
  /** Clear skies where absent. */
  readonly weather?: boolean;
}

/** From the slot to the figures beside it: the cut-off angle's words stand in between. */
const BESIDE = 60;
/** From the top of the slot to the foot of the chart. */
const CHART = 48;
const LINE = 1.25 * LABEL_STEP;

/** Undefined where no joint lets light in. */
export function lightProof(facts: LightProofFacts): Scene | undefined {
  const { light } = facts;
  const { face, zone } = light.view.where;
  if (!light.worst) return undefined;
  const slot = slotItems(light);
  const left = slot.right + BESIDE;
  const foot = slot.top - CHART;
  const first = foot - 8;
  const lines = figures(facts);
  const items: Item[] = [
    ...slot.items,
    ...monthItems(light, [left + 8, foot]),
    ...lines.map(
      (text, i): Item => ({
        kind: "text",
        layer: layerName("FRAME", "T"),
        at: [left, first - (i + 1) * LINE],
        text,
        height: TEXT,
      }),
    ),
    {
      kind: "text",
      layer: layerName("FRAME", "T"),
      at: [left, first - (lines.length + 2) * LINE],
      text: message("light.sheet.caution"),
      height: TEXT,
      ink: "second",
      wrapWidth: MONTHS_WIDTH + 24,
    },
  ];
  return makeScene({
    id: `light-${face}-${zone}`,
    title: message("light.sheet.title", { face: heading(face), zone }),
    scale: 1,
    items,
  });
}

function figures({ light, limit, gaps, weather }: LightProofFacts): Message[] {
  const { worst, bare, average } = light;
  if (!worst) return [];
  const { kind, point } = worst;
  const opening = kind.slot.gapMm - kind.fixedMm;
  return [
    message("light.sheet.sky", { sky: message(weather ? "light.sky.weather" : "light.sky.clear") }),
    message(`light.sheet.slot-${edges(kind.slot.bevelDeg)}`, {
      gap: kind.slot.gapMm,
      fixed: kind.fixedMm,
      bevel: kind.slot.bevelDeg,
    }),
    message("light.sheet.bare", { uv: bare.uvMJYear, light: bare.lightKWhYear }),
    message("light.sheet.average", { uv: average.uvMJYear, light: average.lightKWhYear }),
    message("light.sheet.peak", { uv: point.year.uvMJYear, light: point.year.lightKWhYear }),
    message("light.sheet.parts", { ...point.year.uvParts }),
    message("light.sheet.weeks", { ...bareWeeks(light) }),
    limit === undefined
      ? message("light.sheet.no-limit")
      : message(point.year.uvMJYear <= limit ? "light.sheet.limit-kept" : "light.sheet.limit-passed", {
          limit,
        }),
    ...gaps.map(({ bevelDeg, widestMm }) =>
      widestMm === undefined
        ? message(`light.sheet.no-gap-${edges(bevelDeg)}`, { bevel: bevelDeg })
        : message(`light.sheet.gap-${edges(bevelDeg)}`, { bevel: bevelDeg, gap: widestMm - opening }),
    ),
  ];
}

function edges(bevelDeg: number): "square" | "bevelled" {
  return bevelDeg === 0 ? "square" : "bevelled";
}

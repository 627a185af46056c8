/**
 * How far each piece is, painted over the cladding: a hatch of its own for each stage, so that none is told by colour alone. A piece of which
 * nothing was told stays as it is drawn.
 */

import type { Polygon } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import type { Stage } from "../../site/journal/entry.ts";
import type { PieceStates } from "../../site/journal/ticks.ts";
import { message } from "../../text/message.ts";
import { makeScene } from "../bounds.ts";
import type { HatchItem, Item, Scene } from "../model.ts";
import { type FillRole, layerName } from "../roles.ts";
import { TEXT } from "./style.ts";

const WORK = layerName("WORK");
const WORK_HATCH = layerName("WORK", "H");
const WORK_TEXT = layerName("WORK", "T");

interface StageLook {
  readonly fill: FillRole;
  /** Between its lines, mm on paper; none where absent. */
  readonly hatch?: Pick<HatchItem, "pattern" | "spacing">;
}

/** The further on, the denser; what is fixed is whole. */
const LOOKS: Readonly<Record<Stage, StageLook>> = {
  cut: { fill: "paper", hatch: { pattern: "diagonal", spacing: 4 } },
  finished: { fill: "paper", hatch: { pattern: "diagonal", spacing: 2 } },
  delivered: { fill: "paper", hatch: { pattern: "end-grain", spacing: 2.4 } },
  fixed: { fill: "use-low" },
};

interface Area {
  readonly outline: Polygon;
  readonly holes?: readonly Polygon[];
  readonly of?: string;
}

/** One face in its own frame. */
export function progressItems({ pieces }: FaceLayout, told: PieceStates): Item[] {
  return pieces.flatMap(({ mark, outline, holes }): Item[] => {
    const stage = told.stage(mark);
    return stage ? painted({ outline, holes, of: mark }, stage) : [];
  });
}

function painted(where: Area, stage: Stage): Item[] {
  const { fill, hatch } = LOOKS[stage];
  return [
    { kind: "polygon", layer: WORK, line: "detail", fill, ...where },
    ...(hatch ? [{ kind: "hatch" as const, layer: WORK_HATCH, ...hatch, ...where }] : []),
  ];
}

/** Millimetres on paper: a swatch, and from one to the next. */
const SWATCH = [9, 4] as const;
const STEP_DOWN = 5.4;

/** The stages in words, each with its swatch. */
export function legendOfProgress(scale: number): Scene {
  const paper = 1 / scale;
  const items = (Object.keys(LOOKS) as Stage[]).flatMap((stage, i): Item[] => {
    const top = -i * STEP_DOWN * paper;
    const y = [top - SWATCH[1] * paper, top] as const;
    return [
      ...painted({ outline: rectOutline({ x: [0, SWATCH[0] * paper], y }) }, stage),
      {
        kind: "text",
        layer: WORK_TEXT,
        at: [(SWATCH[0] + 2) * paper, (y[0] + y[1]) / 2],
        text: message(`drawing.stage.${stage}`),
        height: TEXT,
        baseline: "middle",
      },
    ];
  });
  return makeScene({ id: "progress-legend", title: message("drawing.stage"), scale, items });
}

/** Ultraviolet behind the cladding painted on an elevation: how much of what the membrane bears its brightest point takes, zone by zone. */
import { boundsOverlap, polygonBounds } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import type { FaceLight } from "../../proof/light/face-lights.ts";
import { message } from "../../text/message.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import { TEXT } from "./style.ts";
import { fillOfStep, stepOfUse, usedArea } from "./wind-use.ts";

/** What is drawn over one face, in its own frame; a zone that no light gets into is left as it is. */
export function lightUseItems({ zones, mostMJ }: FaceLight, scale: number): Item[] {
  return zones.flatMap(({ view, worst }): Item[] => {
    if (!worst) return [];
    const peak = worst.point.year.uvMJYear;
    const use = mostMJ === undefined ? undefined : peak / mostMJ;
    const step = stepOfUse(use);
    const of = `${view.where.face}/${view.where.zone}`;
    const { region } = view.zone;
    const { x, y } = polygonBounds(region);
    const holes = view.face.openings
      .map((opening) => rectOutline(opening.region))
      .filter((hole) => boundsOverlap(hole, x, y));
    const line = (text: Extract<Item, { kind: "text" }>["text"], up: number): Item => ({
      kind: "text",
      layer: layerName("LIGHT", "T"),
      of,
      // At the zone's foot, clear of the names of its openings.
      at: [(x[0] + x[1]) / 2, y[0] + (up * TEXT) / scale],
      text,
      height: TEXT,
      anchor: "middle",
      baseline: "middle",
      fitWidth: (x[1] - x[0]) * 0.9,
      plate: fillOfStep(step),
    });
    return [
      ...usedArea({ outline: region, holes, of }, step, "LIGHT"),
      line(message("drawing.light.peak", { peak }), 3.4),
      use === undefined
        ? line(message("drawing.light.no-limit"), 1.7)
        : line(message("drawing.light.share", { percent: use * 100 }), 1.7),
    ];
  });
}

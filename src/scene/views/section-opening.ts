/** The frame of an opening, a recess has none, where a section passes through it: a picture of its place, not of its make. */
import type { Interval } from "../../geometry/interval.ts";
import { rectOutline } from "../../geometry/rect.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import type { SectionPlace } from "./section-cut.ts";

const FRAME_HEIGHT = 60;
export const FRAME_DEPTH = 70;
const GLASS = 24;
const LAYER = layerName("OPENNG");

export function openingSection({ face, project, x }: SectionPlace, window: Interval): Item[] {
  const given = project.faces.find(({ id }) => id === face.id);
  return face.openings
    .filter(({ kind, region }) => kind !== "recess" && region.x[0] < x && x < region.x[1])
    .flatMap((opening): Item[] => {
      const own = given?.openings.find(({ id }) => id === opening.id);
      const front = own?.frameProjection ?? given?.frameProjection ?? 0;
      const z: Interval = [front - FRAME_DEPTH, front];
      const [low, high] = opening.region.y;
      const bars: Interval[] = [
        [low, low + FRAME_HEIGHT],
        [high - FRAME_HEIGHT, high],
      ];
      const middle = (z[0] + z[1]) / 2;
      const glass: Interval = [
        Math.max(window[0], low + FRAME_HEIGHT),
        Math.min(window[1], high - FRAME_HEIGHT),
      ];
      return [
        ...bars
          .filter((bar) => bar[0] >= window[0] && bar[1] <= window[1])
          .map(
            (bar): Item => ({
              kind: "polygon",
              layer: LAYER,
              of: opening.id,
              outline: rectOutline({ x: z, y: bar }),
              line: "visible",
              fill: "paper",
            }),
          ),
        ...(glass[0] < glass[1]
          ? [
              {
                kind: "polygon" as const,
                layer: LAYER,
                of: opening.id,
                outline: rectOutline({ x: [middle - GLASS / 2, middle + GLASS / 2], y: glass }),
                line: "detail" as const,
                fill: "glass" as const,
              },
            ]
          : []),
      ];
    });
}

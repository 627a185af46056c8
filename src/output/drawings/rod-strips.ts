/** Storey rods at full size: whole for a roll of paper, and in tiles for an office printer, each with a line to verify the print by. */
import type { Interval } from "../../geometry/interval.ts";
import type { Item, Scene } from "../../scene/model.ts";
import { layerName } from "../../scene/roles.ts";
import { shiftItems } from "../../scene/shift.ts";
import {
  checkLine,
  rodEnds,
  rodStrip,
  rodStripItems,
  STRIP_LEFT,
  STRIP_WIDTH,
} from "../../scene/views/rod-strip.ts";
import type { Facade, RodResult } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import type { Reader } from "../../text/say.ts";
import { PAPER_SIZES } from "../../units/paper-sizes.ts";

export interface PrintPage {
  readonly name: string;
  readonly label: string;
  readonly drawing: Scene;
}

/** No page of a PDF is longer than 14 400 units of 1/72 inch (ISO 32000-1, annex C); less the strip's head and foot. */
const LONGEST = 5000;

/** Beyond the rod's ends, for its marks. */
const OVER = 10;

export function rodRolls({ rods, faces }: Pick<Facade, "rods" | "faces">): PrintPage[] {
  return rods.flatMap((rod) =>
    stretches(rod, LONGEST).map((window, i): PrintPage => {
      const id = `rod-${rod.id}-${i + 1}`;
      return { name: id, label: id, drawing: rodStrip(rod, { faces }, { window, id }) };
    }),
  );
}

/** Of a rod on one tile: what fits A4 and letter paper alike. */
const TILE = 220;
const TILES_A_PAGE = 2;

export function rodTiles(
  facade: Pick<Facade, "rods" | "faces">,
  { units }: Pick<Reader, "units">,
): PrintPage[] {
  const paper = PAPER_SIZES[units === "feet-inch" ? "letter" : "A4"];
  return facade.rods.flatMap((rod) => {
    const windows = stretches(rod, TILE);
    const pages = Math.ceil(windows.length / TILES_A_PAGE);
    return Array.from({ length: pages }, (_, page): PrintPage => {
      const own = windows.slice(page * TILES_A_PAGE, (page + 1) * TILES_A_PAGE);
      const id = `rod-${rod.id}-tiles-${page + 1}`;
      const title = message("drawing.title.rod-tiles", { rod: rod.id, page: page + 1, pages });
      return {
        name: id,
        label: id,
        drawing: {
          id,
          title,
          scale: 1,
          bounds: { x: [0, paper.width], y: [0, paper.height] },
          items: [
            {
              kind: "text",
              layer: layerName("FRAME", "T"),
              at: [12, paper.height - 14],
              text: title,
              height: 3.5,
              weight: "bold",
            },
            ...checkLine([12, paper.height - 22]),
            ...own.flatMap((window, k) =>
              tileItems(rod, facade, {
                window,
                number: page * TILES_A_PAGE + k + 1,
                of: windows.length,
                left: 10 + k * STRIP_WIDTH,
              }),
            ),
          ],
        },
      };
    });
  });
}

/** One tile between its butt lines, which are laid on those of its neighbours. */
function tileItems(
  rod: RodResult,
  facade: Pick<Facade, "faces">,
  { window, number, of, left }: { window: Interval; number: number; of: number; left: number },
): Item[] {
  const foot = 12;
  const butt = (y: number): Item => ({
    kind: "line",
    layer: layerName("FRAME"),
    from: [left, foot + y - window[0]],
    to: [left + STRIP_WIDTH - 6, foot + y - window[0]],
    line: "hidden",
  });
  return [
    ...shiftItems(rodStripItems(rod, facade, window), { dx: left + STRIP_LEFT - 4, dy: foot - window[0] }),
    butt(window[0]),
    butt(window[1]),
    {
      kind: "text",
      layer: layerName("FRAME", "T"),
      at: [left, foot - 2],
      text: message("drawing.rod-tile", { number, of, from: window[0], to: window[1] }),
      height: 2.5,
      baseline: "top",
      ink: "second",
    },
  ];
}

/** A rod's height in stretches of one length, from below. */
function stretches(rod: RodResult, length: number): Interval[] {
  const [from, to] = rodEnds(rod);
  const [low, high] = [from - OVER, to + OVER];
  const count = Math.max(1, Math.ceil((high - low) / length));
  return Array.from(
    { length: count },
    (_, i): Interval => [low + i * length, Math.min(high, low + (i + 1) * length)],
  );
}

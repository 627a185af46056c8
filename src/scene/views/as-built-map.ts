/** A face with its openings as measured over those drawn, and the pieces that are moved or cut again for it. */
import { polygonBounds } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import type { Facade } from "../../setout/facade.ts";
import type { LaidAgain } from "../../site/as-built/lay-again.ts";
import type { Measured, MeasuredOpening } from "../../site/as-built/measured.ts";
import { isSkin } from "../../site/progress/counts.ts";
import { message } from "../../text/message.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { layerName } from "../roles.ts";
import { faceExtent, heading } from "./extent.ts";
import { fittingScale } from "./scales.ts";
import { TEXT } from "./style.ts";

/** What an A3 sheet leaves for the face itself, mm on paper. */
const ROOM = [340, 190] as const;

/** The map of one face; undefined when the facade has no such face. */
export function asBuiltMap(
  facade: Pick<Facade, "faces">,
  {
    face: id,
    measured,
    pieces,
  }: { readonly face: string; readonly measured: Measured; readonly pieces: readonly LaidAgain[] },
): Scene | undefined {
  const face = facade.faces.find((one) => one.id === id);
  if (!face) return undefined;
  const scale = fittingScale(faceExtent(face), { room: ROOM });
  const moved = new Map(pieces.map((one) => [one.mark, one]));
  const items: Item[] = [
    { kind: "polygon", layer: layerName("STRUCT"), of: face.id, outline: face.outline, line: "visible" },
    ...face.pieces.filter(isSkin).flatMap(({ mark, outline }): Item[] => {
      const one = moved.get(mark);
      const isCut = one !== undefined && one.fate !== "moved";
      return [
        {
          kind: "polygon",
          layer: layerName("BOARD"),
          of: mark,
          outline,
          line: one ? "visible" : "detail",
          ...(isCut && { fill: "use-near" as const }),
          ...(one && !isCut && { fill: "use-low" as const }),
        },
        ...(isCut ? [markItem(mark, outline)] : []),
      ];
    }),
    ...face.openings.map(
      ({ id: of, region }): Item => ({
        kind: "polygon",
        layer: layerName("OPENNG"),
        of,
        outline: rectOutline(region),
        line: "hidden",
      }),
    ),
    ...measured.openings.filter((one) => one.face === id).flatMap((one) => measuredItems(one, scale)),
  ];
  return makeScene({
    id: `as-built-${face.id}`,
    title: message("built.map.title", { face: heading(face.id) }),
    scale,
    items,
  });
}

function markItem(mark: string, outline: Parameters<typeof polygonBounds>[0]): Item {
  const { x, y } = polygonBounds(outline);
  return {
    kind: "text",
    layer: layerName("BOARD", "T"),
    of: mark,
    at: [(x[0] + x[1]) / 2, (y[0] + y[1]) / 2],
    anchor: "middle",
    baseline: "middle",
    text: message("built.map.mark", { mark }),
    height: TEXT,
    plate: "paper",
  };
}

/** The opening as measured in red, and at each side by how much it is off. */
function measuredItems({ opening, sides }: MeasuredOpening, scale: number): Item[] {
  const at = (name: (typeof sides)[number]["side"]): number => {
    const side = sides.find((one) => one.side === name);
    return side?.measured ?? side?.drawn ?? 0;
  };
  const [x, y] = [[at("left"), at("right")] as const, [at("sill"), at("head")] as const];
  const [midX, midY] = [(x[0] + x[1]) / 2, (y[0] + y[1]) / 2];
  const inset = 2 / scale;
  const places = {
    left: { at: [x[0] + inset, midY], anchor: "start" },
    right: { at: [x[1] - inset, midY], anchor: "end" },
    sill: { at: [midX, y[0] + inset], anchor: "middle" },
    head: { at: [midX, y[1] - inset], anchor: "middle" },
  } as const;
  return [
    {
      kind: "polygon",
      layer: layerName("OPENNG"),
      of: opening,
      outline: rectOutline({ x, y }),
      line: "visible",
    },
    ...sides.flatMap(({ side, drawn, measured }): Item[] =>
      measured === undefined || measured === drawn
        ? []
        : [
            {
              kind: "text",
              layer: layerName("OPENNG", "T"),
              of: opening,
              at: places[side].at,
              anchor: places[side].anchor,
              baseline: "middle",
              text: message("built.map.off", { by: measured - drawn }),
              height: TEXT,
              ink: "red",
              weight: "bold",
              plate: "paper",
            },
          ],
    ),
  ];
}

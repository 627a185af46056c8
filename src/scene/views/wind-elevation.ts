/** One face in wind on paper: its strips, and how far its sheets, boards, battens and screws are used. */
import type { FaceUse } from "../../proof/wind/uses.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import { makeScene } from "../bounds.ts";
import type { Scene } from "../model.ts";
import { layerName } from "../roles.ts";
import { faceExtent, heading } from "./extent.ts";
import { openingItems, openingNames } from "./openings.ts";
import { fittingScale } from "./scales.ts";
import { windUseItems } from "./wind-use.ts";

/** What an A3 sheet leaves for the face beside legend and table, mm on paper. */
const ROOM = [260, 150] as const;

export function windElevation(
  face: FaceLayout,
  uses: FaceUse,
  options: { readonly scale?: number } = {},
): Scene {
  const scale = options.scale ?? fittingScale(faceExtent(face), { room: ROOM });
  return makeScene({
    id: `wind-${face.id}`,
    title: message("drawing.title.wind", { face: heading(face.id) }),
    scale,
    items: [
      { kind: "polygon", layer: layerName("STRUCT"), of: face.id, outline: face.outline, line: "visible" },
      ...windUseItems(face, uses, scale),
      ...openingItems(face),
      ...openingNames(face, scale),
    ],
  });
}

/** A drilling sheet for every unlike sheet piece. */
import { drillingKinds, drillingScene } from "../../../scene/views/drilling.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";

export function drillingSheets({ design: { facade }, memo }: KindFacts): Drawing[] {
  const sheets = facade.faces.flatMap(({ pieces }) => pieces.filter(({ kind }) => kind === "sheet"));
  const scenes = drillingKinds(sheets).map((kind) => memo.recall(drillingScene, kind));
  return scenes.length === 0
    ? []
    : [{ name: "drilling", type: message("drawing.document-type.drilling"), scenes }];
}

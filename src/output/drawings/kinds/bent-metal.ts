/** The list for the bender: each unlike section drawn, with its pieces. */
import { bentKinds, bentMetalScene } from "../../../scene/views/bent-metal.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";

export function bentMetalSheets({ design: { facade }, memo }: KindFacts): Drawing[] {
  const scenes = bentKinds(facade.faces.flatMap(({ pieces }) => pieces)).map((kind) =>
    memo.recall(bentMetalScene, kind),
  );
  return scenes.length === 0
    ? []
    : [{ name: "bent-metal", type: message("drawing.document-type.bent-metal"), scenes }];
}

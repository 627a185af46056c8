/** An entry in a few words. */
import type { Entry } from "../../site/journal/entry.ts";
import { type Message, message } from "../../text/message.ts";

export function said({ kind, place, body }: Entry): Message {
  const where = place.piece ?? place.opening ?? place.face ?? "";
  if (kind === "piece")
    return message("page.site.said-piece", {
      mark: place.piece,
      stage: message(`page.site.stage-${body.stage}`),
    });
  if (kind === "hold-point") return message("page.site.said-hold", { point: body.point, face: place.face });
  if (kind === "reading") {
    return message("page.site.said-reading", {
      face: place.face,
      x: place.x,
      y: place.y,
      outward: body.outward,
    });
  }
  return message(`page.site.said-${kind}`, { where });
}

/** An entry of the journal in a line. */
import { heading } from "../../scene/views/extent.ts";
import type { Entry } from "../../site/journal/entry.ts";
import { type Message, message } from "../../text/message.ts";

export function entrySaid(entry: Entry): Message {
  const key = (kind: string): string => `page.progress.entry-${kind}`;
  switch (entry.kind) {
    case "piece":
      return message(key(entry.kind), {
        mark: entry.place.piece,
        stage: message(`drawing.stage.${entry.body.stage}`),
      });
    case "reading":
      return message(key(entry.kind), { outward: entry.body.outward });
    case "opening":
      return message(key(entry.kind), { opening: entry.place.opening });
    case "end":
      return message(key(entry.kind), { at: entry.body.at });
    case "moisture":
      return message(key(entry.kind), { percent: entry.body.meterPercent });
    case "hold-point":
      return message(key(entry.kind), { point: entry.body.point, name: entry.body.signed });
    case "finding":
    case "note":
      return message(key(entry.kind), { says: entry.body.says });
    case "upkeep":
      return message(key(entry.kind), { task: entry.body.task });
    case "photo":
    case "settled":
    case "undone":
      return message(key(entry.kind));
    default:
      // A newer program's phone may tell what this one does not know.
      return message(key("other"));
  }
}

/** Where on the facade, as far as it is told. */
export function placeSaid({ place }: Entry): string {
  return [place.face && heading(place.face), place.opening, place.piece].filter(Boolean).join(", ");
}

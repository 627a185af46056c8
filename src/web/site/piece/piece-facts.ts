/** What a hand needs to know of a piece, as rows of a label and values. */
import { polygonBounds } from "../../../geometry/polygon.ts";
import type { Piece } from "../../../setout/facade.ts";
import { type Message, message } from "../../../text/message.ts";

export interface SiteFact {
  readonly label: Message;
  readonly values: readonly (Message | string)[];
}

export function siteFacts(piece: Piece): SiteFact[] {
  const { length, width, thickness } = piece.cut;
  const { x, y } = polygonBounds(piece.outline);
  const fixed = piece.fixings.filter(({ kind }) => kind === "fixed");
  const rows: [label: string, values: readonly (Message | string)[]][] = [
    ["size", [message("page.value.cut", { a: length, b: width, c: thickness })]],
    ["material", [piece.material]],
    ["holes", holesOf(piece)],
    [
      "fixed-point",
      fixed.map((one) => message("page.site.from-corner", { x: one.x - x[0], y: one.y - y[0] })),
    ],
    ["mass", piece.massKg > 0 ? [message("page.value.mass", { value: piece.massKg })] : []],
    ["before", piece.removeBefore],
  ];
  return rows
    .filter(([, values]) => values.length > 0)
    .map(([label, values]) => ({ label: message(`page.site.fact-${label}`), values }));
}

/** Holes by kind, size and screw, how many of each. */
function holesOf({ fixings }: Piece): Message[] {
  const groups = new Map<string, { count: number; kind: string; hole: number; screw: string }>();
  for (const { kind, hole, screw } of fixings) {
    const key = `${kind} ${hole} ${screw}`;
    const group = groups.get(key) ?? { count: 0, kind, hole, screw };
    groups.set(key, { ...group, count: group.count + 1 });
  }
  return [...groups.values()].map((group) => message("page.site.hole", group));
}

/** The pile of a project as a table tells it: boards by their names, what the file says of them besides kept. */
import { type Message, message } from "../../../text/message.ts";
import type { Change, Source } from "../../editing/change.ts";
import { forgetBoards } from "../../editing/spoiled.ts";
import { isGroup, valueAt } from "../../pointer.ts";
import type { TakenBoard, TakenPile } from "./read-pile.ts";
import "../texts.ts";

export function replacePile(
  { project, document }: Source,
  { boards, lots }: TakenPile,
  file: string,
): { readonly change: Change; readonly tells: readonly Message[] } {
  const old = project.pile?.boards ?? [];
  const written = (list: "boards" | "lots", i: number): Record<string, unknown> => {
    const value = valueAt(document, ["pile", list, i]);
    return isGroup(value) ? value : {};
  };
  const at = new Map(old.map((board, i) => [board.id, i]));
  const changed: string[] = [];
  const value = boards.map((board) => {
    const i = at.get(board.id);
    if (i === undefined) return board;
    const was = old[i] as TakenBoard;
    // What stays as it is stays as it was written, in inches or with a note.
    if (same(was, board)) return written("boards", i);
    changed.push(board.id);
    const { wane: _wane, face: _face, grade: _grade, ...rest } = written("boards", i);
    return { ...rest, ...board };
  });
  const named = new Set(boards.map(({ id }) => id));
  const gone = old.filter(({ id }) => !named.has(id)).map(({ id }) => id);
  const fresh = boards.filter(({ id }) => !at.has(id)).map(({ id }) => id);
  const oldLots = project.pile?.lots ?? [];
  const told = new Map(lots.map((lot) => [lot.id, lot]));
  const newLots = lots.filter(({ id }) => !oldLots.some((lot) => lot.id === id));
  const pile = {
    ...(isGroup(valueAt(document, ["pile"])) ? (valueAt(document, ["pile"]) as object) : {}),
    lots: [
      ...oldLots.map((lot, i) => {
        const now = told.get(lot.id);
        return now
          ? { ...written("lots", i), species: now.species, from: now.from || lot.from }
          : written("lots", i);
      }),
      ...newLots,
    ],
    boards: value,
  };
  return {
    change: {
      operations: [
        { op: "add", path: "/pile", value: pile },
        ...forgetBoards(project, (id) => !named.has(id)),
      ],
      says: message("project.edit.pile", { count: boards.length, file }),
    },
    tells: [
      message("intake.change.pile", { count: boards.length }),
      ...boardsTold("new", fresh),
      ...boardsTold("changed", changed),
      ...boardsTold("gone", gone),
      ...(newLots.length > 0 ? [message("intake.change.lots", { lots: newLots.map(({ id }) => id) })] : []),
    ],
  };
}

const SHOWN = 8;

function boardsTold(what: "new" | "changed" | "gone", ids: readonly string[]): Message[] {
  if (ids.length === 0) return [];
  const names = ids.length > SHOWN ? [...ids.slice(0, SHOWN), "…"] : [...ids];
  return [message(`intake.change.boards-${what}`, { count: ids.length, boards: names })];
}

function same(a: TakenBoard, b: TakenBoard): boolean {
  const plain = ({ id, lot, length, width, thickness, defects, wane, face, grade }: TakenBoard): string =>
    JSON.stringify([
      id,
      lot,
      length,
      width,
      thickness,
      defects.map(({ kind, from, to }) => [kind, from, to]),
      wane ? [wane.edge, wane.width] : [],
      face ?? "",
      grade ?? "",
    ]);
  return plain(a) === plain(b);
}

/** Pictures of the pile's boards, by the names of their bytes. */
import type { PatchOperation } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import type { Project } from "../schema/project.ts";
import type { Change } from "./change.ts";

/** @returns undefined where there is no such board, or it has them all */
export function addPictures({ pile }: Project, id: string, pictures: readonly string[]): Change | undefined {
  const at = pile?.boards.findIndex((board) => board.id === id) ?? -1;
  const held = pile?.boards[at]?.pictures;
  const fresh = [...new Set(pictures)].filter((picture) => !held?.includes(picture));
  if (at < 0 || fresh.length === 0) return undefined;
  const list = `/pile/boards/${at}/pictures`;
  const operations: PatchOperation[] = held
    ? fresh.map((value) => ({ op: "add", path: `${list}/-`, value }))
    : [{ op: "add", path: list, value: fresh }];
  return { operations, says: message("project.edit.picture", { board: id }) };
}

/** @returns undefined where the board has no such picture */
export function takePictureAway({ pile }: Project, id: string, picture: string): Change | undefined {
  const at = pile?.boards.findIndex((board) => board.id === id) ?? -1;
  const held = pile?.boards[at]?.pictures ?? [];
  const place = held.indexOf(picture);
  if (place < 0) return undefined;
  const list = `/pile/boards/${at}/pictures`;
  return {
    operations: [{ op: "remove", path: held.length === 1 ? list : `${list}/${place}` }],
    says: message("project.edit.no-picture", { board: id }),
  };
}

/** What boards of the pile were sorted as, by colour or depth of char. */
import { message } from "../../text/message.ts";
import type { Project } from "../schema/project.ts";
import type { Change } from "./change.ts";

/** As many letters as the file takes. */
export const MOST_LETTERS = 40;

/**
 * @param typed spaces round it count for nothing; empty: it is not sorted
 * @returns undefined where there is no such board, it is sorted so already, or the word is too long
 */
export function gradeBoard({ pile }: Project, id: string, typed: string): Change | undefined {
  const at = pile?.boards.findIndex((board) => board.id === id) ?? -1;
  const held = pile?.boards[at]?.grade;
  const grade = typed.trim();
  if (at < 0 || grade === (held ?? "") || grade.length > MOST_LETTERS) return undefined;
  const path = `/pile/boards/${at}/grade`;
  return {
    operations: [grade === "" ? { op: "remove", path } : { op: "add", path, value: grade }],
    says: message("project.edit.grade", { board: id }),
  };
}

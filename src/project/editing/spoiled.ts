/** Tells in the file that stock is spoiled, or that it is not after all. */
import type { PatchOperation } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import type { Project } from "../schema/project.ts";
import type { Spoiled } from "../schema/spoiled.ts";
import type { Change } from "./change.ts";

const LIST = "/cutting/spoiled";

export function spoil({ cutting }: Project, one: Spoiled): Change {
  const operation: PatchOperation = !cutting
    ? { op: "add", path: "/cutting", value: { spoiled: [one] } }
    : cutting.spoiled
      ? { op: "add", path: `${LIST}/-`, value: one }
      : { op: "add", path: LIST, value: [one] };
  return { operations: [operation], says: message("project.edit.spoiled", { stock: stockOf(one) }) };
}

/** Several at once, as a site tells them. @returns undefined where none is told */
export function spoilAll({ cutting }: Project, all: readonly Spoiled[]): Change | undefined {
  const [first] = all;
  if (!first) return undefined;
  const operations: PatchOperation[] = !cutting
    ? [{ op: "add", path: "/cutting", value: { spoiled: all } }]
    : cutting.spoiled
      ? all.map((value) => ({ op: "add", path: `${LIST}/-`, value }))
      : [{ op: "add", path: LIST, value: all }];
  return { operations, says: message("project.edit.spoiled-all", { count: all.length }) };
}

/** @param at its place among what is spoiled; undefined where nothing stands there */
export function takeSpoiledBack({ cutting }: Project, at: number): Change | undefined {
  const list = cutting?.spoiled ?? [];
  const one = list[at];
  return (
    one && {
      operations: [{ op: "remove", path: list.length === 1 ? LIST : `${LIST}/${at}` }],
      says: message("project.edit.unspoiled", { stock: stockOf(one) }),
    }
  );
}

/** Boards that are no more in the pile are spoiled no more. */
export function forgetBoards({ cutting }: Project, isGone: (id: string) => boolean): PatchOperation[] {
  const list = cutting?.spoiled ?? [];
  return list
    .flatMap((one, at): PatchOperation[] =>
      one.kind === "board" && isGone(one.board) ? [{ op: "remove", path: `${LIST}/${at}` }] : [],
    )
    .reverse();
}

function stockOf(one: Spoiled): string {
  return one.kind === "board" ? one.board : one.kind === "sheet" ? one.stock : `${one.stock} ${one.length}`;
}

/** Pictures of the pile's boards in the project file. What is checked follows from RFC 6902 and the file's own schema; no outside source. */
import { describe, expect, it } from "vitest";
import { applyPatch } from "../../src/project/edit.ts";
import type { Change } from "../../src/project/editing/change.ts";
import { addPictures, takePictureAway } from "../../src/project/editing/pictures.ts";
import { readDocument } from "../../src/project/read.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { example } from "../contract/cut-facade-examples.ts";

const NAMES = ["a", "b", "c"].map((letter) => letter.repeat(64)) as [string, string, string];

function start(): { project: Project; document: unknown } {
  const { project } = example("atelier-bouleau");
  return { project, document: structuredClone(project) };
}

function edited(document: unknown, change: Change | undefined): { project: Project; document: unknown } {
  if (!change) throw new Error("nothing changes");
  const patched = applyPatch(document, change.operations);
  if (!patched.ok) throw new Error("the change does not fit");
  const read = readDocument(patched.document, "demo");
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return { project: read.project, document: patched.document };
}

describe("pictures of boards", () => {
  it("are added in a row, each once, and taken away one by one", () => {
    const first = start();
    const id = first.project.pile?.boards[2]?.id ?? "";
    const board = ({ pile }: Project) => pile?.boards.find((one) => one.id === id);
    const two = edited(first.document, addPictures(first.project, id, [NAMES[0], NAMES[1], NAMES[0]]));
    expect(board(two.project)?.pictures).toEqual([NAMES[0], NAMES[1]]);
    const three = edited(two.document, addPictures(two.project, id, [NAMES[1], NAMES[2]]));
    expect(board(three.project)?.pictures).toEqual(NAMES);
    expect(addPictures(three.project, id, NAMES)).toBeUndefined();
    const less = edited(three.document, takePictureAway(three.project, id, NAMES[1]));
    expect(board(less.project)?.pictures).toEqual([NAMES[0], NAMES[2]]);
    expect(takePictureAway(less.project, id, NAMES[1])).toBeUndefined();
    const one = edited(less.document, takePictureAway(less.project, id, NAMES[0]));
    const none = edited(one.document, takePictureAway(one.project, id, NAMES[2]));
    expect(board(none.project)).toEqual(board(first.project));
  });

  it("of a board that is not in the pile are none", () => {
    const { project } = start();
    expect(addPictures(project, "no-such", NAMES)).toBeUndefined();
    expect(takePictureAway(project, "no-such", NAMES[0])).toBeUndefined();
  });

  it("under another name than their bytes' are refused with place, value and mend", () => {
    const { project, document } = start();
    const id = project.pile?.boards[0]?.id ?? "";
    const patched = applyPatch(document, addPictures(project, id, ["board.jpg"])?.operations ?? []);
    const read = patched.ok && readDocument(patched.document, "demo");
    expect(read && !read.ok && read.findings).toMatchObject([
      { code: "F026", where: { path: "/pile/boards/0/pictures/0" }, hint: { key: "project.hint.picture" } },
    ]);
  });
});

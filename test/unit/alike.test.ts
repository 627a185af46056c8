/** Which boards of a zone are to look alike: what is asked of the pile, what the plan makes of it, and how it is said. */
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { keepAlike, takesFromPile } from "../../src/project/editing/alike.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { edited, exampleSource } from "../helpers/editing.ts";
import { board, pileOf, wallFacade, wallProject } from "./cut-facade-wall.ts";

type Alike = "face" | "course" | "any";
type Boards = Parameters<typeof pileOf>[0];

/** Boards that give two pieces of 900 each, sorted as told. */
function project(alike: Alike | undefined, grades: readonly (string | undefined)[], face?: string): Project {
  const boards: Boards = grades.map((grade) => ({ ...(grade && { grade }), ...(face && { face }) }));
  const made = wallProject({ pile: pileOf(boards) });
  const faces = made.faces.map((one) => ({
    ...one,
    zones: one.zones.map((zone) => ({ ...zone, id: "boards", ...(alike && { alike }) })),
  }));
  return { ...made, faces };
}

/** Two courses of two pieces. */
const facade = wallFacade([1, 1, 2, 2].map((course, at) => ({ ...board(`P${at + 1}`, 900), course })));

function said(of: Project) {
  const { plan, findings } = cutFacade(of, facade);
  const own = findings.filter(({ code }) => code === "C006");
  return { plan, own, words: own.map(({ says }) => say(says, ENGLISH_MM)) };
}

describe("boards alike", () => {
  it("are sought over the face where the file asks nothing else, and nothing is said of it", () => {
    const { plan, own } = said(project(undefined, ["dark", "pale", "dark"]));
    expect(own).toEqual([]);
    expect(plan?.rips?.ripped.map(({ boardId }) => boardId)).toEqual(["A1", "A3"]);
  });

  it("are found on the face as asked, by their grade and not by what else is noted of their faces", () => {
    const { own, words } = said(project("face", ["dark", "pale", "dark"], "a note"));
    expect(own).toMatchObject([{ outcome: "pass" }]);
    expect(words).toEqual(["Zone boards of front: all boards are of A (dark), as asked."]);
  });

  it("are told to be mixed where the pile has too few, with the pieces", () => {
    const { own, words } = said(project("face", ["dark", "pale"]));
    expect(own).toMatchObject([{ outcome: "attention", where: { marks: ["P1", "P2", "P3", "P4"] } }]);
    expect(words).toEqual([
      "Zone boards of front asks for boards alike over the face; the pile gives them from A (dark), A (pale).",
    ]);
  });

  it("are kept course by course from two grades, which one face cannot have", () => {
    const { own, words } = said(project("course", ["dark", "pale"]));
    expect(own).toMatchObject([{ outcome: "pass" }]);
    expect(words).toEqual(["Zone boards of front: each of 2 courses is of boards alike, as asked."]);
  });

  it("are not sought where anything will do", () => {
    const { plan, own } = said(project("any", ["dark", "pale"]));
    expect(own).toEqual([]);
    expect(plan?.rips?.request.wanted.flatMap(({ pieces }) => pieces.map(({ group }) => group))).toEqual(
      Array.from({ length: 4 }, () => undefined),
    );
  });

  it("are asked for on the page where a zone's boards may come from a pile", () => {
    const source = exampleSource("atelier-bouleau");
    const face = source.project.faces.find(({ zones }) =>
      zones.some((zone) => takesFromPile(source.project, zone)),
    );
    const zone = face?.zones.find((one) => takesFromPile(source.project, one));
    if (!face || !zone) throw new Error("no zone takes from the pile");
    const ref = { face: face.id, id: zone.id };
    const change = keepAlike(source, ref, "course");
    const after = edited(source, change).project.faces.find(({ id }) => id === face.id);
    expect(after?.zones.find(({ id }) => id === zone.id)?.alike).toBe("course");
    expect(keepAlike(source, { ...ref, id: "nowhere" }, "course")).toBeUndefined();
  });
});

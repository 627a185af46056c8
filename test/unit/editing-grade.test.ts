/** Boards of the pile sorted on the page. What is checked follows from RFC 6902 and the file's own schema; no outside source. */
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { gradeBoard, MOST_LETTERS } from "../../src/project/editing/grade.ts";
import { example } from "../contract/cut-facade-examples.ts";
import { edited, exampleSource } from "../helpers/editing.ts";

describe("the grade of a board", () => {
  const source = exampleSource("atelier-bouleau");
  const { id = "" } = source.project.pile?.boards[3] ?? {};
  const grade = (of: typeof source) => of.project.pile?.boards.find((board) => board.id === id)?.grade;

  it("is typed, typed over and taken away, spaces round it not counted", () => {
    expect(grade(source)).toBeUndefined();
    const dark = edited(source, gradeBoard(source.project, id, " dark "));
    expect(grade(dark)).toBe("dark");
    const light = edited(dark, gradeBoard(dark.project, id, "light"));
    expect(grade(light)).toBe("light");
    expect(grade(edited(light, gradeBoard(light.project, id, "  ")))).toBeUndefined();
  });

  it("changes nothing where it is the same, too long, or of no board", () => {
    const { project } = source;
    expect(gradeBoard(project, id, "")).toBeUndefined();
    expect(gradeBoard(project, id, "d".repeat(MOST_LETTERS + 1))).toBeUndefined();
    expect(edited(source, gradeBoard(project, id, "d".repeat(MOST_LETTERS)))).toBeDefined();
    expect(gradeBoard(project, "no-such", "dark")).toBeUndefined();
  });

  it("is what the cutting tells boards of one lot apart by", () => {
    const { facade } = example("atelier-bouleau");
    const dark = edited(source, gradeBoard(source.project, id, "dark"));
    const looks = (of: typeof source) =>
      cutFacade(of.project, facade).plan?.rips?.request.boards.find((board) => board.id === id)?.look;
    expect(looks(source)).toBe(source.project.pile?.boards[3]?.face);
    expect(looks(dark)).toBe("dark");
  });
});

/** Control lines of the project's own: drawn, moved and taken out, and kept to by rods and sheets as sills and heads are. */
import { describe, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import type { Source } from "../../src/project/editing/change.ts";
import { addLine, moveLine, removeLine } from "../../src/project/editing/lines.ts";
import { removeOpenings } from "../../src/project/editing/openings-together.ts";
import { faceById } from "../../src/project/lookup.ts";
import { setOut } from "../../src/setout/set-out.ts";
import { message } from "../../src/text/message.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { edited, exampleSource, refusals } from "../helpers/editing.ts";

const bouleau = exampleSource("atelier-bouleau");
const houses = exampleSource("two-storey");
const boardsOf = ({ project }: Source): string =>
  project.claddings.find(({ kind }) => kind === "boards")?.id ?? "";
const laid = ({ project }: Source) => setOut(project, demandsOf(project));

describe("a line of the project's own", () => {
  it("is added half way up, moved, and taken out, and its name is not given again", () => {
    const change = addLine(bouleau, { face: "front" });
    expect(change?.added).toEqual({ face: "front", id: "L1" });
    const there = edited(bouleau, change);
    const [low, high] = polygonBounds(faceById(there.project, "front")?.outline ?? []).y;
    expect(faceById(there.project, "front")?.lines).toEqual([{ id: "L1", y: (low + high) / 2 }]);
    const higher = edited(there, moveLine(there, { face: "front", id: "L1" }, 1900));
    expect(faceById(higher.project, "front")?.lines?.[0]?.y).toBe(1900);
    const gone = edited(higher, removeLine(higher, { face: "front", id: "L1" }));
    expect(faceById(gone.project, "front")?.lines).toEqual([]);
    expect(addLine(gone, { face: "north" })?.added.id).toBe("L2");
  });

  it("is refused beyond the face, and twice by one name", () => {
    const there = edited(bouleau, addLine(bouleau, { face: "front", y: 1900 }));
    expect(refusals(there, moveLine(there, { face: "front", id: "L1" }, 9000))).toEqual(["F017"]);
    const twice = [
      { op: "add", path: "/faces/0/lines", value: [{ id: "L1", y: 1900 }] },
      { op: "add", path: "/faces/1/lines", value: [{ id: "L1", y: 1900 }] },
    ] as const;
    expect(
      refusals(bouleau, { operations: twice, says: message("project.edit.place", { id: "L1" }) }),
    ).toEqual(["F009"]);
  });

  it("ends a segment of the rod that its face leads: a course ends on it all along", () => {
    const y = 2500;
    const { project } = houses;
    const lead = project.rods?.[0]?.leads[0] ?? "";
    const before = laid(houses).rods[0]?.segments.map(({ to }) => to);
    expect(before).not.toContain(y);
    const rod = laid(edited(houses, addLine(houses, { face: lead, y }))).rods[0];
    expect(rod?.segments.map(({ to }) => to)).toContain(y);
    const courses = rod?.segments.flatMap((segment) => segment.courses) ?? [];
    expect(courses.map(({ to }) => to)).toContain(y);
  });

  it("is what moves first where no rod keeps to it, and then one does", () => {
    const said = (source: Source) => laid(source).findings.find(({ code }) => code === "S001");
    const awkward = edited(bouleau, addLine(bouleau, { face: "front", y: 411 }));
    const [first] = said(awkward)?.choices ?? [];
    expect(said(awkward)?.outcome).toBe("fail");
    expect(first?.edit).toEqual([{ op: "replace", path: "/faces/1/lines/0/y", value: 417 }]);
    const mended = edited(awkward, {
      operations: first?.edit ?? [],
      says: message("project.edit.place", { id: "L1" }),
    });
    expect(said(mended)?.outcome).toBe("pass");
  });

  it("is met by another gap over it than under it, where the order of widths misses it", () => {
    const west =
      bouleau.project.rods?.[0]?.zones.map(({ face }) => face).find((face) => face !== "front") ?? "";
    const missedAt = (source: Source, y: number) =>
      laid(source).findings.find(
        ({ code, says }) => code === "S002" && say(says, ENGLISH_MM).includes(`${west} own L1`) && y > 0,
      );
    let offered = 0;
    for (let y = 1150; y < 2000; y += 70) {
      const source = edited(bouleau, addLine(bouleau, { face: west, y }));
      const [choice] = missedAt(source, y)?.choices ?? [];
      if (!choice?.edit) continue;
      offered += 1;
      const mended = edited(source, { operations: choice.edit, says: choice.says });
      expect(missedAt(mended, y)).toBeUndefined();
      const { segments = [], missedLines } = laid(mended).rods[0] ?? {};
      expect(missedLines?.map(({ line }) => line)).not.toContain(`${west} own L1`);
      const above = segments.findIndex(({ from }) => from === y);
      const gaps = [segments[above - 1]?.gap, segments[above]?.gap];
      expect([choice.says.values.under, choice.says.values.over]).toEqual(gaps);
      const [least, most] = demandsOf(mended.project).boards[boardsOf(mended)]?.gapBand ?? [0, 0];
      for (const gap of gaps) {
        expect(gap).toBeGreaterThanOrEqual(least);
        expect(gap).toBeLessThanOrEqual(most);
      }
    }
    expect(offered).toBeGreaterThan(2);
  });

  it("draws a level joint of the sheets to it where they need one", () => {
    const openings = houses.project.faces.find(({ id }) => id === "north")?.openings ?? [];
    const blank = edited(
      houses,
      removeOpenings(
        houses,
        openings.map(({ id }) => ({ face: "north", id })),
      ),
    );
    const tops = (source: Source) =>
      laid(source)
        .faces.find(({ id }) => id === "north")
        ?.pieces.filter(({ kind }) => kind === "sheet")
        .map(({ outline }) => polygonBounds(outline).y[1]);
    expect(tops(blank)).not.toContain(2300);
    expect(tops(edited(blank, addLine(blank, { face: "north", y: 2300 })))).toContain(2300);
  });
});

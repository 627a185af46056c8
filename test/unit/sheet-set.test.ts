/** The set as the project asks for it, and what is kept and clouded when it is issued again. */
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { drawingPapers, sheetSet } from "../../src/output/drawings/drawing-sheets.ts";
import { sheetState } from "../../src/output/drawings/revision.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { SHEET_KINDS } from "../../src/project/schema/sheets.ts";
import { knownWind } from "../../src/proof/wind/bands.ts";
import type { Scene } from "../../src/scene/model.ts";
import { fittingPaper } from "../../src/scene/sheet.ts";
import { fixingPlan } from "../../src/scene/views/fixing-plan.ts";
import { issuedWith, nextRevision } from "../../src/takeoff/issue-record.ts";
import { issueState } from "../../src/takeoff/issue-state.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import { example } from "../contract/cut-facade-examples.ts";

const { project, cut, reader } = example("atelier-bouleau");
const made = design(project);
const papersOf = (asked: Partial<Project>) => {
  const own = { ...made, project: { ...project, ...asked } };
  const takeoff = takeOff(project, made.facade, cut.plan);
  return drawingPapers({ design: own, findings: made.findings, reader, plan: cut.plan, takeoff });
};
const scenesOf = ({ drawing }: ReturnType<typeof papersOf>[number]): readonly Scene[] =>
  "viewports" in drawing ? [...drawing.viewports.map(({ scene }) => scene), drawing.frame] : [drawing];

describe("the sheet set", () => {
  const all = papersOf({});

  it("has every kind of sheet of the demo, in the usual order", () => {
    const kinds = [...new Set(all.map(({ kind }) => kind))];
    // A packing map is made of faces that were read.
    const read = (project.survey ?? []).length > 0;
    expect(kinds).toEqual(SHEET_KINDS.filter((kind) => kind !== "packing" || read));
  });

  it("shows screws at the largest scale that the paper takes (ISO 5455, and 1 : 25)", () => {
    const plans = all.flatMap((paper) => {
      const scenes = scenesOf(paper).filter(({ id }) => id.startsWith("fixings-"));
      return paper.kind === "fixings" ? scenes.map((scene) => ({ paper, scene })) : [];
    });
    expect(plans.length).toBeGreaterThan(3);
    for (const { paper, scene } of plans) {
      const next = [1 / 50, 1 / 25, 1 / 20, 1 / 10].find((scale) => scale > scene.scale + 1e-9);
      if (next === undefined) continue;
      const face = scene.id.slice("fixings-".length);
      const wind = knownWind(made.demands.structure);
      const larger = fixingPlan(made.facade, project, { face, wind, scale: next });
      // What stands beside it is the table of its screws, which keeps its place on the paper.
      const beside = scenesOf(paper).filter(({ id }) => id.startsWith("screws-"));
      const fits = larger && fittingPaper([larger, ...beside], ["A3"]);
      expect({ face, scale: scene.scale, fits }).toEqual({ face, scale: scene.scale, fits: undefined });
    }
  });

  it("has an index that counts every sheet once, and leads to the first of those that stand under one title", () => {
    // The cover's other sheets lead to the workings of what is open.
    const texts = all
      .filter(({ name }) => /^cover(-\d+)?$/.test(name))
      .flatMap(scenesOf)
      .filter(({ id }) => /^index(-\d+)?$/.test(id))
      .flatMap(({ items }) => items.flatMap((item) => (item.kind === "text" ? [item] : [])));
    const links = texts.flatMap(({ link }) => (link === undefined ? [] : [link]));
    const runs = texts.flatMap(({ text }) => {
      const [, from, to = from] = /^(\d+)(?:–(\d+))?$/.exec(typeof text === "string" ? text : "") ?? [];
      return from === undefined ? [] : [all.slice(Number(from) - 1, Number(to))];
    });
    expect(runs.flat()).toEqual(all);
    expect(links).toEqual(runs.map(([first]) => first?.name));
    for (const run of runs) expect(new Set(run.map(({ title }) => JSON.stringify(title))).size).toBe(1);
    expect(links.length).toBeLessThan(all.length);
  });

  it("is what the file asks for: kinds in its order, less what it leaves out, on its paper", () => {
    const asked = papersOf({
      sheets: { order: ["order", "set-out"], leaveOut: ["developed-elevation"], paper: "A2" },
    });
    expect([...new Set(asked.map(({ kind }) => kind))]).toEqual(["order", "set-out"]);
    expect(asked.map(({ name }) => name)).not.toContain("developed-elevation");
    expect(asked.map(({ label }) => label)).toEqual(
      asked.map((_, i) => `AB-${String(i + 1).padStart(2, "0")}`),
    );
    for (const { drawing } of asked) expect("viewports" in drawing && drawing.size.name).toBe("A2");
  });

  it("tells each sheet that is left out by its title, in the place where it would stand", () => {
    const names = all.map(({ name }) => name);
    const [first = "", , third = ""] = names;
    const leaveOut = [first, third, "of-no-sheet"];
    const set = sheetSet({
      design: { ...made, project: { ...project, sheets: { leaveOut } } },
      findings: made.findings,
      reader,
      plan: cut.plan,
      takeoff: takeOff(project, made.facade, cut.plan),
    });
    expect(set.count).toBe(all.length - 2);
    expect(set.leftOut).toEqual([
      { name: first, kind: all[0]?.kind, title: all[0]?.title, after: 0 },
      { name: third, kind: all[2]?.kind, title: all[2]?.title, after: 1 },
    ]);
  });

  it("is on A3 unless a view is larger by itself, and the book on A4", () => {
    const other = all.filter(({ kind, drawing }) => {
      const paper = kind === "book" ? "A4" : "A3";
      return !("viewports" in drawing) || drawing.size.name !== paper;
    });
    expect(other.map(({ name }) => name)).toEqual([]);
  });

  it("has every finding of the book once, with a way to it from what is open", () => {
    const book = all.filter(({ kind }) => kind === "book").flatMap(scenesOf);
    const texts = book.flatMap(({ items }) =>
      items.flatMap((item) => (item.kind === "text" && typeof item.text === "string" ? [item] : [])),
    );
    // In front of the book an entry's number leads to its working; where the working stands it leads nowhere.
    const numbers = texts.filter(
      ({ text, link }) => /^[A-Z]\d{3}-\d+$/.test(`${text}`) && link === undefined,
    );
    expect(numbers.length).toBe(made.findings.length);
    expect(new Set(numbers.map(({ text }) => text)).size).toBe(numbers.length);
    const names = new Set(all.map(({ name }) => name));
    const links = all
      .flatMap(scenesOf)
      .flatMap(({ items }) =>
        items.flatMap((item) => (item.kind === "text" && item.link ? [item.link] : [])),
      );
    expect(links.filter((link) => !names.has(link))).toEqual([]);
    const open = all.filter(({ name }) => name.startsWith("open-findings")).flatMap(scenesOf);
    const codes = open.flatMap(({ items }) =>
      items.flatMap((item) =>
        item.kind === "text" && /^[A-Z]\d{3}$/.test(`${item.text}`) ? [item.link] : [],
      ),
    );
    expect(codes.length).toBeGreaterThan(0);
    for (const link of codes) expect(link).toMatch(/^book/);
  });
});

describe("issuing", () => {
  const first = issuedWith(undefined, made.facade, {
    revision: "A",
    when: "2026-05-04",
    note: "for the saw",
  });
  if (!first) throw new Error("nothing went out before");

  it("keeps every piece by its mark, and says nothing of changes where nothing differs", () => {
    const marks = made.facade.faces.flatMap(({ pieces }) => pieces.map(({ mark }) => mark));
    expect(Object.keys(first.pieces)).toEqual(marks);
    const state = sheetState({ project: { ...project, issued: first }, facade: made.facade });
    expect(state).toMatchObject({ revision: "A", date: "2026-05-04", changed: [], gone: [] });
  });

  it("gives no revision twice, and proposes the next", () => {
    expect(
      issuedWith(first, made.facade, { revision: "A", when: "2026-06-01", note: "again" }),
    ).toBeUndefined();
    expect(nextRevision(undefined)).toBe("A");
    expect(nextRevision(first)).toBe("B");
    const named = (revision: string) => ({
      ...first,
      revisions: [{ revision, when: "2026-05-04", note: "" }],
    });
    expect(["Z", "AZ", "ZZ", "9"].map((last) => nextRevision(named(last)))).toEqual([
      "AA",
      "BA",
      "AAA",
      "10",
    ]);
  });

  it("clouds what changed, on the faces where it did alone, and never renames what went out", () => {
    const faces = project.faces.map((face) =>
      face.id !== "north"
        ? face
        : {
            ...face,
            openings: face.openings.map((one) => ({
              ...one,
              x: [one.x[0], one.x[1] - 40] as [number, number],
            })),
          },
    );
    const changed = design({ ...project, faces, issued: first });
    const state = sheetState(changed);
    expect(state.changed.length).toBeGreaterThan(0);
    expect(state.changed.every((mark) => mark.startsWith("N"))).toBe(true);
    const papers = drawingPapers({ design: changed, findings: [], reader, only: ["set-out"] });
    const clouded = papers
      .filter((paper) => scenesOf(paper).some(({ items }) => items.some(({ kind }) => kind === "arc")))
      .map(({ name }) => name);
    expect(clouded).toEqual(["face-north"]);
    const now = issueState(changed.facade);
    for (const mark of Object.keys(first.pieces))
      if (!state.gone.includes(mark)) expect(now).toHaveProperty([mark]);
  });
});

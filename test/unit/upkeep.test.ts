/**
 * The upkeep of a facade. Lives of finishes: Wood Handbook (FPL-GTR-282, 2021), Table 16-5, and the guide that `data/sources.json` names for
 * charred boards; how often the rest is done, and that sun shortens a finish's life, is common practice.
 */
import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import { serviceLifeIds } from "../../src/catalogue/finishes.ts";
import { design } from "../../src/design.ts";
import { upkeepCalendar } from "../../src/output/calendar/upkeep-calendar.ts";
import { applyPatch } from "../../src/project/edit.ts";
import { setHandover, setInterval } from "../../src/project/editing/upkeep.ts";
import { readDocument } from "../../src/project/read.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { FINISH_KINDS } from "../../src/project/schema/upkeep.ts";
import { monthsLater } from "../../src/site/upkeep/dates.ts";
import { type UpkeepDone, upkeepSchedule } from "../../src/site/upkeep/schedule.ts";
import { ENGLISH_MM } from "../../src/text/say.ts";
import { example } from "../contract/cut-facade-examples.ts";

const demo = example("atelier-bouleau");
const { demands, facade } = design(demo.project);
const schedule = (project: Project, done: readonly UpkeepDone[] = []) =>
  upkeepSchedule({ project, demands, facade, done });

/** The demo with its boards finished so. */
const finished = (finishKind: (typeof FINISH_KINDS)[number] | undefined): Project => ({
  ...demo.project,
  claddings: demo.project.claddings.map((one) =>
    one.kind === "boards" ? { ...one, finish: "a finish", finishKind } : one,
  ),
});
const renewals = (project: Project) => schedule(project).filter(({ task }) => task === "finish");

describe("upkeep", () => {
  it("knows the finishes whose life is published, and no others", () => {
    expect([...FINISH_KINDS].sort()).toEqual(serviceLifeIds().sort());
  });

  // Wood Handbook, Table 16-5: years.
  it.each([
    ["water-repellent-preservative", 1, 3],
    ["tinted-clear", 2, 3],
    ["semitransparent-stain", 4, 8],
    ["solid-colour-stain", 6, 15],
    ["paint", 10, 20],
  ] as const)("renews %s within %i to %i years, the sunniest face first", (kind, least, most) => {
    const found = renewals(finished(kind));
    expect(found.length).toBeGreaterThan(2);
    for (const { months, basis, source } of found) {
      expect(months).toBeGreaterThanOrEqual(least * 12);
      expect(months).toBeLessThanOrEqual(most * 12);
      expect(basis).toBe("typical");
      expect(source).toMatchObject({ kind: "document" });
    }
    const of = (face: string) => found.find((one) => one.face === face)?.months ?? Number.NaN;
    // The front looks south, the recess stands in the shade of its own sides, and a soffit looks down.
    expect(of("front")).toBeLessThan(of("west"));
    expect(of("west")).toBeLessThan(of("recess-left"));
    expect(Math.max(...found.map(({ months }) => months ?? 0))).toBe(of("east-R1-soffit"));
    expect(of("east-R1-soffit")).toBe(most * 12);
  });

  it("does not guess how often a finish of no known kind is renewed", () => {
    const found = renewals(finished(undefined));
    expect(found.length).toBeGreaterThan(2);
    for (const line of found) {
      expect(line).toMatchObject({ months: undefined, why: { key: "upkeep.why.no-kind" } });
      expect(line.next).toBeUndefined();
    }
  });

  it("counts from the hand-over, and from when something was last done", () => {
    const project: Project = { ...demo.project, upkeep: { since: "2027-08-31" } };
    const next = (done: readonly UpkeepDone[], face: string) =>
      schedule(project, done).find((one) => one.task === "look" && one.face === face)?.next;
    expect(next([], "west")).toBe("2028-08-31");
    const done: UpkeepDone[] = [
      { task: "look", face: "west", day: "2029-05-02" },
      { task: "look", day: "2028-05-01" },
      { task: "wash", face: "west", day: "2031-01-01" },
    ];
    expect(next(done, "west")).toBe("2030-05-02");
    expect(next(done, "north")).toBe("2029-05-01");
    expect(schedule({ ...project, upkeep: undefined }).filter((one) => one.next !== undefined)).toEqual([]);
  });

  it("asks lowest boards to be looked at where boards stand over ground", () => {
    const faces = schedule(demo.project).flatMap(({ task, face }) => (task === "wear" ? [face] : []));
    expect(faces).toContain("west");
    expect(faces).not.toContain("north");
    expect(faces).not.toContain("east-R1-soffit");
  });

  // The last day of a month is the last of a shorter one (common practice of calendars).
  it.each([
    ["2027-01-31", 1, "2027-02-28"],
    ["2028-01-31", 1, "2028-02-29"],
    ["2027-11-15", 14, "2029-01-15"],
    ["2027-12-01", 1, "2028-01-01"],
    ["2027-12-31", 1200, "2127-12-31"],
    ["2099-12-29", 2, "2100-02-28"],
    ["2400-01-30", 1, "2400-02-29"],
  ])("%s and %i months is %s", (day, months, later) => {
    expect(monthsLater(day, months)).toBe(later);
  });

  it("is typed in: the hand-over, an interval of one face, one for all, and as usual again", () => {
    let document: unknown = { ...demo.project, upkeep: undefined };
    let project = { ...demo.project, upkeep: undefined } as Project;
    const take = (change: ReturnType<typeof setInterval>): void => {
      const patched = applyPatch(document, change?.operations ?? "none");
      if (!patched.ok) throw new Error(JSON.stringify(patched.findings));
      const read = readDocument(patched.document, "demo");
      if (!read.ok) throw new Error(JSON.stringify(read.findings));
      ({ document, project } = { document: patched.document, project: read.project });
    };
    const months = (face: string) =>
      schedule(project).find((one) => one.task === "wash" && one.face === face)?.months;
    take(setInterval(project, { task: "wash", face: "west" }, 6));
    take(setHandover(project, "2027-09-30"));
    take(setInterval(project, { task: "wash", face: "north" }, 36));
    take(setInterval(project, { task: "wash", face: "west" }, 9));
    expect([months("west"), months("north"), months("front")]).toEqual([9, 36, 24]);
    expect(setInterval(project, { task: "look", face: "west" }, undefined)).toBeUndefined();
    take(setInterval(project, { task: "wash", face: "west" }, undefined));
    expect([months("west"), months("north")]).toEqual([24, 36]);
    const all: Project = {
      ...project,
      upkeep: { every: [{ task: "wash", months: 60 }, ...(project.upkeep?.every ?? [])] },
    };
    project = all;
    expect([months("west"), months("north")]).toEqual([60, 36]);
  });

  it("of a face that is not there is refused with place, value and mend", () => {
    const read = readDocument(
      {
        ...demo.project,
        upkeep: { since: "2027-02-30", every: [{ task: "wash", face: "wset", months: 6 }] },
      },
      "demo",
    );
    expect(read.ok).toBe(false);
    expect(!read.ok && read.findings.map(({ code, where }) => [code, where.path])).toEqual([
      ["F026", "/upkeep/since"],
    ]);
    const other = readDocument(
      { ...demo.project, upkeep: { every: [{ task: "wash", face: "wset", months: 6 }] } },
      "demo",
    );
    expect(!other.ok && other.findings).toMatchObject([
      { code: "F010", where: { path: "/upkeep/every/0/face" }, edit: [{ value: "west" }] },
    ]);
  });

  it("is one calendar event for all faces of a day, with the same days as the table", () => {
    const lines = schedule(demo.project);
    const text = upkeepCalendar(lines, { project: demo.project, reader: ENGLISH_MM }) ?? "";
    const events = new ICAL.Component(ICAL.parse(text))
      .getAllSubcomponents("vevent")
      .map((one) => new ICAL.Event(one));
    const key = ({ task, next, months, cladding }: (typeof lines)[number]) =>
      `${task} ${next} ${months} ${cladding}`;
    expect(events.length).toBe(new Set(lines.map(key)).size);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
    const looks = events.filter(({ summary }) => summary.includes("look over"));
    expect(looks.map(({ startDate }) => startDate.toString())).toEqual(["2028-09-30"]);
    expect(looks[0]?.description).toContain("West");
    expect(
      upkeepCalendar(schedule({ ...demo.project, upkeep: undefined }), {
        project: { ...demo.project, upkeep: undefined },
        reader: ENGLISH_MM,
      }),
    ).toBeUndefined();
  });
});

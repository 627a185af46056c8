/** Lays out the courses of a board zone: runs broken at openings, pieces joined over battens, the gaps between. */
import { type Finding, finding } from "../../findings/finding.ts";
import { type Interval, overlaps } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { rectsOverlap } from "../../geometry/rect.ts";
import { intersect, type Region } from "../../geometry/region.ts";
import { message } from "../../text/message.ts";
import { sameLength, snap } from "../../units/length.ts";
import { cutLength, endsAt, longerBehind } from "../corners.ts";
import { type DraftPiece, jointsOf, type ZoneDraft } from "../draft.ts";
import type { Joint, RodCourse, Why } from "../facade.ts";
import { freeWithin, type ZoneGround } from "../ground-plan.ts";
import { letter, markOf } from "../marks.ts";

import { boardBattenWishes, buttStrips } from "./battens.ts";
import { type ButtAtDuct, placeButts } from "./butts.ts";
import { ductChords } from "./duct-chords.ts";
import type { BoardZone } from "./zone.ts";

export function layCourses(zone: BoardZone): ZoneDraft & { readonly findings: readonly Finding[] } {
  const { ground, cladding } = zone;
  const courses = zone.rod.segments.flatMap((segment) => segment.courses);
  const pieces: DraftPiece[] = [];
  const joints: Joint[] = [];
  const butts = new Map<number, Interval[]>();
  const below: number[][] = [];
  const misfits: string[] = [];
  const conflicts: string[] = [];
  const atDucts: (ButtAtDuct & { readonly course: number })[] = [];
  const notched: { course: number; of: string; by: number }[] = [];
  let last: RodCourse | undefined;
  for (const course of courses) {
    if (course.to <= ground.bounds.y[0] || course.from >= ground.bounds.y[1]) continue;
    joints.push(...gapStrip(zone, last, course));
    last = course;
    const here: number[] = [];
    let index = 0;
    for (const run of freeWithin(ground, { x: ground.bounds.x, y: [course.from, course.to] })) {
      const box = polygonBounds(run.outline);
      const ends = endsAt(box.x, zone.ends);
      const found = placeButts({
        run: box.x,
        behind: [longerBehind(ends.left, cladding.thickness), longerBehind(ends.right, cladding.thickness)],
        candidates: zone.studs,
        endGap: cladding.endGap,
        maxLength: cladding.maxPieceLength,
        // Two bays from the middle of a batten; the board itself may end on it.
        minLength: 2 * zone.studSpacing - zone.battenWidth,
        below,
        stagger: zone.studSpacing,
        ducts: ductChords(ground, [course.from, course.to], zone.battenWidth),
      });
      here.push(...found.butts);
      const laid = splitRun(zone, course, run, found.butts);
      for (const piece of laid.pieces) {
        const why = whyOf(zone, course, found.moved[0]);
        pieces.push(boardPiece(zone, course, piece, { index: letter(index), why }));
        index += 1;
      }
      joints.push(...laid.joints);
      const marks = pieces.slice(-laid.pieces.length).map(({ mark }) => mark);
      if (found.misfits > 0) misfits.push(...marks);
      if (found.conflicts > 0) conflicts.push(...marks);
      atDucts.push(...found.besideDucts.map((one) => ({ ...one, course: course.number })));
      for (const butt of found.butts) butts.set(butt, [...(butts.get(butt) ?? []), [course.from, course.to]]);
    }
    notched.push(...notchesOf(ground, course));
    below.unshift(here);
  }
  if (last && last.to < ground.bounds.y[1])
    joints.push(...strip(zone, [last.to, ground.bounds.y[1]], "edge"));
  const wishes = [...boardBattenWishes(zone), ...buttStrips(zone, [...butts.keys()])];
  const findings = [
    ...buttFindings(zone, { misfits, conflicts, butts: butts.size }),
    ...notchFindings(zone, notched),
    ...ductFindings(zone, atDucts),
  ];
  return { pieces, joints, wishes, findings };
}

/** The open strip under a course: from the one below it, or from the zone's edge. */
function gapStrip(zone: BoardZone, last: RodCourse | undefined, course: RodCourse): Joint[] {
  const from = last ? last.to : zone.ground.bounds.y[0];
  return course.from > from ? strip(zone, [from, course.from], last ? "course gap" : "edge") : [];
}

function strip(zone: BoardZone, y: Interval, kind: Joint["kind"]): Joint[] {
  const { ground } = zone;
  return jointsOf(freeWithin(ground, { x: ground.bounds.x, y }), {
    kind,
    face: ground.face.id,
    zone: ground.zone.id,
    width: snap(y[1] - y[0]),
    along: "x",
  });
}

function splitRun(
  zone: BoardZone,
  course: RodCourse,
  run: Region,
  butts: readonly number[],
): { pieces: Region[]; joints: Joint[] } {
  if (butts.length === 0) return { pieces: [run], joints: [] };
  const { ground, cladding } = zone;
  const box = polygonBounds(run.outline);
  const half = cladding.endGap / 2;
  const cuts = [box.x[0], ...butts.flatMap((at) => [snap(at - half), snap(at + half)]), box.x[1]];
  const pieces: Region[] = [];
  const joints: Joint[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const x: Interval = [cuts[i] as number, cuts[i + 1] as number];
    const regions = freeWithin(ground, { x, y: [course.from, course.to] }).filter((part) =>
      isPartOf(part, run),
    );
    if (i % 2 === 0) pieces.push(...regions);
    else {
      joints.push(
        ...jointsOf(regions, {
          kind: "butt",
          face: ground.face.id,
          zone: ground.zone.id,
          width: cladding.endGap,
          along: "y",
        }),
      );
    }
  }
  return { pieces, joints };
}

/** A duct at a course's edge leaves tips over or under the run, which are runs of their own. */
function isPartOf({ outline }: Region, run: Region): boolean {
  if (!rectsOverlap(polygonBounds(outline), polygonBounds(run.outline))) return false;
  return run.outline.length === 4 || intersect(run.outline, outline).length > 0;
}

function boardPiece(
  zone: BoardZone,
  course: RodCourse,
  region: Region,
  { index, why }: { readonly index: string; readonly why: Why },
): DraftPiece {
  const { ground, cladding, plane, ends } = zone;
  const { x, y } = polygonBounds(region.outline);
  const cut = endsAt(x, ends);
  return {
    mark: markOf({
      face: ground.face,
      zone: ground.zone.id,
      kind: "board",
      number: `${course.number}${index}`,
    }),
    kind: "board",
    face: ground.face.id,
    zone: ground.zone.id,
    course: course.number,
    outline: region.outline,
    holes: region.holes,
    z: [plane.backZ, plane.faceZ],
    ends: cut,
    bevelDeg: cladding.bevelDeg,
    grain: "x",
    material: cladding.species,
    cut: {
      length: cutLength(x, cut, cladding.thickness),
      width: snap(y[1] - y[0]),
      thickness: cladding.thickness,
    },
    why,
  };
}

function whyOf(
  { runnerUp, rod, ground, cladding }: BoardZone,
  { number, from, to, width }: RodCourse,
  moved: ButtAtDuct | undefined,
): Why {
  if (moved) {
    return {
      rule: message("setout.why.course.clear-of-duct", { course: number, width, of: moved.of }),
      runnerUp: message("setout.why.course.butt-at-duct", { at: moved.at, of: moved.of }),
    };
  }
  const spared = ground.rounds.find(
    ({ of, bounds }) => rod.clearOf?.includes(of) && overlaps(bounds.y, [from, to]),
  );
  const rule = spared
    ? message("setout.why.course.no-sliver", { course: number, width, of: spared.of })
    : cladding.widths.some((regular) => sameLength(regular, width))
      ? message("setout.why.course", { course: number, width })
      : message("setout.why.course.ripped", { course: number, width });
  return runnerUp ? { rule, runnerUp } : { rule };
}

/** Courses that stand partly beside and partly over or under an opening. */
function notchesOf(ground: ZoneGround, course: RodCourse): { course: number; of: string; by: number }[] {
  return ground.keepOuts
    .filter(({ rect }) => rectsOverlap(rect, { x: ground.bounds.x, y: [course.from, course.to] }))
    .filter(({ rect }) => rect.y[0] > course.from || rect.y[1] < course.to)
    .map(({ of, rect }) => ({
      course: course.number,
      of,
      by: snap(Math.min(course.to, rect.y[1]) - Math.max(course.from, rect.y[0])),
    }));
}

function notchFindings(
  zone: BoardZone,
  notched: readonly { course: number; of: string; by: number }[],
): Finding[] {
  return notched.map(({ course, of, by }) =>
    finding({
      code: "S013",
      outcome: "attention",
      where: { face: zone.ground.face.id, zone: zone.ground.zone.id, opening: of },
      says: message("setout.course.notched", { course, of, by }),
      hint: message("setout.course.notched.hint"),
      demand: by,
      limit: 0,
      unit: "mm",
      source: { kind: "common practice" },
    }),
  );
}

function ductFindings(
  zone: BoardZone,
  butts: readonly (ButtAtDuct & { readonly course: number })[],
): Finding[] {
  return butts.map(({ at, of, course }) =>
    finding({
      code: "S024",
      outcome: "attention",
      where: { face: zone.ground.face.id, zone: zone.ground.zone.id },
      says: message("setout.butts.at-duct", { of, course, at }),
      hint: message("setout.butts.at-duct.hint", { of }),
      source: { kind: "common practice" },
    }),
  );
}

function buttFindings(
  zone: BoardZone,
  { misfits, conflicts, butts }: { misfits: string[]; conflicts: string[]; butts: number },
): Finding[] {
  const where = { face: zone.ground.face.id, zone: zone.ground.zone.id };
  const findings: Finding[] = [];
  if (misfits.length > 0) {
    findings.push(
      finding({
        code: "S012",
        outcome: "fail",
        where: { marks: misfits, ...where },
        says: message("setout.butts.misfit", {
          pieces: misfits.length,
          longest: zone.cladding.maxPieceLength,
        }),
        hint: message("setout.butts.misfit.hint"),
        source: { kind: "common practice" },
      }),
    );
  }
  if (conflicts.length > 0) {
    findings.push(
      finding({
        code: "S012",
        outcome: "attention",
        where: { marks: conflicts, ...where },
        says: message("setout.butts.stagger", { pieces: conflicts.length, bay: zone.studSpacing }),
        source: { kind: "common practice" },
      }),
    );
  }
  if (butts > 0 && findings.length === 0) {
    findings.push(
      finding({
        code: "S012",
        outcome: "pass",
        where,
        says: message("setout.butts.good", { lines: butts, bay: zone.studSpacing }),
        source: { kind: "common practice" },
      }),
    );
  }
  return findings;
}

/**
 * The upright joints that a layout may choose from. At a jamb the joint lies on the opening's side, so that the sheet
 * beside it ends on the clearance. Each edge at a joint has a batten of its own: at a stud line one of the two stands on
 * the stud, so such a joint needs one block row where another needs two.
 */
import type { Interval } from "../../geometry/interval.ts";
import { snap } from "../../units/length.ts";
import { isForbidden } from "./pins.ts";
import { type Planner, standsOnUpright } from "./planner.ts";
import { NO_COST, type Score, WEIGHTS } from "./score.ts";

export type JointAnswers = "end" | "pin" | "jamb" | "centre" | "equal" | "stud" | "stock" | "band";

export interface UprightJoint {
  readonly x: Interval;
  /** What the joint answers to. */
  readonly answers: JointAnswers;
  /** Id of the control line at a jamb. */
  readonly line?: string;
  readonly score: Score;
}

/** Joints that show a line of their own; equal divisions run between these alone. */
export function isHard({ answers }: UprightJoint): boolean {
  return (
    answers === "end" || answers === "pin" || answers === "jamb" || answers === "centre" || answers === "band"
  );
}

/** Left end, candidates from left to right, right end. */
export function uprightJoints(planner: Planner): UprightJoint[] {
  const { zone, wishes } = planner;
  const { ground, studs, battenWidth } = zone;
  const { joint } = zone.cladding;
  const [left, right] = ground.bounds.x;
  const found = new Map<number, UprightJoint>();
  const add = (from: number, answers: JointAnswers, line?: string): void => {
    const x: Interval = [from, snap(from + joint)];
    const pinned = answers === "pin";
    if (pinned ? x[0] <= left || x[1] >= right : x[0] - left <= joint || right - x[1] <= joint) return;
    if (found.has(from) || (!pinned && isForbidden(x, wishes.forbidden.x))) return;
    found.set(from, { x, answers, ...(line && { line }), score: jointScore(planner, x, answers) });
  };
  for (const { strip } of wishes.pins.x) add(strip[0], "pin");
  for (const { of, rect } of ground.keepOuts) {
    add(rect.x[0], "jamb", `${ground.face.id} jamb left ${of}`);
    add(snap(rect.x[1] - joint), "jamb", `${ground.face.id} jamb right ${of}`);
  }
  for (const { rect } of ground.keepOuts) add(snap((rect.x[0] + rect.x[1] - joint) / 2), "centre");
  for (const [from, to] of wishes.forbidden.x) {
    add(snap(from - joint), "band");
    add(to, "band");
  }
  for (const centre of studs) {
    add(snap(centre + battenWidth / 2), "stud");
    add(snap(centre - battenWidth / 2 - joint), "stud");
  }
  for (const width of new Set(planner.shapes.map((shape) => shape.width))) {
    for (let at = left + width; at < right; at += width + joint) add(snap(at), "stock");
    for (let at = right - width - joint; at > left; at -= width + joint) add(snap(at), "stock");
  }
  const ends = [left, right].map((at): UprightJoint => ({ x: [at, at], answers: "end", score: NO_COST }));
  const inner = [...found.values()].sort((a, b) => a.x[0] - b.x[0]);
  return [ends[0] as UprightJoint, ...inner, ends[1] as UprightJoint];
}

export function jointScore(planner: Planner, x: Interval, answers: JointAnswers): Score {
  const width = planner.zone.battenWidth;
  const battens: Interval[] = [
    [x[0] - width, x[0]],
    [x[1], x[1] + width],
  ];
  const backing = battens.filter((batten) => !standsOnUpright(planner, batten)).length;
  const off = answers === "stud" || answers === "stock" || answers === "band" ? 1 : 0;
  const total = backing * WEIGHTS.backing + off * WEIGHTS.offLine;
  return { ...NO_COST, total, backing, misaligned: off };
}

/**
 * What the user's own joint lines cost: a pin that makes notches, slivers or pieces beyond the stock is kept and says so,
 * with the line that the layout would take instead; a pin that no layout can hold is refused with the reason.
 */
import type { RuleCode } from "../../findings/codes.ts";
import { type Finding, finding } from "../../findings/finding.ts";
import { type Message, message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { Layout } from "./columns.ts";
import type { Pin, RefusedPin } from "./pins.ts";
import type { ColumnPlan } from "./plan.ts";
import type { SheetZone } from "./zone.ts";

export function pinFindings(zone: SheetZone, plan: ColumnPlan): Finding[] {
  return [
    ...plan.wishes.refused.map((pin) => refusedFinding(zone, pin)),
    ...plan.without.flatMap(({ pin, layout }) => hurtFindings(zone, plan, pin, layout)),
  ];
}

function pathOf(zone: SheetZone, { axis, index }: Pin): string | undefined {
  return zone.path === undefined ? undefined : `${zone.path}/joints/pinned/${axis}/${index}`;
}

function whereOf(zone: SheetZone, pin: Pin): Finding["where"] {
  const { face, zone: own, bounds } = zone.ground;
  const middle = (axis: "x" | "y"): number => snap((bounds[axis][0] + bounds[axis][1]) / 2);
  const path = pathOf(zone, pin);
  return {
    ...(path !== undefined && { path }),
    face: face.id,
    zone: own.id,
    at: pin.axis === "x" ? [pin.at, middle("y")] : [middle("x"), pin.at],
  };
}

/** `upright joint at 3000 mm`. */
function nameOf({ axis, at }: Pin): Message {
  return axis === "x" ? message("setout.pin.upright", { at }) : message("setout.pin.level", { at });
}

function refusedFinding(zone: SheetZone, pin: RefusedPin): Finding {
  const path = pathOf(zone, pin);
  const [from, to] = pin.by ?? zone.ground.bounds[pin.axis];
  return finding({
    code: "S015",
    outcome: "attention",
    where: whereOf(zone, pin),
    says: message(`setout.pin.refused.${pin.because}`, {
      pin: nameOf(pin),
      face: zone.ground.face.id,
      zone: zone.ground.zone.id,
      from,
      to,
    }),
    hint: message("setout.pin.refused.hint"),
    ...(path !== undefined && { edit: [{ op: "remove", path }] }),
  });
}

interface Hurt {
  readonly code: RuleCode;
  readonly words: Message;
}

function hurtFindings(zone: SheetZone, plan: ColumnPlan, pin: Pin, without: Layout): Finding[] {
  const hurts = hurtsOf(plan, without);
  const worst = hurts[0];
  if (!worst) return [];
  const instead = nearestInstead(zone, pin, without);
  const path = pathOf(zone, pin);
  return [
    finding({
      code: worst.code,
      outcome: "attention",
      where: whereOf(zone, pin),
      says: message("setout.pin.hurts", {
        pin: nameOf(pin),
        face: zone.ground.face.id,
        zone: zone.ground.zone.id,
        hurts: hurts.map(({ words }) => words),
      }),
      hint:
        instead === undefined
          ? message("setout.pin.hurts.remove")
          : message("setout.pin.hurts.move", { to: instead, by: Math.abs(snap(instead - pin.at)) }),
      ...(path !== undefined && {
        edit: [instead === undefined ? { op: "remove", path } : { op: "replace", path, value: instead }],
      }),
      source: { kind: "common practice" },
    }),
  ];
}

/** What the layout has more of with the pin than without it, worst first. */
function hurtsOf({ score }: Layout, { score: free }: Layout): Hurt[] {
  const more = (count: number, code: RuleCode, key: string): Hurt[] =>
    count > 0 ? [{ code, words: message(key, { count }) }] : [];
  return [
    ...more(score.oversize - free.oversize, "S006", "setout.pin.more.oversize"),
    ...more(score.notches - free.notches, "S004", "setout.pin.more.notches"),
    ...more(score.slivers - free.slivers, "S005", "setout.pin.more.slivers"),
  ];
}

/** The joint of the layout without the pin that lies nearest to it, as a pin would be written. */
function nearestInstead(zone: SheetZone, pin: Pin, { joints, columns }: Layout): number | undefined {
  const lines =
    pin.axis === "x"
      ? joints.map(({ x }) => snap((x[0] + x[1]) / 2))
      : columns.flatMap(({ stack }) => stack.cuts);
  const free = lines.filter((at) => at !== pin.at && !isPinned(zone, pin, at));
  return free.sort((a, b) => Math.abs(a - pin.at) - Math.abs(b - pin.at))[0];
}

function isPinned(zone: SheetZone, { axis }: Pin, at: number): boolean {
  return zone.ground.zone.joints?.pinned?.[axis]?.includes(at) ?? false;
}

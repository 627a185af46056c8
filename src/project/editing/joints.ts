/** The joints of a sheet zone: pinned to a line, moved with their pin, kept out of a band, and freed again. */
import type { Interval } from "../../geometry/interval.ts";
import { message } from "../../text/message.ts";
import { valueAt } from "../pointer.ts";
import type { Zone } from "../schema/project.ts";
import { type Change, faceAt, likeWritten, type Ref, type Source } from "./change.ts";

/** x: the middle of an upright joint; y: the upper edge of the sheet under a level one. */
export type JointAxis = "x" | "y";

export type JointWishes = NonNullable<Zone["joints"]>;

interface Lists {
  readonly pinned: readonly number[];
  readonly forbidden: readonly Interval[];
}

function listsOf(joints: JointWishes | undefined, axis: JointAxis): Lists {
  return { pinned: joints?.pinned?.[axis] ?? [], forbidden: joints?.forbidden?.[axis] ?? [] };
}

/** The wishes with one axis' lists put in; undefined where nothing is wished any more. */
function withLists(joints: JointWishes | undefined, axis: JointAxis, lists: Lists): JointWishes | undefined {
  const put = (kind: keyof Lists) => {
    const { [axis]: _, ...others } = joints?.[kind] ?? {};
    const group = lists[kind].length > 0 ? { ...others, [axis]: lists[kind] } : others;
    return Object.keys(group).length > 0 ? { [kind]: group } : {};
  };
  const { pinned, forbidden, ...rest } = joints ?? {};
  const all = { ...rest, ...put("pinned"), ...put("forbidden") };
  return Object.keys(all).length > 0 ? (all as JointWishes) : undefined;
}

/** The wishes of a zone that is parted at a line: each part keeps those that lie in it. */
export function partJoints(
  joints: JointWishes | undefined,
  axis: JointAxis,
  line: number,
): { readonly low: JointWishes | undefined; readonly high: JointWishes | undefined } {
  const { pinned, forbidden } = listsOf(joints, axis);
  const part = (pin: (at: number) => boolean, band: (span: Interval) => boolean) =>
    withLists(joints, axis, { pinned: pinned.filter(pin), forbidden: forbidden.filter(band) });
  return {
    low: part(
      (at) => at < line,
      ([from]) => from < line,
    ),
    high: part(
      (at) => at > line,
      ([, to]) => to > line,
    ),
  };
}

/** Sets one axis' lists; what the file wrote of those that stay is written so again. */
function change(source: Source, ref: Ref, axis: JointAxis, next: (lists: Lists) => Lists) {
  const at = faceAt(source, ref.face);
  const index = at?.face.zones.findIndex(({ id }) => id === ref.id) ?? -1;
  const zone = at?.face.zones[index];
  if (!at || !zone) return undefined;
  const path = `${at.path}/zones/${index}/joints`;
  const written = valueAt(source.document, path.slice(1).split("/"));
  const was = listsOf(zone.joints, axis);
  const is = next(was);
  const old = (kind: keyof Lists, i: number): unknown => valueAt(written, [kind, axis, i]);
  const joints = withLists(written as JointWishes | undefined, axis, {
    pinned: is.pinned.map((mm) => likeWritten(mm, old("pinned", was.pinned.indexOf(mm))) as number),
    forbidden: is.forbidden.map((span) => {
      const same = was.forbidden.indexOf(span);
      return same < 0 ? span : (old("forbidden", same) as Interval);
    }),
  });
  if (joints) return [{ op: "add" as const, path, value: joints }];
  return written === undefined ? [] : [{ op: "remove" as const, path }];
}

function named(operations: Change["operations"] | undefined, says: Change["says"]): Change | undefined {
  return operations && { operations, says };
}

function nameOf(axis: JointAxis, at: number) {
  return axis === "x"
    ? message("project.edit.joint-upright", { at })
    : message("project.edit.joint-level", { at });
}

/** Pins a joint where it is, or its pin somewhere else. */
export function pinJoint(
  source: Source,
  ref: Ref,
  { axis, from, to }: { axis: JointAxis; from: number; to: number },
): Change | undefined {
  const operations = change(source, ref, axis, ({ pinned, forbidden }) => ({
    forbidden,
    pinned: [...pinned.filter((at) => at !== from && at !== to), to].sort((a, b) => a - b),
  }));
  return named(operations, message("project.edit.pin", { joint: nameOf(axis, to) }));
}

/** Lets the setting out choose again where a pinned joint lies. */
export function unpinJoint(
  source: Source,
  ref: Ref,
  { axis, at }: { axis: JointAxis; at: number },
): Change | undefined {
  const operations = change(source, ref, axis, (lists) => ({
    ...lists,
    pinned: lists.pinned.filter((pin) => pin !== at),
  }));
  return named(operations, message("project.edit.unpin", { joint: nameOf(axis, at) }));
}

/** Keeps joints out of a band; a pin within it goes. */
export function forbidBand(
  source: Source,
  ref: Ref,
  { axis, band }: { axis: JointAxis; band: Interval },
): Change | undefined {
  const operations = change(source, ref, axis, ({ pinned, forbidden }) => ({
    pinned: pinned.filter((at) => at < band[0] || at > band[1]),
    forbidden: [...forbidden, band].sort((a, b) => a[0] - b[0]),
  }));
  return named(operations, message("project.edit.forbid", { from: band[0], to: band[1] }));
}

/** Takes the band of a place in the file's list off again. */
export function allowBand(
  source: Source,
  ref: Ref,
  { axis, index }: { axis: JointAxis; index: number },
): Change | undefined {
  let allowed: Interval | undefined;
  const operations = change(source, ref, axis, (lists) => {
    allowed = lists.forbidden[index];
    return { ...lists, forbidden: lists.forbidden.filter((_, i) => i !== index) };
  });
  return allowed && named(operations, message("project.edit.allow", { from: allowed[0], to: allowed[1] }));
}

/** Zones: an edge moved with what it meets, one parted in two, clad otherwise, and merged into its neighbour. */
import type { PatchOperation } from "../../findings/finding.ts";
import { type Interval, overlaps } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { isGroup, valueAt } from "../pointer.ts";
import type { Cladding, Face, Zone } from "../schema/project.ts";
import { type Added, type Change, faceAt, likeWritten, type Ref, type Source } from "./change.ts";
import { partJoints } from "./joints.ts";
import { hang, unhang } from "./rods.ts";

export type Side = "left" | "right" | "bottom" | "top";

/** A wider strip between zones is bare wall (mm): they do not meet there. */
const WIDEST_JUNCTION_MM = 30;

const OPPOSITE: Readonly<Record<Side, Side>> = { left: "right", right: "left", bottom: "top", top: "bottom" };

export function axisOf(side: Side): "x" | "y" {
  return side === "left" || side === "right" ? "x" : "y";
}

function endOf(side: Side): 0 | 1 {
  return side === "left" || side === "bottom" ? 0 : 1;
}

/** What a zone takes up in its face's frame, its corners not counted. */
export function zoneBox(face: Face, zone: Zone): Rect {
  const { x, y } = polygonBounds(face.outline);
  const [from, to] = zone.x;
  return { x: [from === "left end" ? x[0] : from, to === "right end" ? x[1] : to], y: zone.y ?? y };
}

/** The sides that the file gives a place; the others follow the face. */
export function freeSides(zone: Zone): Side[] {
  return [
    ...(typeof zone.x[0] === "number" ? (["left"] as const) : []),
    ...(typeof zone.x[1] === "number" ? (["right"] as const) : []),
    ...(zone.y ? (["bottom", "top"] as const) : []),
  ];
}

export function zoneAt(source: Source, { face: id, id: wanted }: Ref) {
  const at = faceAt(source, id);
  const index = at?.face.zones.findIndex((one) => one.id === wanted) ?? -1;
  const zone = at?.face.zones[index];
  const path = `${at?.path}/zones/${index}`;
  const written = valueAt(source.document, path.slice(1).split("/"));
  return at && zone && isGroup(written)
    ? { face: at.face, facePath: at.path, zone, path, written }
    : undefined;
}

/** Zones that meet a side of one, across a junction or edge to edge. */
function neighbours(face: Face, zone: Zone, side: Side): Zone[] {
  const box = zoneBox(face, zone);
  const [axis, end] = [axisOf(side), endOf(side)];
  const across = axis === "x" ? "y" : "x";
  return face.zones.filter((other) => {
    const theirs = zoneBox(face, other);
    const apart = (theirs[axis][1 - end] as number) - (box[axis][end] as number);
    const gap = end === 1 ? apart : -apart;
    return other !== zone && gap >= 0 && gap <= WIDEST_JUNCTION_MM && overlaps(box[across], theirs[across]);
  });
}

/** All sides that lie on one line with a zone's side, so that moving it moves them all. */
function sidesOnLine(face: Face, zone: Zone, side: Side): { readonly zone: Zone; readonly side: Side }[] {
  const found = [{ zone, side }];
  for (const one of found) {
    for (const other of neighbours(face, one.zone, one.side)) {
      const facing = OPPOSITE[one.side];
      if (!found.some((known) => known.zone === other && known.side === facing))
        found.push({ zone: other, side: facing });
    }
  }
  return found;
}

/** Moves a zone's side to a place (mm), and with it the sides of the zones that it meets; the gap between them stays. */
export function moveZoneSide(source: Source, ref: Ref, side: Side, to: number): Change | undefined {
  const at = zoneAt(source, ref);
  if (!at || !freeSides(at.zone).includes(side)) return undefined;
  const [axis, end] = [axisOf(side), endOf(side)];
  const by = snap(to - zoneBox(at.face, at.zone)[axis][end]);
  const operations = sidesOnLine(at.face, at.zone, side).flatMap(({ zone, side: own }): PatchOperation[] => {
    const path = `${at.facePath}/zones/${at.face.zones.indexOf(zone)}/${axis}/${endOf(own)}`;
    const old = valueAt(source.document, path.slice(1).split("/"));
    // An end of the face stays one.
    if (!freeSides(zone).includes(own)) return [];
    return [
      { op: "replace", path, value: likeWritten(snap(zoneBox(at.face, zone)[axis][endOf(own)] + by), old) },
    ];
  });
  return { operations, says: message("project.edit.zone-side", { zone: ref.id, face: ref.face }) };
}

/** What is left open between two zones of one cladding: its joint. */
function gapBetween(cladding: Cladding | undefined): number {
  return cladding?.kind === "sheets" ? cladding.joint : (cladding?.endGap ?? 0);
}

/**
 * Parts a zone at a line (mm): the left or lower part keeps its id and ends there, the other begins past the joint.
 * Undefined where the line does not lie within it.
 */
export function splitZone(
  source: Source,
  ref: Ref,
  { axis, at: line }: { axis: "x" | "y"; at: number },
): Added | undefined {
  const at = zoneAt(source, ref);
  if (!at) return undefined;
  const { face, zone, path, written } = at;
  const cladding = source.project.claddings.find(({ id }) => id === zone.cladding);
  const box = zoneBox(face, zone);
  const [from, to] = box[axis];
  const start = snap(line + gapBetween(cladding));
  if (line <= from || start >= to) return undefined;
  const id = freeZoneId(face, ref.id);
  const span = axis === "x" ? written.x : (written.y ?? box.y);
  const [low, high] = span as [unknown, unknown];
  const { joints, ...rest } = written;
  const parted = partJoints(zone.joints, axis, line);
  const first = { ...rest, [axis]: [low, line], ...(parted.low && { joints: parted.low }) };
  const second = { ...rest, id, [axis]: [start, high], ...(parted.high && { joints: parted.high }) };
  const rods = onRod(cladding)
    ? hang(
        source,
        { face: ref.face, zone: id },
        { cladding: zone.cladding, like: { face: ref.face, zone: ref.id } },
      )
    : [];
  return {
    operations: [
      { op: "replace", path, value: first },
      { op: "add", path: path.replace(/\d+$/, (index) => String(Number(index) + 1)), value: second },
      ...rods,
    ],
    says: message("project.edit.zone-split", { zone: ref.id, face: ref.face, at: line }),
    added: { face: ref.face, id },
  };
}

function freeZoneId({ zones }: Face, id: string): string {
  const stem = id.replace(/-\d+$/, "").slice(0, 20);
  let number = 2;
  while (zones.some((zone) => zone.id === `${stem}-${number}`)) number += 1;
  return `${stem}-${number}`;
}

function onRod(cladding: Cladding | undefined): boolean {
  return cladding?.kind === "boards" && cladding.direction === "horizontal";
}

/** What a zone is to be clad with and built up of; what is absent stays. */
export interface Clad {
  readonly cladding?: string;
  readonly buildUp?: string;
}

/** Clads a zone otherwise; it leaves its rod, or comes onto one, as its boards ask. */
export function cladZone(source: Source, ref: Ref, to: Clad): Change | undefined {
  const operations = cladZones(source, [{ ref, to }]);
  const values = { zone: ref.id, face: ref.face, with: to.cladding ?? to.buildUp ?? "" };
  return operations.length === 0
    ? undefined
    : { operations, says: message("project.edit.zone-clad", values) };
}

/** The same of several zones at once. */
export function cladZones(
  source: Source,
  list: readonly { readonly ref: Ref; readonly to: Clad }[],
): PatchOperation[] {
  const rodded = (id: string) => onRod(source.project.claddings.find((one) => one.id === id));
  const found = list.flatMap(({ ref, to }) => {
    const at = zoneAt(source, ref);
    if (!at) return [];
    const cladding = to.cladding ?? at.zone.cladding;
    return [{ ref, to, path: at.path, cladding, was: rodded(at.zone.cladding), is: rodded(cladding) }];
  });
  const leaving = found.filter(({ was, is }) => was && !is);
  return [
    ...found.flatMap(({ path, to }) =>
      Object.entries(to).map(
        ([key, value]): PatchOperation => ({ op: "replace", path: `${path}/${key}`, value }),
      ),
    ),
    // Those that come onto a rod find it by its place, which a rod taken out before would change.
    ...found.flatMap(({ ref, cladding, was, is }) =>
      is && !was ? hang(source, { face: ref.face, zone: ref.id }, { cladding }) : [],
    ),
    ...unhang(source, ({ face, zone }) => leaving.some(({ ref }) => ref.face === face && ref.id === zone)),
  ];
}

/**
 * Takes a zone out; its neighbours on one side take its place where they fill that side alone. Undefined where none do:
 * a face is never left with a hole.
 */
export function removeZone(source: Source, ref: Ref): Change | undefined {
  const at = zoneAt(source, ref);
  if (!at) return undefined;
  const { face, zone, path, facePath } = at;
  const box = zoneBox(face, zone);
  for (const side of ["left", "right", "bottom", "top"] as const) {
    const heirs = neighbours(face, zone, side);
    const axis = axisOf(side);
    const across = axis === "x" ? "y" : "x";
    if (
      !fills(
        heirs.map((heir) => zoneBox(face, heir)[across]),
        box[across],
      )
    )
      continue;
    const end = endOf(OPPOSITE[side]);
    const place = axis === "x" ? (at.written.x as unknown[])[end] : (zone.y ?? box.y)[end];
    const grown = heirs.map((heir): PatchOperation => {
      return {
        op: "replace",
        path: `${facePath}/zones/${face.zones.indexOf(heir)}/${axis}/${end}`,
        value: place,
      };
    });
    return {
      operations: [
        ...grown,
        { op: "remove", path },
        ...unhang(source, (one) => one.face === ref.face && one.zone === ref.id),
      ],
      says: message("project.edit.zone-remove", { zone: ref.id, face: ref.face }),
    };
  }
  return undefined;
}

/** Whether spans lie within one and leave no more of it open than junctions. */
function fills(spans: readonly Interval[], [from, to]: Interval): boolean {
  if (spans.some(([low, high]) => low < from || high > to)) return false;
  let reached = from;
  for (const [low, high] of [...spans].sort((a, b) => a[0] - b[0])) {
    if (low - reached > WIDEST_JUNCTION_MM) return false;
    reached = Math.max(reached, high);
  }
  return spans.length > 0 && to - reached <= WIDEST_JUNCTION_MM;
}

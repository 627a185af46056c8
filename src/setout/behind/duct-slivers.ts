/**
 * Boards that a round duct leaves narrower than the sliver's floor over or under it, where no rod spares them. They split at the next
 * screw. The duct moves more easily than the courses, which the openings hold: the nearest height that leaves no sliver is told.
 */
import { type Finding, finding } from "../../findings/finding.ts";
import type { Interval } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { longerBehind } from "../corners.ts";
import type { Piece } from "../facade.ts";
import { claddingOf } from "../resolve.ts";
import { type DuctStrip, sliversBeside } from "../rod/index.ts";
import type { Wall } from "./wall.ts";

/** Lengths nearer than this are one (mm). */
const NOISE_MM = 0.001;

export function ductSlivers(wall: Wall): Finding[] {
  const floor = wall.project.limits.sliver.floor;
  return wall.grounds.flatMap((ground): Finding[] => {
    const cladding = claddingOf(wall.project, ground.zone);
    if (cladding.kind !== "boards" || ground.rounds.length === 0) return [];
    const upright = cladding.direction === "vertical";
    const axis = upright ? "x" : "y";
    const boards = wall.laid
      .filter(({ kind, zone }) => kind === "board" && zone === ground.zone.id)
      .map(({ mark, outline, cut, ends }) => ({
        mark,
        box: polygonBounds(outline),
        width: upright ? snap(cut.width - longerBehindIn(ends, cladding.thickness)) : cut.width,
      }));
    return ground.rounds.flatMap(({ of, centre, radius, bounds }): Finding[] => {
      const near = boards.filter(({ box }) =>
        upright
          ? box.y[0] < bounds.y[1] && box.y[1] > bounds.y[0]
          : box.x[0] < bounds.x[1] + NEAR_MM && box.x[1] > bounds.x[0] - NEAR_MM,
      );
      // A board that the duct parts, or notches, is as wide as its course: what is seen of it may be less.
      const courses = near.filter(({ box, width }) => box[axis][1] - box[axis][0] >= width - NOISE_MM);
      const at = centre[upright ? 0 : 1];
      const worst = sliverAt(at, radius, courses, floor.value);
      if (!worst) return [];
      const better = nearestClear({ at, radius, courses, share: floor.value });
      const index = (wall.face.penetrations ?? []).findIndex(({ id }) => id === of);
      const path = `${wall.path}/penetrations/${index}`;
      const moved = better === undefined ? undefined : snap(better);
      return [
        finding({
          code: "S024",
          outcome: "attention",
          where: { path, face: wall.face.id, zone: ground.zone.id, marks: [worst.mark] },
          says: message("setout.duct-sliver", {
            of,
            board: worst.mark,
            left: worst.left,
            least: worst.least,
          }),
          hint:
            moved === undefined
              ? message("setout.duct-sliver.no-place")
              : message(upright ? "setout.duct-sliver.move-x" : "setout.duct-sliver.move-y", {
                  of,
                  to: moved,
                }),
          ...(moved !== undefined && {
            edit: [{ op: "replace" as const, path: `${path}/${axis}`, value: moved }],
          }),
          demand: worst.left,
          limit: worst.least,
          unit: "mm",
          ratio: Math.round((worst.least / Math.max(worst.left, 0.001)) * 1000) / 1000,
          source: { kind: "common practice" },
        }),
      ];
    });
  });
}

/** What an upright board's mitres make it wider behind than it is seen (mm). */
function longerBehindIn({ left, right }: Piece["ends"], thickness: number): number {
  return longerBehind(left, thickness) + longerBehind(right, thickness);
}

/** Boards that end beside a duct stand for their course. */
const NEAR_MM = 50;
/** Farther than this a duct is not moved for a board. */
const FARTHEST_MM = 150;

interface Course {
  readonly mark: string;
  readonly box: { readonly x: Interval; readonly y: Interval };
  readonly width: number;
}

interface Sliver extends DuctStrip {
  readonly mark: string;
}

function spanOf({ box, width }: Course): Interval {
  const level = Math.abs(box.y[1] - box.y[0] - width) <= NOISE_MM;
  return level ? box.y : box.x;
}

/** The narrowest strip that a duct there leaves of a course, if it is narrower than its least. */
function sliverAt(at: number, radius: number, courses: readonly Course[], share: number): Sliver | undefined {
  let worst: Sliver | undefined;
  for (const course of courses) {
    const { mark, width } = course;
    for (const strip of sliversBeside([at - radius, at + radius], spanOf(course), {
      width,
      leastShare: share,
    }))
      if (!worst || strip.left < worst.left) worst = { mark, ...strip };
  }
  return worst;
}

/** The nearest middle of a duct that leaves no sliver: its edge on a course's edge, or a whole least away from it. */
function nearestClear(of: {
  readonly at: number;
  readonly radius: number;
  readonly courses: readonly Course[];
  readonly share: number;
}): number | undefined {
  const { at, radius, courses, share } = of;
  const places = courses.flatMap((course) => {
    const [from, to] = spanOf(course);
    const least = share * course.width + NOISE_MM;
    return [
      from - radius,
      from + radius,
      from + least + radius,
      to + radius,
      to - radius,
      to - least - radius,
    ];
  });
  return places
    .map(snap)
    .filter((place) => Math.abs(place - at) <= FARTHEST_MM && !sliverAt(place, radius, courses, share))
    .sort((a, b) => Math.abs(a - at) - Math.abs(b - at))[0];
}

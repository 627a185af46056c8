/** Zones within their face. */
import type { Finding } from "../../findings/finding.ts";
import { common } from "../../geometry/interval.ts";
import { isSimple, polygonBounds } from "../../geometry/polygon.ts";
import { type Rect, rectOutline } from "../../geometry/rect.ts";
import { intersect } from "../../geometry/region.ts";
import { message } from "../../text/message.ts";
import type { Path } from "../pointer.ts";
import { problem, type SourceFile } from "../problem.ts";
import type { Face, Project, Zone } from "../schema/project.ts";
import { PLAN_TOLERANCE_MM, planLength } from "./outlines.ts";
import { isUpright, type Span, spanProblem } from "./spans.ts";

export function zoneProblems(file: SourceFile, { faces }: Project): Finding[] {
  return faces.flatMap((face, i) =>
    face.zones.flatMap((zone, j) => {
      const path = ["faces", i, "zones", j];
      const rect = zoneRect(face, zone);
      const upsideDown = [
        ...(isUpright(rect.x) ? [] : [zoneXProblem(file, [...path, "x"], zone)]),
        ...(zone.y === undefined || isUpright(zone.y) ? [] : [spanProblem(file, [...path, "y"], "F014")]),
      ];
      // A height taken from an outline without area is the outline's fault, which is told there.
      if (upsideDown.length > 0 || !isUpright(rect.y)) return upsideDown;
      return [
        ...outsideProblems(file, { face, zone, rect, path }),
        ...overlapProblems(file, { face, rect, path, earlier: face.zones.slice(0, j), id: zone.id }),
      ];
    }),
  );
}

/** The rectangle that a zone takes up in its face's own frame, its corners not counted. */
function zoneRect(face: Face, zone: Zone): Rect {
  const [from, to] = zone.x;
  const outline = polygonBounds(face.outline);
  return {
    x: [from === "left end" ? 0 : from, to === "right end" ? planLength(face) : to],
    y: zone.y ?? outline.y,
  };
}

function zoneXProblem(file: SourceFile, path: Path, zone: Zone): Finding {
  if (zone.x.every((end) => typeof end === "number")) return spanProblem(file, path, "F014");
  const says = message("project.zone-without-width");
  return problem(file, { code: "F014", path, says, hint: message("project.hint.zone-width") });
}

interface Place {
  readonly face: Face;
  readonly zone: Zone;
  readonly rect: Rect;
  readonly path: Path;
}

function outsideProblems(file: SourceFile, { face, zone, rect, path }: Place): Finding[] {
  const length = planLength(face);
  const { y } = polygonBounds(face.outline);
  const beyond = (span: Span, bounds: Span): boolean =>
    span[0] < bounds[0] - PLAN_TOLERANCE_MM || span[1] > bounds[1] + PLAN_TOLERANCE_MM;
  const told = (key: "x" | "y", bounds: Span): Finding =>
    problem(file, {
      code: "F014",
      path: [...path, key],
      says: message("project.zone-outside", { id: zone.id, face: face.id }),
      hint: message("project.hint.zone-inside", { from: bounds[0], to: bounds[1] }),
    });
  return [
    ...(beyond(rect.x, [0, length]) ? [told("x", [0, length])] : []),
    ...(beyond(rect.y, y) ? [told("y", y)] : []),
  ];
}

function overlapProblems(
  file: SourceFile,
  place: { face: Face; rect: Rect; path: Path; earlier: readonly Zone[]; id: string },
): Finding[] {
  const { face, rect, path, earlier, id } = place;
  return earlier.flatMap((other) => {
    const theirs = zoneRect(face, other);
    const x = common(rect.x, theirs.x);
    const y = common(rect.y, theirs.y);
    if (x === undefined || y === undefined) return [];
    // Two zones may share a rectangle's corner that a rake cuts away.
    if (isSimple(face.outline) && intersect(face.outline, rectOutline({ x, y })).length === 0) return [];
    const values = { id, other: other.id, left: x[0], right: x[1], bottom: y[0], top: y[1] };
    const says = message("project.zones-overlap", values);
    return [problem(file, { code: "F015", path, says, hint: message("project.hint.zones-apart") })];
  });
}

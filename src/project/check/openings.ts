/** Openings, penetrations and lines within their face. */
import type { Finding } from "../../findings/finding.ts";
import { overlaps } from "../../geometry/interval.ts";
import { isSimple, polygonBounds, rectInsidePolygon } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import { message } from "../../text/message.ts";
import { pointerOf } from "../pointer.ts";
import { problem, type SourceFile } from "../problem.ts";
import type { Face, Opening, Project } from "../schema/project.ts";
import { isUpright } from "./spans.ts";

function upright({ x, y }: Rect): boolean {
  return isUpright(x) && isUpright(y);
}

function rectsOverlap(a: Rect, b: Rect): boolean {
  return overlaps(a.x, b.x) && overlaps(a.y, b.y);
}

/** Where the outline reaches, for a hint. */
function reach(face: Face): { left: number; right: number; bottom: number; top: number } {
  const { x, y } = polygonBounds(face.outline);
  return { left: x[0], right: x[1], bottom: y[0], top: y[1] };
}

export function openingProblems(file: SourceFile, { faces }: Project): Finding[] {
  return faces.flatMap((face, i) =>
    face.openings.flatMap((opening, j) => {
      const path = ["faces", i, "openings", j];
      if (opening.soffit && opening.kind !== "recess") return [soffitOutside(file, path, opening)];
      if (!upright(opening)) return [];
      const { id, x, y } = opening;
      const values = { id, face: face.id, left: x[0], right: x[1], bottom: y[0], top: y[1] };
      const outside = isSimple(face.outline) && !rectInsidePolygon(opening, face.outline);
      const other = face.openings
        .slice(0, j)
        .find((earlier) => upright(earlier) && rectsOverlap(earlier, opening));
      return [
        ...(outside
          ? [
              problem(file, {
                code: "F012",
                path,
                says: message("project.opening-outside", values),
                hint: message("project.hint.inside", reach(face)),
              }),
            ]
          : []),
        ...(other === undefined ? [] : [overlapProblem(file, path, { opening, other })]),
      ];
    }),
  );
}

/** Only a recess has an underside. */
function soffitOutside(file: SourceFile, path: readonly (string | number)[], opening: Opening): Finding {
  return problem(file, {
    code: "F020",
    path: [...path, "soffit"],
    says: message("project.soffit-outside", { opening: opening.id, kind: opening.kind }),
    hint: message("project.hint.soffit-outside"),
    edit: [{ op: "remove", path: pointerOf([...path, "soffit"]) }],
  });
}

function overlapProblem(
  file: SourceFile,
  path: readonly (string | number)[],
  { opening, other }: { opening: Opening; other: Opening },
): Finding {
  const { id, x, y } = opening;
  const says = message("project.openings-overlap", {
    id,
    other: other.id,
    left: Math.max(x[0], other.x[0]),
    right: Math.min(x[1], other.x[1]),
    bottom: Math.max(y[0], other.y[0]),
    top: Math.min(y[1], other.y[1]),
  });
  return problem(file, { code: "F013", path, says, hint: message("project.hint.move-apart") });
}

export function penetrationProblems(file: SourceFile, { faces }: Project): Finding[] {
  return faces.flatMap((face, i) =>
    (face.penetrations ?? []).flatMap(({ id, x, y, diameter }, j) => {
      const path = ["faces", i, "penetrations", j];
      const r = diameter / 2;
      const box: Rect = { x: [x - r, x + r], y: [y - r, y + r] };
      if (isSimple(face.outline) && !rectInsidePolygon(box, face.outline)) {
        const says = message("project.penetration-outside", { id, face: face.id, x, y, diameter });
        return [
          problem(file, { code: "F017", path, says, hint: message("project.hint.inside", reach(face)) }),
        ];
      }
      const within = face.openings.find((opening) => upright(opening) && rectsOverlap(opening, box));
      if (within === undefined) return [];
      const says = message("project.penetration-in-opening", { id, opening: within.id, x, y, diameter });
      return [problem(file, { code: "F017", path, says, hint: message("project.hint.move-apart") })];
    }),
  );
}

export function lineProblems(file: SourceFile, { faces }: Project): Finding[] {
  return faces.flatMap((face, i) => {
    const { y: heights } = polygonBounds(face.outline);
    return (face.lines ?? []).flatMap(({ id, y }, j) => {
      if (!isSimple(face.outline) || (y > heights[0] && y < heights[1])) return [];
      const path = ["faces", i, "lines", j, "y"];
      const says = message("project.line-outside", { id, face: face.id, y });
      return [problem(file, { code: "F017", path, says, hint: message("project.hint.inside", reach(face)) })];
    });
  });
}

/** Eaves over their face. */
import type { Finding } from "../../findings/finding.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { message } from "../../text/message.ts";
import { problem, type SourceFile } from "../problem.ts";
import type { Project } from "../schema/project.ts";

/** Eaves whose edge stands no higher than the face's foot would shade all of it, sun and sky. */
export function eavesProblems(file: SourceFile, { faces }: Project): Finding[] {
  return faces.flatMap((face, i) => {
    const [bottom, top] = polygonBounds(face.outline).y;
    if (!face.eaves || face.eaves.y > bottom) return [];
    return [
      problem(file, {
        code: "F033",
        path: ["faces", i, "eaves", "y"],
        says: message("project.eaves-low", { face: face.id, bottom }),
        hint: message("project.hint.eaves-low", { top }),
      }),
    ];
  });
}

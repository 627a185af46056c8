/** Build-ups that can carry what is put on them: one layer of battens, and rails where boards stand upright. */
import type { Finding } from "../../findings/finding.ts";
import { type Message, message } from "../../text/message.ts";
import type { Path } from "../pointer.ts";
import { problem, type SourceFile } from "../problem.ts";
import type { BuildUp, Cladding, Project } from "../schema/project.ts";

export function layerProblems(file: SourceFile, { buildUps, claddings, faces }: Project): Finding[] {
  const told = (path: Path, says: Message, hint: Message): Finding =>
    problem(file, { code: "F020", path, says, hint });
  const carrying = buildUps.flatMap((buildUp, i): Finding[] => {
    const path = ["buildUps", i, "layers"];
    const battens = countOf(buildUp, "batten");
    if (battens !== 1) {
      return [
        told(
          path,
          message("project.battens-not-one", { buildUp: buildUp.id, battens }),
          message("project.hint.one-batten"),
        ),
      ];
    }
    if (countOf(buildUp, "rail") > 1 || railInside(buildUp)) {
      return [
        told(
          path,
          message("project.rail-place", { buildUp: buildUp.id }),
          message("project.hint.rail-place"),
        ),
      ];
    }
    if (countOf(buildUp, "rail") === 1 && buildUp.railScrew === undefined) {
      return [
        told(
          ["buildUps", i, "railScrew"],
          message("project.rail-screw", { buildUp: buildUp.id }),
          message("project.hint.rail-screw"),
        ),
      ];
    }
    return [];
  });
  const worn = clothed(faces).flatMap(({ face, zone, wears, path }): Finding[] => {
    const cladding = claddings.find(({ id }) => id === wears.cladding);
    const buildUp = buildUps.find(({ id }) => id === wears.buildUp);
    if (!cladding || !buildUp) return [];
    const rails = countOf(buildUp, "rail") > 0;
    if (standsUpright(cladding) === rails) return [];
    const values = { face, zone, buildUp: buildUp.id };
    const at = [...path, "buildUp"];
    return [
      rails
        ? told(at, message("project.rails-unasked", values), message("project.hint.rails-unasked"))
        : told(
            at,
            message("project.upright-without-rails", values),
            message("project.hint.upright-without-rails"),
          ),
    ];
  });
  return [...carrying, ...worn];
}

interface Clothed {
  readonly face: string;
  readonly zone: string;
  readonly wears: { readonly cladding: string; readonly buildUp: string };
  readonly path: Path;
}

/** Every zone, and every soffit under the name of its opening. */
function clothed(faces: Project["faces"]): Clothed[] {
  return faces.flatMap(({ id: face, zones, openings }, i): Clothed[] => [
    ...zones.map((zone, j) => ({ face, zone: zone.id, wears: zone, path: ["faces", i, "zones", j] })),
    ...openings.flatMap(({ id, soffit }, j) =>
      soffit ? [{ face, zone: id, wears: soffit, path: ["faces", i, "openings", j, "soffit"] }] : [],
    ),
  ]);
}

function countOf({ layers }: BuildUp, kind: BuildUp["layers"][number]["kind"]): number {
  return layers.filter((layer) => layer.kind === kind).length;
}

/** A rail lies outside the battens, or nothing would drain behind it. */
function railInside({ layers }: BuildUp): boolean {
  const rail = layers.findIndex(({ kind }) => kind === "rail");
  return rail >= 0 && rail < layers.findIndex(({ kind }) => kind === "batten");
}

function standsUpright(cladding: Cladding): boolean {
  return cladding.kind === "boards" && cladding.direction === "vertical";
}

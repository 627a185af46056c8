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
  const worn = faces.flatMap((face, i) =>
    face.zones.flatMap((zone, j): Finding[] => {
      const cladding = claddings.find(({ id }) => id === zone.cladding);
      const buildUp = buildUps.find(({ id }) => id === zone.buildUp);
      if (!cladding || !buildUp) return [];
      const rails = countOf(buildUp, "rail") > 0;
      if (standsUpright(cladding) === rails) return [];
      const values = { face: face.id, zone: zone.id, buildUp: buildUp.id };
      const path = ["faces", i, "zones", j, "buildUp"];
      return [
        rails
          ? told(path, message("project.rails-unasked", values), message("project.hint.rails-unasked"))
          : told(
              path,
              message("project.upright-without-rails", values),
              message("project.hint.upright-without-rails"),
            ),
      ];
    }),
  );
  return [...carrying, ...worn];
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

/** Joint lines that a zone's owner pins or forbids: bands the right way round, no pin twice, and sheets to part. */
import type { Finding } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import { type Path, pointerOf } from "../pointer.ts";
import { problem, type SourceFile } from "../problem.ts";
import type { Project, Zone } from "../schema/project.ts";
import { isUpright, spanProblem } from "./spans.ts";

const AXES = ["x", "y"] as const;

export function jointProblems(file: SourceFile, { faces, claddings }: Project): Finding[] {
  const boards = new Set(claddings.filter(({ kind }) => kind === "boards").map(({ id }) => id));
  return faces.flatMap((face, i) =>
    face.zones.flatMap((zone, j) => {
      const path = ["faces", i, "zones", j];
      if (boards.has(zone.cladding)) return withoutSheets(file, { zone, face: face.id, path });
      return [...bandProblems(file, zone, path), ...doubledPins(file, zone, path)];
    }),
  );
}

/** Boards have a rod and butts instead: what is said of sheets there does nothing. */
function withoutSheets(
  file: SourceFile,
  { zone, face, path }: { readonly zone: Zone; readonly face: string; readonly path: Path },
): Finding[] {
  return (["pattern", "joints"] as const)
    .filter((key) => zone[key] !== undefined)
    .map((key) =>
      problem(file, {
        code: "F020",
        outcome: "attention",
        path: [...path, key],
        says: message("project.joints-on-boards", { zone: zone.id, face, key }),
        hint: message("project.hint.joints-on-boards", { key }),
        edit: [{ op: "remove", path: pointerOf([...path, key]) }],
      }),
    );
}

function bandProblems(file: SourceFile, { joints }: Zone, path: Path): Finding[] {
  return AXES.flatMap((axis) =>
    (joints?.forbidden?.[axis] ?? []).flatMap((band, k) =>
      isUpright(band) ? [] : [spanProblem(file, [...path, "joints", "forbidden", axis, k], "F016")],
    ),
  );
}

function doubledPins(file: SourceFile, { joints }: Zone, path: Path): Finding[] {
  return AXES.flatMap((axis) => {
    const pins = joints?.pinned?.[axis] ?? [];
    return pins.flatMap((at, k) => {
      if (pins.indexOf(at) === k) return [];
      const pin = [...path, "joints", "pinned", axis, k];
      return [
        problem(file, {
          code: "F032",
          outcome: "attention",
          path: pin,
          says: message("project.pin-twice", { at }),
          hint: message("project.hint.pin-twice"),
          edit: [{ op: "remove", path: pointerOf(pin) }],
        }),
      ];
    });
  });
}

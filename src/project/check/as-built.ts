/** What was measured: of openings that there are, and of each once. */
import type { Finding } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import { nearest } from "../nearest.ts";
import type { Path } from "../pointer.ts";
import { problem, type SourceFile } from "../problem.ts";
import type { Project } from "../schema/project.ts";

export function asBuiltProblems(file: SourceFile, { asBuilt, faces }: Project): Finding[] {
  const { openings = [], ends = [], laid = [] } = asBuilt ?? {};
  const named = [
    ...openings.map(({ face, opening }, i) => ({ face, opening, path: ["asBuilt", "openings", i] as Path })),
    ...ends.map(({ face }, i) => ({ face, opening: undefined, path: ["asBuilt", "ends", i] as Path })),
    ...laid.map(({ face }, i) => ({ face, opening: undefined, path: ["asBuilt", "laid", i] as Path })),
  ];
  return [
    ...named.flatMap(({ face, opening, path }) => {
      const on = faces.find(({ id }) => id === face);
      if (!on) return [dangling(file, [...path, "face"], face, faces)];
      const isKnown = opening === undefined || on.openings.some(({ id }) => id === opening);
      return isKnown ? [] : [dangling(file, [...path, "opening"], opening, on.openings)];
    }),
    ...twice(
      file,
      "openings",
      openings.map(({ face, opening }) => `${face} ${opening}`),
    ),
    ...twice(
      file,
      "ends",
      ends.map(({ face, end }) => `${face} ${end}`),
    ),
    ...twice(
      file,
      "laid",
      laid.map(({ face }) => face),
    ),
  ];
}

function dangling(
  file: SourceFile,
  path: Path,
  id: string,
  among: readonly { readonly id: string }[],
): Finding {
  const words = among.map((one) => one.id);
  const near = nearest(id, words);
  const hint =
    near === undefined
      ? message("project.hint.words", { words })
      : message("project.hint.nearest", { near, words });
  return problem(file, { code: "F010", path, says: message("project.id-dangling"), hint });
}

function twice(file: SourceFile, key: string, names: readonly string[]): Finding[] {
  return names.flatMap((name, i) =>
    names.indexOf(name) === i
      ? []
      : [
          problem(file, {
            code: "F032",
            path: ["asBuilt", key, i],
            says: message("project.measured-twice", { what: name }),
            hint: message("project.hint.measured-twice"),
          }),
        ],
  );
}

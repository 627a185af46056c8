/** Bands written as two values, the lesser first. */
import type { Finding } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import { type Path, pointerOf, valueAt } from "../pointer.ts";
import { problem, type SourceFile, shown } from "../problem.ts";
import type { Project } from "../schema/project.ts";

export type Span = readonly [from: number, to: number];

interface Band {
  readonly path: Path;
  readonly span: Span;
  /** Both ends may be the same value. */
  readonly mayBePoint?: boolean;
}

/** Whether a span runs from a lesser to a greater value. */
export function isUpright([from, to]: Span): boolean {
  return from < to;
}

export function spanProblems(file: SourceFile, project: Project): Finding[] {
  return [...faceBands(project), ...otherBands(project)].flatMap(({ path, span, mayBePoint = false }) => {
    if (isUpright(span) || (mayBePoint && span[0] === span[1])) return [];
    return [spanProblem(file, path, "F016")];
  });
}

/** The finding of a band that does not run upward; swapping its ends mends it where they differ. */
export function spanProblem(file: SourceFile, path: Path, code: "F014" | "F016"): Finding {
  const [from, to] = valueAt(file.document, path) as [unknown, unknown];
  const values = { from: shown(from), to: shown(to) };
  if (from === to) {
    const says = message("project.span-empty", values);
    return problem(file, { code, path, says, hint: message("project.hint.span-empty") });
  }
  return problem(file, {
    code,
    path,
    says: message("project.span-swapped", values),
    hint: message("project.hint.swap", values),
    edit: [{ op: "replace", path: pointerOf(path), value: [to, from] }],
  });
}

function faceBands({ faces }: Project): Band[] {
  return faces.flatMap((face, i) =>
    face.openings.flatMap(({ x, y }, j) => [
      { path: ["faces", i, "openings", j, "x"], span: x },
      { path: ["faces", i, "openings", j, "y"], span: y },
    ]),
  );
}

function otherBands({ claddings, structure, site }: Project): Band[] {
  const extremes = site.climate?.extremeTempC?.values;
  return [
    ...claddings.flatMap((cladding, i): Band[] => {
      const at = ["claddings", i];
      if (cladding.kind === "boards")
        return [{ path: [...at, "gapBand"], span: cladding.gapBand, mayBePoint: true }];
      const { edgeDistance, fixingSpacing, edgeZone } = cladding.dataSheet;
      return [
        { path: [...at, "dataSheet", "edgeDistance"], span: edgeDistance, mayBePoint: true },
        { path: [...at, "dataSheet", "fixingSpacing"], span: fixingSpacing, mayBePoint: true },
        ...(edgeZone
          ? [
              {
                path: [...at, "dataSheet", "edgeZone", "fixingSpacing"],
                span: edgeZone.fixingSpacing,
                mayBePoint: true,
              },
            ]
          : []),
      ];
    }),
    ...structure.bands.flatMap((band, i): Band[] =>
      "y" in band ? [{ path: ["structure", "bands", i, "y"], span: band.y as Span }] : [],
    ),
    ...(extremes === undefined
      ? []
      : [{ path: ["site", "climate", "extremeTempC", "values"], span: extremes, mayBePoint: true }]),
  ];
}

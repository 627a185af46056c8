/** What the schema cannot see: values that must agree with each other. Every rule runs, so that all problems show at once. */
import type { Finding } from "../findings/finding.ts";
import { asBuiltProblems } from "./check/as-built.ts";
import { azimuthProblems, cornerProblems } from "./check/corners.ts";
import { eavesProblems } from "./check/eaves.ts";
import { doubledIds } from "./check/ids.ts";
import { jointProblems } from "./check/joints.ts";
import { labelProblems } from "./check/labels.ts";
import { layerProblems } from "./check/layers.ts";
import { lineProblems, openingProblems, penetrationProblems } from "./check/openings.ts";
import { outlineProblems } from "./check/outlines.ts";
import { pileProblems, surveyProblems } from "./check/pile.ts";
import { danglingIds } from "./check/references.ts";
import { spanProblems } from "./check/spans.ts";
import { useProblems } from "./check/uses.ts";
import { zoneProblems } from "./check/zones.ts";
import type { SourceFile } from "./problem.ts";
import type { Project } from "./schema/project.ts";

type Rule = (file: SourceFile, project: Project) => Finding[];

const RULES: readonly Rule[] = [
  doubledIds,
  danglingIds,
  spanProblems,
  outlineProblems,
  openingProblems,
  eavesProblems,
  penetrationProblems,
  lineProblems,
  zoneProblems,
  jointProblems,
  cornerProblems,
  azimuthProblems,
  useProblems,
  layerProblems,
  pileProblems,
  surveyProblems,
  asBuiltProblems,
  labelProblems,
];

export function checkProject(file: SourceFile, project: Project): Finding[] {
  return RULES.flatMap((rule) => rule(file, project));
}

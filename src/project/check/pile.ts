/** Boards of the pile with their defects, and the tables of survey readings. */
import type { Finding, PatchOperation } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import { type Path, pointerOf, valueAt } from "../pointer.ts";
import { problem, type SourceFile } from "../problem.ts";
import type { PileBoard, Project } from "../schema/project.ts";
import { orderProblems } from "./outlines.ts";

export function pileProblems(file: SourceFile, { pile }: Project): Finding[] {
  return (pile?.boards ?? []).flatMap((board, i) => [
    ...defectProblems(file, board, i),
    ...waneProblems(file, board, i),
  ]);
}

function defectProblems(file: SourceFile, board: PileBoard, index: number): Finding[] {
  return board.defects.flatMap(({ kind, from, to }, j) => {
    const path = ["pile", "boards", index, "defects", j];
    const values = { board: board.id, kind, from, to, length: board.length };
    if (from > to) {
      const says = message("project.defect-swapped", values);
      const hint = message("project.hint.defect-swapped");
      return [problem(file, { code: "F016", path, says, hint, edit: swappedEnds(file, path) })];
    }
    if (from >= 0 && to <= board.length) return [];
    const says = message("project.defect-outside", values);
    const hint = message("project.hint.defect", { length: board.length });
    return [problem(file, { code: "F023", path, says, hint })];
  });
}

function swappedEnds(file: SourceFile, path: Path): PatchOperation[] {
  const from = [...path, "from"];
  const to = [...path, "to"];
  return [
    { op: "replace", path: pointerOf(from), value: valueAt(file.document, to) },
    { op: "replace", path: pointerOf(to), value: valueAt(file.document, from) },
  ];
}

function waneProblems(file: SourceFile, board: PileBoard, index: number): Finding[] {
  if (board.wane === undefined || board.wane.width < board.width) return [];
  const path = ["pile", "boards", index, "wane", "width"];
  const says = message("project.wane-wide", { board: board.id, width: board.width });
  return [
    problem(file, { code: "F023", path, says, hint: message("project.hint.wane", { width: board.width }) }),
  ];
}

/** One row of readings for each height, one reading for each x, heights and positions growing. */
export function surveyProblems(file: SourceFile, { survey = [] }: Project): Finding[] {
  return survey.flatMap(({ x, y, outward }, i) => {
    const path = ["survey", i];
    const rows =
      outward.length === y.length
        ? []
        : [
            problem(file, {
              code: "F031",
              path: [...path, "outward"],
              says: message("project.survey-rows", { rows: outward.length, heights: y.length }),
              hint: message("project.hint.survey-rows", { heights: y.length }),
            }),
          ];
    const readings = outward.flatMap((row, j) =>
      row.length === x.length
        ? []
        : [
            problem(file, {
              code: "F031",
              path: [...path, "outward", j],
              says: message("project.survey-readings", { readings: row.length, positions: x.length }),
              hint: message("project.hint.survey-readings", { positions: x.length }),
            }),
          ],
    );
    return [
      ...orderProblems(file, { values: x, path: [...path, "x"] }),
      ...orderProblems(file, { values: y, path: [...path, "y"] }),
      ...rows,
      ...readings,
    ];
  });
}

/** Labels that reach past their paper: the printer would cut them off. */
import type { Finding } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import { pastPaper } from "../label-sheet.ts";
import { problem, type SourceFile } from "../problem.ts";
import type { Project } from "../schema/project.ts";

/** Measures are typed one after another, so it hinders nothing. */
export function labelProblems(file: SourceFile, { sheets }: Project): Finding[] {
  if (!sheets?.labels) return [];
  const { right, below } = pastPaper(sheets.labels);
  const sides = [
    { by: right, field: "columns", says: "project.labels-right" },
    { by: below, field: "rows", says: "project.labels-below" },
  ] as const;
  return sides.flatMap(({ by, field, says }) =>
    by > 0
      ? [
          problem(file, {
            code: "F038",
            outcome: "attention",
            path: ["sheets", "labels", field],
            says: message(says, { by }),
            hint: message("project.hint.labels"),
          }),
        ]
      : [],
  );
}

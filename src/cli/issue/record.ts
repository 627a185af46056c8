/** Puts the record of a revision into the project, as the copy that goes out with its documents has it. */
import { readDocument } from "../../project/read.ts";
import { issuedWith } from "../../takeoff/issue-record.ts";
import { message } from "../../text/message.ts";
import type { Refusal } from "../answer.ts";
import type { Job } from "../job.ts";
import type { Worked } from "./work.ts";

const DATE = /^\d{4}-\d{2}-\d{2}$/;

/** The same work where no revision is asked for. */
export function recorded({ options }: Job, worked: Worked): Worked | Refusal {
  const { revision, note, who, date } = options;
  if (revision === undefined) {
    return note === undefined && who === undefined && date === undefined
      ? worked
      : { refused: message("cli.refused.revision-needed"), hint: message("cli.hint.revision") };
  }
  if (note === undefined)
    return { refused: message("cli.refused.revision-note"), hint: message("cli.hint.revision") };
  const when = date ?? new Date().toISOString().slice(0, "2026-01-01".length);
  if (!DATE.test(when)) return { refused: message("cli.refused.revision-date", { date: when }) };
  const { opened, design } = worked;
  const issued = issuedWith(opened.project.issued, design.facade, {
    revision,
    when,
    note,
    ...(who !== undefined && { who }),
  });
  if (!issued) {
    return {
      refused: message("cli.refused.revision-again", { revision }),
      hint: message("cli.hint.revision-next"),
    };
  }
  const document = { ...(opened.document as object), issued };
  const read = readDocument(document, opened.file.name);
  if (!read.ok)
    return { refused: message("cli.refused.revision-date", { date: when }), findings: read.findings };
  const { project } = read;
  return {
    ...worked,
    opened: { ...opened, document, project, recorded: true },
    design: { ...design, project },
  };
}

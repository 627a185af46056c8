import { type FormEvent, useState } from "react";
import type { Design } from "../../design.ts";
import { recordIssue } from "../../project/editing/sheets.ts";
import { issuedWith, nextRevision } from "../../takeoff/issue-record.ts";
import { message } from "../../text/message.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";

/** Gives what stands on the sheet a revision and its note, and keeps in the file what went out with it. */
export function IssueForm({ design, onEdit }: { design: Design; onEdit(edit: Edit): void }) {
  const { w, s } = useWords();
  const { issued } = design.project;
  const last = issued?.revisions.at(-1);
  const [typed, setTyped] = useState<string>();
  const [note, setNote] = useState("");
  const [taken, setTaken] = useState<string>();
  const revision = typed ?? nextRevision(issued);
  const issue = (event: FormEvent): void => {
    event.preventDefault();
    const when = new Date().toISOString().slice(0, "2026-01-01".length);
    const record = issuedWith(issued, design.facade, { revision, when, note });
    setTaken(record ? undefined : revision);
    if (!record) return;
    onEdit(recordIssue(record));
    setTyped(undefined);
    setNote("");
  };
  return (
    <form className="issue-form" onSubmit={issue}>
      {last && (
        <p className="sub">
          {s(
            message("page.sheets.last-issue", { revision: last.revision, when: last.when, note: last.note }),
          )}
        </p>
      )}
      <label>
        {w("page.sheets.revision")}{" "}
        <input value={revision} required maxLength={12} size={4} onChange={(e) => setTyped(e.target.value)} />
      </label>
      <label>
        {w("page.sheets.note")}{" "}
        <input value={note} required maxLength={120} onChange={(e) => setNote(e.target.value)} />
      </label>
      <button type="submit">{w("page.sheets.issue")}</button>
      {taken !== undefined && (
        <p role="alert">{s(message("cli.refused.revision-again", { revision: taken }))}</p>
      )}
    </form>
  );
}

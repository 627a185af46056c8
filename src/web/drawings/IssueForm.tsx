import { type FormEvent, useState } from "react";
import type { Design } from "../../design.ts";
import { applyPatch } from "../../project/edit.ts";
import { recordIssue } from "../../project/editing/sheets.ts";
import { issuedWith, nextRevision } from "../../takeoff/issue-record.ts";
import { message } from "../../text/message.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { freezeIssue } from "../work/issued-api.ts";
import { IssuedSets } from "./IssuedSets.tsx";

export interface IssueFormProps {
  readonly design: Design;
  /** Of the project file. */
  readonly name: string;
  readonly document: unknown;
  /** The project's id on the server. */
  readonly project: string;
  onEdit(edit: Edit): void;
}

/** Gives what stands on the sheet a revision and its note, keeps in the file what went out with it, and its documents on the server. */
export function IssueForm({ design, name, document, project, onEdit }: IssueFormProps) {
  const { w, s, reader } = useWords();
  const [frozen, setFrozen] = useState<"freezing" | "frozen" | "not-frozen">();
  const [turn, setTurn] = useState(0);
  const { issued } = design.project;
  const last = issued?.revisions.at(-1);
  const [typed, setTyped] = useState<string>();
  const [note, setNote] = useState("");
  const [taken, setTaken] = useState<string>();
  const revision = typed ?? nextRevision(issued);
  const freeze = async (issued: unknown): Promise<void> => {
    setFrozen("freezing");
    const done = await freezeIssue({ project, name, document: issued, reader, revision, note });
    setFrozen(done ? "frozen" : "not-frozen");
    setTurn((before) => before + 1);
  };
  const issue = (event: FormEvent): void => {
    event.preventDefault();
    const when = new Date().toISOString().slice(0, "2026-01-01".length);
    const record = issuedWith(issued, design.facade, { revision, when, note });
    setTaken(record ? undefined : revision);
    if (!record) return;
    const change = recordIssue(record);
    const made = applyPatch(document, change.operations);
    onEdit(change);
    if (made.ok) void freeze(made.document);
    setTyped(undefined);
    setNote("");
  };
  return (
    <>
      <form className="issue-form" onSubmit={issue}>
        {last && (
          <p className="sub">
            {s(
              message("page.sheets.last-issue", {
                revision: last.revision,
                when: last.when,
                note: last.note,
              }),
            )}
          </p>
        )}
        <label>
          {w("page.sheets.revision")}{" "}
          <input
            value={revision}
            required
            maxLength={12}
            size={4}
            onChange={(e) => setTyped(e.target.value)}
          />
        </label>
        <label>
          {w("page.sheets.note")}{" "}
          <input value={note} required maxLength={120} onChange={(e) => setNote(e.target.value)} />
        </label>
        <button type="submit" disabled={frozen === "freezing"}>
          {w("page.sheets.issue")}
        </button>
        {taken !== undefined && (
          <p role="alert">{s(message("cli.refused.revision-again", { revision: taken }))}</p>
        )}
        <p role="status" className="sub">
          {frozen && w(`page.sheets.${frozen}`)}
        </p>
      </form>
      <IssuedSets project={project} turn={turn} />
    </>
  );
}

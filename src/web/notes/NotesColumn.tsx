import { lazy, memo, Suspense, useCallback, useMemo, useRef, useState } from "react";
import type { Finding } from "../../findings/finding.ts";
import type { FieldFinder } from "../drawing/fields.ts";
import { type Pick, placeOfFinding } from "../picks/pick.ts";
import type { ProjectState } from "../sheet/use-project.ts";
import { useVariants } from "../variants/use-variants.ts";
import { useWords } from "../words.ts";
import { type NoteGroup, type Notes, notesOf } from "./groups.ts";
import { Note } from "./Note.tsx";
import { RefusedFile } from "./RefusedFile.tsx";

export interface NotesColumnProps {
  readonly project: ProjectState;
  readonly pick: Pick | undefined;
  readonly fieldOf: FieldFinder | undefined;
  onFinding(finding: Finding): void;
  onPick(pick: Pick): void;
}

const NO_FINDINGS: readonly Finding[] = [];

const SIDES = ["findings", "items", "variants"] as const;

type Side = (typeof SIDES)[number];

/** Notes that a narrow screen shows before it is asked for more; its style sheet hides the others. */
const SHORT = 6;

const ItemTree = lazy(async () => ({ default: (await import("./ItemTree.tsx")).ItemTree }));
const StartWall = lazy(async () => ({ default: (await import("../edit/StartWall.tsx")).StartWall }));
const VariantsNotes = lazy(async () => ({
  default: (await import("../variants/VariantsNotes.tsx")).VariantsNotes,
}));

/** The notes of the sheet: the findings, the list of all that is drawn, and the variants that are kept. */
export const NotesColumn = memo(function NotesColumn({
  project,
  pick,
  fieldOf,
  onFinding,
  onPick,
}: NotesColumnProps) {
  const { w, reader } = useWords();
  const { sheeted, refused } = project;
  const variants = useVariants(project);
  const [side, setSide] = useState<Side>("findings");
  const [open, setOpen] = useState<string>();
  const [long, setLong] = useState(false);
  const [unfolded, setUnfolded] = useState(false);
  const standing = useRef<Notes>(undefined);
  const findings = sheeted?.findings ?? NO_FINDINGS;
  const notes = useMemo(() => {
    standing.current = notesOf(findings, reader, standing.current);
    return standing.current;
  }, [findings, reader]);
  const toggle = useCallback((key: string) => setOpen((now) => (now === key ? undefined : key)), []);
  const note = (group: NoteGroup) => {
    const place = sheeted && placeOfFinding(sheeted.design, group.findings[0]);
    return (
      <Note
        key={group.key}
        group={group}
        field={place && fieldOf?.(place)}
        open={open === group.key}
        onToggle={toggle}
        onFinding={onFinding}
        onEdit={project.edit}
      />
    );
  };
  return (
    <section className="notes" aria-label={w("page.notes")} aria-busy={sheeted?.proving === true}>
      {refused && <RefusedFile refused={refused} onPutAway={project.putAway} />}
      <Suspense>{!sheeted && !project.busy && <StartWall onOpen={project.open} />}</Suspense>
      <div className="notes-head">
        <h2>
          {SIDES.map((one) => (
            <button
              type="button"
              key={one}
              className="notes-tab"
              aria-pressed={side === one}
              onClick={() => setSide(one)}
            >
              {w(`page.${one}`)}
            </button>
          ))}
        </h2>
        {sheeted && (
          <p className="count" data-count={sheeted.findings.length}>
            {w("page.count", { settle: notes.toSettleCount, hold: notes.holdingCount })}
          </p>
        )}
      </div>
      <div className="notes-body">
        {side !== "findings" ? (
          <Suspense fallback={<p className="empty">{w("page.busy")}</p>}>
            {sheeted && side === "variants" && <VariantsNotes sheeted={sheeted} variants={variants} />}
            {sheeted && side === "items" && <ItemTree design={sheeted.design} pick={pick} onPick={onPick} />}
          </Suspense>
        ) : (
          <>
            <ul className={long ? "note-list" : "note-list short"}>{notes.toSettle.map(note)}</ul>
            {!long && notes.toSettle.length > SHORT && (
              <button type="button" className="fold lengthen" onClick={() => setLong(true)}>
                {w("page.more-to-settle", { count: notes.toSettle.length - SHORT })}
              </button>
            )}
            {notes.holdingCount > 0 && (
              <button
                type="button"
                className="fold"
                aria-expanded={unfolded}
                onClick={() => setUnfolded(!unfolded)}
              >
                <span>{w("page.hold", { count: notes.holdingCount })}</span>
                <span className="sub">{w("page.hold-provisional", { count: notes.provisionalCount })}</span>
              </button>
            )}
            {unfolded && <ul className="note-list">{notes.holding.map(note)}</ul>}
            {sheeted && <p className="caution">{w("drawing.caution.codes")}</p>}
          </>
        )}
      </div>
    </section>
  );
});

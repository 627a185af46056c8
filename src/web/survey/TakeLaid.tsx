import { useState } from "react";
import type { Finding } from "../../findings/finding.ts";
import { symbolOf } from "../../scene/model.ts";
import { heading } from "../../scene/views/extent.ts";
import { OutcomeMark } from "../notes/OutcomeMark.tsx";
import { WorkingOf } from "../notes/WorkingOf.tsx";
import { useWords } from "../words.ts";
import type { NewlyFailing } from "./use-newly-failing.ts";

/** Takes a layout, once it is known and said what fails with it that did not before. */
export function TakeLaid({
  count,
  newly,
  onTake,
  onFinding,
}: {
  /** Pieces that move or change. */
  count: number;
  newly: NewlyFailing;
  onTake: () => void;
  onFinding: (finding: Finding) => void;
}) {
  const { w } = useWords();
  const failing = newly.kind === "known" ? newly.findings : [];
  return (
    <section className="built-newly" aria-label={w("page.survey.newly")} aria-busy={newly.kind === "asking"}>
      <p role={newly.kind === "unknown" ? "alert" : "status"}>
        {newly.kind === "known"
          ? w(failing.length === 0 ? "page.survey.newly-none" : "page.survey.newly-some", {
              count: failing.length,
            })
          : w(`page.survey.newly-${newly.kind}`)}
      </p>
      {failing.length > 0 && (
        <ul className="survey-findings">
          {failing.map((finding) => (
            <Failing key={keyOf(finding)} finding={finding} onFinding={onFinding} />
          ))}
        </ul>
      )}
      <p className="edit-words">
        <button type="button" disabled={newly.kind !== "known"} onClick={onTake}>
          {failing.length === 0
            ? w("page.survey.take", { count })
            : w("page.survey.take-failing", { count, failing: failing.length })}
        </button>
      </p>
    </section>
  );
}

function keyOf({ code, outcome, where }: Finding): string {
  return JSON.stringify([code, outcome, where]);
}

/** One finding: a press goes to its place and opens its working. */
function Failing({ finding, onFinding }: { finding: Finding; onFinding: (finding: Finding) => void }) {
  const { w, s } = useWords();
  const [open, setOpen] = useState(false);
  const { code, where, says } = finding;
  const place = [where.face === undefined ? undefined : heading(where.face), where.opening ?? where.zone];
  return (
    <li className={open ? "note open" : "note"}>
      <button
        type="button"
        className="note-press"
        aria-expanded={open}
        onClick={() => {
          if (!open) onFinding(finding);
          setOpen(!open);
        }}
      >
        <OutcomeMark symbol={symbolOf(finding) ?? "fail"} />
        <span className="note-title">{w(`page.rule.${code}`)}</span>
        <span className="note-says">{s(says)}</span>
        <span className="note-small">{[code, ...place.filter(Boolean)].join(" · ")}</span>
      </button>
      {open && <WorkingOf finding={finding} />}
    </li>
  );
}

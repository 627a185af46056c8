import type { Finding } from "../../findings/finding.ts";
import { symbolOf } from "../../scene/model.ts";
import { OutcomeMark } from "../notes/OutcomeMark.tsx";
import { useWords } from "../words.ts";

/** Findings of the wall as read or as built, each a press to its place. */
export function FoundList({
  findings,
  onFinding,
}: {
  findings: readonly Finding[];
  onFinding: (finding: Finding) => void;
}) {
  const { s } = useWords();
  return (
    <ul className="survey-findings">
      {findings.map((finding) => (
        <li key={`${finding.code} ${finding.where.zone ?? ""} ${s(finding.says)}`}>
          <button type="button" className="note-press" onClick={() => onFinding(finding)}>
            <OutcomeMark symbol={symbolOf(finding) ?? "pass"} />
            <span className="note-says">{s(finding.says)}</span>
            {finding.hint && <span className="note-small">{s(finding.hint)}</span>}
          </button>
        </li>
      ))}
    </ul>
  );
}

import type { Refused } from "../sheet/refused.ts";
import { useWords } from "../words.ts";
import { OutcomeMark } from "./OutcomeMark.tsx";

/** A file that is not on the sheet, and what keeps it off. */
export function RefusedFile({ refused, onPutAway }: { refused: Refused; onPutAway: () => void }) {
  const { w, s } = useWords();
  const says =
    "findings" in refused
      ? w(refused.kind === "edit" ? "page.edit.refused" : "page.file.refused", {
          file: refused.name,
          count: refused.findings.length,
        })
      : refused.kind === "broken"
        ? w("page.file.broken", { file: refused.name })
        : w(`page.file.${refused.kind}`);
  return (
    <div className="refused" role="alert">
      <div className="refused-head">
        <b>{says}</b>
        <button type="button" onClick={onPutAway}>
          {w("page.file.put-away")}
        </button>
      </div>
      {"findings" in refused && (
        <ul>
          {refused.findings.map(({ code, outcome, says: text, hint, where }) => (
            <li key={`${code} ${where.path ?? ""} ${s(text)}`}>
              <OutcomeMark symbol={outcome === "attention" ? "attention" : "fail"} />
              <span>
                {s(text)}
                {hint && <span className="hint"> {s(hint)}</span>}
                <span className="note-small">{code}</span>
              </span>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

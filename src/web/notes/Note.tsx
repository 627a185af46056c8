import { memo } from "react";
import type { Finding } from "../../findings/finding.ts";
import { heading } from "../../scene/views/extent.ts";
import { sayNumber } from "../../text/say.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords, type Words } from "../words.ts";
import type { NoteGroup } from "./groups.ts";
import { Mends } from "./Mends.tsx";
import { OutcomeMark } from "./OutcomeMark.tsx";
import { sourceText } from "./source.ts";
import { WorkingOf } from "./WorkingOf.tsx";

export interface NoteProps {
  readonly group: NoteGroup;
  /** Of the drawing, where its first place stands. */
  readonly field: string | undefined;
  readonly open: boolean;
  onToggle(key: string): void;
  onFinding(finding: Finding): void;
  onEdit(edit: Edit): void;
}

/** One note: pressing it goes to its place and opens its working. */
export const Note = memo(function Note({ group, field, open, onToggle, onFinding, onEdit }: NoteProps) {
  const words = useWords();
  const { w, s, reader } = words;
  const [first] = group.findings;
  const small = [
    first.code,
    ...(first.ratio === undefined ? [] : [w("page.of-limit", { ratio: sayNumber(first.ratio, 2, reader) })]),
    sourceText(first.source, words),
    ...(field ? [w("page.field", { field })] : []),
  ];
  return (
    <li className={open ? "note open" : "note"}>
      <button
        type="button"
        className="note-press"
        aria-expanded={open}
        onClick={() => {
          if (!open) onFinding(first);
          onToggle(group.key);
        }}
      >
        <OutcomeMark symbol={group.symbol} />
        <span className="note-title">{w(`page.rule.${first.code}`)}</span>
        <span className="note-says">{s(first.says)}</span>
        <span className="note-small">{small.join(" · ")}</span>
      </button>
      {group.findings.length > 1 && (
        <p className="note-places">
          {group.findings.map((finding, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the list never changes its order
            <button type="button" key={i} onClick={() => onFinding(finding)}>
              {placeText(finding, words)}
            </button>
          ))}
        </p>
      )}
      {open && <Mends finding={first} onEdit={onEdit} />}
      {open && <WorkingOf finding={first} />}
    </li>
  );
});

function placeText({ where }: Finding, { w }: Words): string {
  if (where.face === undefined) return where.path ?? w("page.whole");
  const inner = where.opening ?? where.zone;
  return inner === undefined ? heading(where.face) : `${heading(where.face)} ${inner}`;
}

import type { Finding } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";

/** The mends of a finding that can be written into the file: one press does one, and can be taken back. */
export function Mends({ finding, onEdit }: { finding: Finding; onEdit: (edit: Edit) => void }) {
  const { w, s } = useWords();
  const { code, edit, hint, choices = [] } = finding;
  const mends = [
    ...(edit && edit.length > 0 ? [{ edit, says: hint }] : []),
    ...choices.flatMap(({ edit: operations, says }) => (operations ? [{ edit: operations, says }] : [])),
  ];
  if (mends.length === 0) return null;
  return (
    <ul className="mends">
      {mends.map(({ edit: operations, says }) => (
        <li key={JSON.stringify(operations)}>
          <span>{says ? s(says) : ""}</span>
          <button
            type="button"
            onClick={() =>
              onEdit({ operations, says: message("page.edit.mend", { rule: message(`page.rule.${code}`) }) })
            }
          >
            {w("page.edit.apply")}
          </button>
        </li>
      ))}
    </ul>
  );
}

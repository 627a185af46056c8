import type { Change } from "../../../project/editing/change.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";

/** Takes out what is picked. */
export function RemovePress({
  removal,
  onEdit,
}: {
  removal: () => Change | undefined;
  onEdit(edit: Edit): void;
}) {
  const { w } = useWords();
  return (
    <p className="edit-words">
      <button
        type="button"
        aria-keyshortcuts="Delete"
        onClick={() => {
          const change = removal();
          if (change) onEdit(change);
        }}
      >
        {w("page.edit.remove")}
      </button>
    </p>
  );
}

import { moveLine, removeLine } from "../../../project/editing/lines.ts";
import { ownLineOf } from "../../picks/pick.ts";
import { useWords } from "../../words.ts";
import { sourceOf } from "../handles/handle.ts";
import { LengthField } from "./LengthField.tsx";
import type { FieldsProps } from "./props.ts";
import { RemovePress } from "./RemovePress.tsx";

/** The height of a control line of the project's own. */
export function LineFields({ design, pick, document, onEdit }: FieldsProps<"line">) {
  const { w } = useWords();
  const line = ownLineOf(design, pick);
  if (!line) return null;
  const source = sourceOf(design, document);
  return (
    <form
      className="place-fields"
      aria-label={w("page.edit.place", { id: pick.id })}
      onSubmit={(event) => event.preventDefault()}
    >
      <LengthField
        label={w("page.edit.height-over-datum")}
        help="line-height"
        value={line.y}
        onChange={(y) => {
          const change = moveLine(source, pick, y);
          if (change) onEdit(change);
        }}
      />
      <RemovePress removal={() => removeLine(source, pick)} onEdit={onEdit} />
    </form>
  );
}

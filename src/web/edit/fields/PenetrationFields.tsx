import { placePenetration, type Round, removePenetration } from "../../../project/editing/penetrations.ts";
import { penetrationOf } from "../../picks/pick.ts";
import { useWords } from "../../words.ts";
import { sourceOf } from "../handles/handle.ts";
import { LengthField } from "./LengthField.tsx";
import type { FieldsProps } from "./props.ts";
import { RemovePress } from "./RemovePress.tsx";

/** The middle and diameter of what passes through the wall. */
export function PenetrationFields({ design, pick, document, onEdit }: FieldsProps<"penetration">) {
  const { w } = useWords();
  const one = penetrationOf(design, pick);
  if (!one) return null;
  const source = sourceOf(design, document);
  const { x, y, diameter } = one;
  const put = (round: Round): void => {
    const change = placePenetration(source, pick, round);
    if (change) onEdit(change);
  };
  return (
    <form
      className="place-fields"
      aria-label={w("page.edit.place", { id: pick.id })}
      onSubmit={(event) => event.preventDefault()}
    >
      <LengthField
        label={w("page.edit.middle-left")}
        help="penetration-left"
        value={x}
        onChange={(at) => put({ at: [at, y], diameter })}
      />
      <LengthField
        label={w("page.edit.middle-height")}
        help="penetration-height"
        value={y}
        onChange={(at) => put({ at: [x, at], diameter })}
      />
      <LengthField
        label={w("page.edit.diameter")}
        help="penetration-diameter"
        value={diameter}
        least={1}
        onChange={(wide) => put({ at: [x, y], diameter: wide })}
      />
      <RemovePress removal={() => removePenetration(source, pick)} onEdit={onEdit} />
    </form>
  );
}

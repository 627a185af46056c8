import type { Rect } from "../../../geometry/rect.ts";
import type { Change } from "../../../project/editing/change.ts";
import {
  changeOpeningKind,
  copyOpening,
  placeOpening,
  removeOpening,
  standOpeningOnBase,
} from "../../../project/editing/openings.ts";
import { faceById } from "../../../project/lookup.ts";
import { snap } from "../../../units/length.ts";
import { useWords } from "../../words.ts";
import { sourceOf } from "../handles/handle.ts";
import { ChoiceField } from "./ChoiceField.tsx";
import { LengthField } from "./LengthField.tsx";
import type { FieldsProps } from "./props.ts";

/** A recess is more than its kind: what lines it is told in the file. */
const KINDS = ["window", "door", "other"] as const;

/** The place, size and kind of the opening that is picked, and what is done with the whole of it. */
export function OpeningFields({ design, pick, document, onEdit, onPick }: FieldsProps<"opening">) {
  const { w } = useWords();
  const opening = faceById(design.project, pick.face)?.openings.find(({ id }) => id === pick.id);
  if (!opening) return null;
  const source = sourceOf(design, document);
  const { x, y } = opening;
  const doIt = (change: Change | undefined): void => {
    if (change) onEdit(change);
  };
  const put = (rect: Rect): void => doIt(placeOpening(source, pick, rect));
  const width = snap(x[1] - x[0]);
  const height = snap(y[1] - y[0]);
  return (
    <form
      className="place-fields"
      aria-label={w("page.edit.place", { id: pick.id })}
      onSubmit={(event) => event.preventDefault()}
    >
      <LengthField
        label={w("page.edit.left")}
        value={x[0]}
        onChange={(left) => put({ x: [left, snap(left + width)], y })}
      />
      <LengthField
        label={w("page.edit.sill")}
        value={y[0]}
        onChange={(sill) => put({ x, y: [sill, snap(sill + height)] })}
      />
      <LengthField
        label={w("page.edit.width")}
        value={width}
        least={1}
        onChange={(wide) => put({ x: [x[0], snap(x[0] + wide)], y })}
      />
      <LengthField
        label={w("page.edit.height")}
        value={height}
        least={1}
        onChange={(high) => put({ x, y: [y[0], snap(y[0] + high)] })}
      />
      {opening.kind !== "recess" && (
        <ChoiceField
          label={w("page.fact.kind")}
          value={opening.kind}
          choices={KINDS.map((kind) => ({ value: kind, text: w(`term.${kind}`) }))}
          onChoose={(kind) => doIt(changeOpeningKind(source, pick, kind))}
        />
      )}
      <ChoiceField
        label={w("page.edit.under")}
        value={opening.toBase === true ? "base" : "clad"}
        choices={[
          { value: "clad", text: w("page.edit.under-clad") },
          { value: "base", text: w("page.edit.under-base") },
        ]}
        onChoose={(under) => doIt(standOpeningOnBase(source, pick, under === "base"))}
      />
      <p className="edit-words">
        <button
          type="button"
          onClick={() => {
            const copy = copyOpening(source, pick);
            if (!copy) return;
            onEdit(copy);
            onPick({ kind: "opening", ...copy.added });
          }}
        >
          {w("page.edit.copy")}
        </button>
        <button type="button" aria-keyshortcuts="Delete" onClick={() => doIt(removeOpening(source, pick))}>
          {w("page.edit.remove")}
        </button>
      </p>
    </form>
  );
}

import type { Rect } from "../../../geometry/rect.ts";
import type { Change } from "../../../project/editing/change.ts";
import {
  changeOpeningKind,
  copyOpening,
  placeOpening,
  standOpeningOnBase,
} from "../../../project/editing/openings.ts";
import { alignOpenings, type Edge } from "../../../project/editing/openings-together.ts";
import { faceById } from "../../../project/lookup.ts";
import { snap } from "../../../units/length.ts";
import { openingsOf } from "../../picks/pick.ts";
import { useWords } from "../../words.ts";
import { sourceOf } from "../handles/handle.ts";
import { removalOf } from "../removal.ts";
import { ChoiceField } from "./ChoiceField.tsx";
import { LengthField } from "./LengthField.tsx";
import type { FieldsProps } from "./props.ts";

const EDGES: readonly Edge[] = ["head", "sill", "left", "right"];

/** A recess is more than its kind: what lines it is told in the file. */
const KINDS = ["window", "door", "other"] as const;

/** The place, size and kind of the opening that is picked, and what is done with the whole of it. */
export function OpeningFields({ design, pick, document, onEdit, onPick }: FieldsProps<"opening">) {
  const { w } = useWords();
  const opening = faceById(design.project, pick.face)?.openings.find(({ id }) => id === pick.id);
  if (!opening) return null;
  const source = sourceOf(design, document);
  const { x, y } = opening;
  const together = openingsOf(design, pick);
  const others = design.project.faces
    .flatMap((face) => face.openings.map(({ id }) => ({ face: face.id, id })))
    .filter(({ id }) => !together.some((one) => one.id === id));
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
        help="opening-left"
        value={x[0]}
        onChange={(left) => put({ x: [left, snap(left + width)], y })}
      />
      <LengthField
        label={w("page.edit.sill")}
        help="opening-sill"
        value={y[0]}
        onChange={(sill) => put({ x, y: [sill, snap(sill + height)] })}
      />
      <LengthField
        label={w("page.edit.width")}
        help="opening-width"
        value={width}
        least={1}
        onChange={(wide) => put({ x: [x[0], snap(x[0] + wide)], y })}
      />
      <LengthField
        label={w("page.edit.height")}
        help="opening-height"
        value={height}
        least={1}
        onChange={(high) => put({ x, y: [y[0], snap(y[0] + high)] })}
      />
      {opening.kind !== "recess" && (
        <ChoiceField
          label={w("page.fact.kind")}
          help="opening-kind"
          value={opening.kind}
          choices={KINDS.map((kind) => ({ value: kind, text: w(`term.${kind}`) }))}
          onChoose={(kind) => doIt(changeOpeningKind(source, pick, kind))}
        />
      )}
      <ChoiceField
        label={w("page.edit.under")}
        help="opening-under"
        value={opening.toBase === true ? "base" : "clad"}
        choices={[
          { value: "clad", text: w("page.edit.under-clad") },
          { value: "base", text: w("page.edit.under-base") },
        ]}
        onChoose={(under) => doIt(standOpeningOnBase(source, pick, under === "base"))}
      />
      {others.length > 0 && (
        <ChoiceField
          label={w("page.edit.with")}
          help="opening-with"
          value=""
          choices={[
            {
              value: "",
              text: together
                .slice(1)
                .map(({ id }) => id)
                .join(", "),
            },
            ...others.map(({ id }) => ({ value: id, text: id })),
          ]}
          onChoose={(chosen) => {
            const other = others.find(({ id }) => id === chosen);
            if (other) onPick({ ...pick, with: [...(pick.with ?? []), other] });
          }}
        />
      )}
      {together.length > 1 && (
        <p className="edit-words">
          {w("page.edit.align", { id: pick.id })}
          {EDGES.map((edge) => {
            const change = alignOpenings(source, together, edge);
            return (
              <button type="button" key={edge} disabled={!change} onClick={() => doIt(change)}>
                {w(`page.edit.edge-${edge}`)}
              </button>
            );
          })}
        </p>
      )}
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
        <button
          type="button"
          aria-keyshortcuts="Delete"
          onClick={() => doIt(removalOf(design, document, pick))}
        >
          {w("page.edit.remove")}
        </button>
      </p>
    </form>
  );
}

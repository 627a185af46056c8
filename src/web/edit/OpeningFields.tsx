import type { Design } from "../../design.ts";
import type { Rect } from "../../geometry/rect.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { Pick } from "../picks/pick.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { LengthField } from "./LengthField.tsx";
import { placeOpening } from "./opening.ts";

/** The place and size of the opening that is picked, to be typed. */
export function OpeningFields({
  design,
  pick,
  document,
  onEdit,
}: {
  design: Design;
  pick: Extract<Pick, { kind: "opening" }>;
  document: unknown;
  onEdit: (edit: Edit) => void;
}) {
  const { w } = useWords();
  const opening = design.facade.faces
    .find(({ id }) => id === pick.face)
    ?.openings.find(({ id }) => id === pick.id);
  if (!opening) return null;
  const { x, y } = opening.region;
  const put = (rect: Rect): void =>
    onEdit({
      operations: placeOpening(document, pick, rect),
      says: message("page.edit.opening", { id: pick.id }),
    });
  const width = snap(x[1] - x[0]);
  const height = snap(y[1] - y[0]);
  return (
    <form
      className="opening-fields"
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
    </form>
  );
}

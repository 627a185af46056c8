import { useId, useMemo, useState } from "react";
import { polygonBounds } from "../../../geometry/polygon.ts";
import type { Change } from "../../../project/editing/change.ts";
import {
  addFaceBeside,
  copyFaceRules,
  moveOutlinePoint,
  removeFace,
  setFaceHeight,
  setFaceWidth,
} from "../../../project/editing/faces.ts";
import { faceById } from "../../../project/lookup.ts";
import { heading } from "../../../scene/views/extent.ts";
import { sayNumber } from "../../../text/say.ts";
import { normaliseDegrees } from "../../../units/angle.ts";
import { snap } from "../../../units/length.ts";
import { useWords } from "../../words.ts";
import { sourceOf } from "../handles/handle.ts";
import { useHelp } from "../help/use-help.tsx";
import { DrawingFold } from "../intake/DrawingFold.tsx";
import { ChoiceField } from "./ChoiceField.tsx";
import { degreesIn } from "./degrees.ts";
import { LengthField } from "./LengthField.tsx";
import type { FieldsProps } from "./props.ts";

/** The size of the face that is picked, the heights of its upper ends, and what is done with the whole of it. */
export function FaceFields({ design, pick, document, onEdit, onPick }: FieldsProps<"face">) {
  const { w, reader } = useWords();
  const id = useId();
  const [typed, setTyped] = useState<string>();
  const help = useHelp("face-azimuth", w("page.edit.face-azimuth"));
  const source = useMemo(() => sourceOf(design, document), [design, document]);
  const into = useMemo(() => ({ source, face: pick.face }), [source, pick.face]);
  const face = faceById(design.project, pick.face);
  if (!face) return null;
  const { x, y } = polygonBounds(face.outline);
  const width = snap(x[1] - x[0]);
  const height = snap(y[1] - y[0]);
  const doIt = (change: Change | undefined): void => {
    if (change) onEdit(change);
  };
  const topAt = (end: number): number =>
    face.outline.reduce(
      (best, [px, py], i) => (px === end && py > (face.outline[best]?.[1] ?? y[0]) ? i : best),
      -1,
    );
  // Round an outer corner, as most walls go on.
  const turned = normaliseDegrees(face.azimuthDeg - 90);
  const azimuthDeg = typed === undefined ? turned : degreesIn(typed);
  const beside =
    azimuthDeg === undefined ? undefined : addFaceBeside(source, face.id, { width, height, azimuthDeg });
  const others = design.project.faces.filter(({ id }) => id !== face.id);
  const mayWiden = setFaceWidth(source, face.id, width) !== undefined;
  return (
    <form
      className="place-fields"
      aria-label={w("page.edit.place", { id: heading(face.id) })}
      onSubmit={(event) => event.preventDefault()}
    >
      {mayWiden && (
        <LengthField
          label={w("page.edit.width")}
          help="face-width"
          value={width}
          least={1}
          onChange={(wide) => doIt(setFaceWidth(source, face.id, wide))}
        />
      )}
      <LengthField
        label={w("page.edit.height")}
        help="face-height"
        value={height}
        least={1}
        onChange={(high) => doIt(setFaceHeight(source, face.id, high))}
      />
      {x.map((end, i) => {
        const index = topAt(end);
        const corner = face.outline[index];
        return (
          corner && (
            <LengthField
              key={end}
              label={w(i === 0 ? "page.edit.top-left" : "page.edit.top-right")}
              help="face-top"
              value={corner[1]}
              onChange={(to) => doIt(moveOutlinePoint(source, face.id, index, [corner[0], to]))}
            />
          )
        );
      })}
      {!mayWiden && <p className="edit-why">{w("page.edit.width-closed")}</p>}
      <div className="length-field">
        <p className="field-head">
          <label htmlFor={id}>{w("page.edit.face-azimuth")}</label>
          {help.button}
        </p>
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={typed ?? sayNumber(turned, undefined, reader)}
          aria-invalid={azimuthDeg === undefined}
          onChange={({ currentTarget }) => setTyped(currentTarget.value)}
        />
      </div>
      {help.note}
      {others.length > 0 && (
        <ChoiceField
          label={w("page.edit.face-rules")}
          help="face-rules"
          value=""
          choices={[{ value: "", text: "" }, ...others.map(({ id }) => ({ value: id, text: heading(id) }))]}
          onChoose={(to) => doIt(copyFaceRules(source, face.id, to))}
        />
      )}
      <p className="edit-words">
        <button
          type="button"
          disabled={!beside}
          onClick={() => {
            if (!beside) return;
            onEdit(beside);
            onPick({ kind: "face", face: beside.added.face });
          }}
        >
          {w("page.edit.face-add")}
        </button>
        <button type="button" onClick={() => doIt(removeFace(source, face.id))}>
          {w("page.edit.remove")}
        </button>
      </p>
      <DrawingFold into={into} onTake={({ change }) => doIt(change)} />
      {azimuthDeg === undefined ? (
        <p className="edit-why">{w("page.edit.no-azimuth")}</p>
      ) : (
        !beside && <p className="edit-why">{w("page.edit.face-taken")}</p>
      )}
    </form>
  );
}

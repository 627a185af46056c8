import { heading } from "../../scene/views/extent.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import { useWords } from "../words.ts";

/** Faces with a button of their own at most. */
const MOST_BUTTONS = 12;
/** Letters of a name from which its button bears the face's code. */
const LONG_NAME = 8;
const STEP = 1.4;

/** Under the drawing: from the elevation to the axonometric view, to the whole, to one face, nearer and farther. */
export function ViewControls({
  faces,
  onSolid,
  onAll,
  onFace,
  onZoom,
}: {
  faces: readonly FaceLayout[];
  onSolid(): void;
  onAll(): void;
  onFace(face: string): void;
  /** Times nearer. */
  onZoom(factor: number): void;
}) {
  const { w } = useWords();
  return (
    <fieldset className="view-controls">
      <legend className="unseen">{w("page.view")}</legend>
      <button type="button" onClick={onSolid}>
        {w("page.solid")}
      </button>
      <button type="button" onClick={onAll}>
        {w("page.view.all")}
      </button>
      {faces.length <= MOST_BUTTONS &&
        faces.map(({ id, code }) => (
          <button type="button" key={id} title={heading(id)} onClick={() => onFace(id)}>
            {id.length > LONG_NAME ? code : heading(id)}
          </button>
        ))}
      <button type="button" aria-label={w("page.view.nearer")} onClick={() => onZoom(STEP)}>
        +
      </button>
      <button type="button" aria-label={w("page.view.farther")} onClick={() => onZoom(1 / STEP)}>
        −
      </button>
    </fieldset>
  );
}

import { useId, useState } from "react";
import type { Source } from "../../../project/editing/change.ts";
import { crewOfFace, giveFace } from "../../../project/editing/crews.ts";
import { heading } from "../../../scene/views/extent.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";
import { useReadOnly } from "../read-only.ts";
import { FieldFrame } from "./FieldFrame.tsx";

const LONGEST_NAME = 40;

/** Which crew works on each face; the phones' day is given out by it. */
export function CrewFields({ source, onEdit }: { source: Source; onEdit: (edit: Edit) => void }) {
  const { w } = useWords();
  const names = useId();
  const { faces, crews } = source.project;
  return (
    <form
      className="saw-fields"
      aria-label={w("page.progress.crews")}
      onSubmit={(event) => event.preventDefault()}
    >
      <datalist id={names}>
        {(crews ?? []).map(({ name }) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      {faces.map(({ id }) => (
        <CrewField
          key={id}
          face={heading(id)}
          names={names}
          crew={crewOfFace(crews, id) ?? ""}
          onChange={(name) => onEdit({ ...giveFace(source, id, name), made: source.document })}
        />
      ))}
    </form>
  );
}

function CrewField({
  face,
  names,
  crew,
  onChange,
}: {
  face: string;
  /** Id of the list of those that are known. */
  names: string;
  crew: string;
  onChange: (name: string) => void;
}) {
  const { w } = useWords();
  const readOnly = useReadOnly();
  const [typed, setTyped] = useState<string>();
  const commit = (): void => {
    setTyped(undefined);
    if (typed !== undefined && typed.trim() !== crew) onChange(typed);
  };
  return (
    <FieldFrame label={w("page.progress.crew-of", { face })} help="crew-face">
      {(id) => (
        <input
          id={id}
          readOnly={readOnly}
          list={names}
          autoComplete="off"
          maxLength={LONGEST_NAME}
          value={typed ?? crew}
          onChange={({ target }) => setTyped(target.value)}
          onBlur={commit}
          onKeyDown={({ key }) => {
            if (key === "Enter") commit();
            if (key === "Escape") setTyped(undefined);
          }}
        />
      )}
    </FieldFrame>
  );
}

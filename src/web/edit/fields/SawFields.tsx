import { useId, useState } from "react";
import type { Source } from "../../../project/editing/change.ts";
import { type SawField, setSaw } from "../../../project/editing/saw.ts";
import { sayNumber } from "../../../text/say.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";
import { useHelp } from "../help/use-help.tsx";
import { LengthField } from "./LengthField.tsx";

/** Thinner than any blade (mm). */
const LEAST = 0.1;

/** What the saw takes and can be asked: cut plans and their steps are held to it. */
export function SawFields({ source, onEdit }: { source: Source; onEdit: (edit: Edit) => void }) {
  const { w } = useWords();
  const { saw } = source.project.stock;
  const set = (field: SawField) => (value: number) => onEdit(setSaw(source, field, value));
  return (
    <form className="saw-fields" aria-label={w("page.saw")} onSubmit={(event) => event.preventDefault()}>
      <LengthField
        label={w("page.saw.kerf")}
        help="saw-kerf"
        value={saw.kerf}
        least={LEAST}
        onChange={set("kerf")}
      />
      <LengthField
        label={w("page.saw.table-length")}
        help="saw-table"
        value={saw.table?.length}
        least={LEAST}
        onChange={set("table-length")}
      />
      <LengthField
        label={w("page.saw.table-width")}
        help="saw-table"
        value={saw.table?.width}
        least={LEAST}
        onChange={set("table-width")}
      />
      <LengthField
        label={w("page.saw.fence")}
        help="saw-fence"
        value={saw.fence}
        least={LEAST}
        onChange={set("fence")}
      />
      <Lift value={saw.lift} onChange={set("lift")} />
    </form>
  );
}

/** Kilograms. */
function Lift({ value, onChange }: { value: number | undefined; onChange: (kg: number) => void }) {
  const { w, reader } = useWords();
  const id = useId();
  const label = w("page.saw.lift");
  const { button, note } = useHelp("saw-lift", label);
  const [typed, setTyped] = useState<string>();
  const shown = value === undefined ? "" : sayNumber(value, undefined, reader);
  const text = typed ?? shown;
  const kg = Number(text.trim().replace(",", "."));
  const wrong = text.trim() !== "" && !(kg > 0);
  const commit = (): void => {
    if (wrong || text.trim() === "") return;
    setTyped(undefined);
    if (typed !== undefined && kg !== value) onChange(kg);
  };
  return (
    <>
      <div className="length-field">
        <p className="field-head">
          <label htmlFor={id}>{label}</label>
          {button}
        </p>
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={wrong}
          aria-describedby={wrong ? `${id}-wrong` : undefined}
          onChange={({ target }) => setTyped(target.value)}
          onBlur={commit}
          onKeyDown={({ key }) => {
            if (key === "Enter") commit();
            if (key === "Escape") setTyped(undefined);
          }}
        />
        {wrong && (
          <span id={`${id}-wrong`} className="wrong" role="alert">
            {w("page.saw.no-weight")}
          </span>
        )}
      </div>
      {note}
    </>
  );
}

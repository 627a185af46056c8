import { useId, useState } from "react";
import type { Source } from "../../../project/editing/change.ts";
import { type SawField, setSaw } from "../../../project/editing/saw.ts";
import { sayNumber } from "../../../text/say.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";
import type { Field } from "../help/fields.ts";
import { useHelp } from "../help/use-help.tsx";
import { LengthField } from "./LengthField.tsx";

/** Thinner than any blade (mm). */
const LEAST = 0.1;

type Saw = Source["project"]["stock"]["saw"];

/** In millimetres; undefined where the file does not tell one. */
const LENGTHS: readonly {
  readonly field: SawField;
  readonly help: Field;
  readonly of: (saw: Saw) => number | undefined;
}[] = [
  { field: "kerf", help: "saw-kerf", of: ({ kerf }) => kerf },
  { field: "table-length", help: "saw-table", of: ({ table }) => table?.length },
  { field: "table-width", help: "saw-table", of: ({ table }) => table?.width },
  { field: "fence", help: "saw-fence", of: ({ fence }) => fence },
];

/** What the saw takes and can be asked: cut plans and their steps are held to it. */
export function SawFields({ source, onEdit }: { source: Source; onEdit: (edit: Edit) => void }) {
  const { w } = useWords();
  const { saw } = source.project.stock;
  const set = (field: SawField) => (value: number) => onEdit(setSaw(source, field, value));
  return (
    <form className="saw-fields" aria-label={w("page.saw")} onSubmit={(event) => event.preventDefault()}>
      {LENGTHS.map(({ field, help, of }) => (
        <LengthField
          key={field}
          label={w(`page.saw.${field}`)}
          help={help}
          value={of(saw)}
          least={LEAST}
          onChange={set(field)}
        />
      ))}
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

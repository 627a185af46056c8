import { useId, useState } from "react";
import type { Source } from "../../../project/editing/change.ts";
import { type SawField, setSaw } from "../../../project/editing/saw.ts";
import { sayNumber } from "../../../text/say.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";
import type { Field } from "../help/fields.ts";
import { useHelp } from "../help/use-help.tsx";
import { useTypedLength } from "./use-typed-length.ts";

/** What the saw takes and can be asked: cut plans and their steps are held to it. */
export function SawFields({ source, onEdit }: { source: Source; onEdit: (edit: Edit) => void }) {
  const { w } = useWords();
  const { saw } = source.project.stock;
  const set = (field: SawField) => (value: number) => onEdit(setSaw(source, field, value));
  return (
    <form className="saw-fields" aria-label={w("page.saw")} onSubmit={(event) => event.preventDefault()}>
      <Reach field="kerf" help="saw-kerf" value={saw.kerf} onChange={set("kerf")} />
      <Reach field="table-length" help="saw-table" value={saw.table?.length} onChange={set("table-length")} />
      <Reach field="table-width" help="saw-table" value={saw.table?.width} onChange={set("table-width")} />
      <Reach field="fence" help="saw-fence" value={saw.fence} onChange={set("fence")} />
      <Lift value={saw.lift} onChange={set("lift")} />
    </form>
  );
}

/** A length that the file need not tell. */
function Reach({
  field,
  help,
  value,
  onChange,
}: {
  field: SawField;
  help: Field;
  value: number | undefined;
  onChange: (mm: number) => void;
}) {
  const { w } = useWords();
  const id = useId();
  const label = w(`page.saw.${field}`);
  const { button, note } = useHelp(help, label);
  const { wrong, props } = useTypedLength({ value, least: 0.1, decimals: 3, onChange });
  return (
    <>
      <div className="length-field">
        <p className="field-head">
          <label htmlFor={id}>{label}</label>
          {button}
        </p>
        <input id={id} {...props} aria-describedby={wrong ? `${id}-wrong` : undefined} />
        {wrong && (
          <span id={`${id}-wrong`} className="wrong" role="alert">
            {w(wrong === "short" ? "page.edit.too-short" : "page.edit.no-length")}
          </span>
        )}
      </div>
      {note}
    </>
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

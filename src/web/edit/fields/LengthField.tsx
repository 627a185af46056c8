import { useId, useState } from "react";
import { parseLength, printLength } from "../../../units/feet-inch.ts";
import { useWords } from "../../words.ts";
import type { Field } from "../help/fields.ts";
import { useHelp } from "../help/use-help.tsx";

/** A length to be typed in either system; what cannot be read stays in the field and is told, and changes nothing. */
export function LengthField({
  label,
  help,
  value,
  least,
  onChange,
}: {
  label: string;
  help: Field;
  value: number;
  /** Less than this is refused (mm). */
  least?: number;
  onChange: (mm: number) => void;
}) {
  const { w, reader } = useWords();
  const id = useId();
  const { button, note } = useHelp(help, label);
  const [typed, setTyped] = useState<string>();
  const shown = printLength(value, {
    display: reader.units,
    denominator: 32,
    decimals: 3,
    decimalSign: reader.language === "fr" ? "," : ".",
  });
  const read = typed === undefined ? undefined : parseLength(typed, reader.units === "mm" ? "mm" : "in");
  const short = read?.ok === true && least !== undefined && read.value < least;
  const wrong = read !== undefined && (!read.ok || short);
  const commit = (): void => {
    if (wrong) return;
    setTyped(undefined);
    if (read?.ok && typed !== shown && read.value !== value) onChange(read.value);
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
          inputMode={reader.units === "mm" ? "decimal" : "text"}
          autoComplete="off"
          value={typed ?? shown}
          aria-invalid={wrong}
          aria-describedby={wrong ? `${id}-wrong` : undefined}
          onChange={({ currentTarget }) => setTyped(currentTarget.value)}
          onBlur={commit}
          onKeyDown={({ key }) => {
            if (key === "Enter") commit();
            if (key === "Escape") setTyped(undefined);
          }}
        />
        {wrong && (
          <span id={`${id}-wrong`} className="wrong" role="alert">
            {short ? w("page.edit.too-short") : w("page.edit.no-length")}
          </span>
        )}
      </div>
      {note}
    </>
  );
}

import { useId, useState } from "react";
import { parseLength, printLength } from "../../../units/feet-inch.ts";
import { useWords } from "../../words.ts";

/** A length to be typed in either system; what cannot be read stays in the field and is told, and changes nothing. */
export function LengthField({
  label,
  value,
  least,
  onChange,
}: {
  label: string;
  value: number;
  /** Less than this is refused (mm). */
  least?: number;
  onChange: (mm: number) => void;
}) {
  const { w, reader } = useWords();
  const id = useId();
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
    <p className="length-field">
      <label htmlFor={id}>{label}</label>
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
    </p>
  );
}

import { useTypedLength } from "../edit/fields/use-typed-length.ts";
import { useWords } from "../words.ts";

/** A length or a reading in either system; what cannot be read stays, is told, and changes nothing. */
export function LengthInput({
  label,
  value,
  onChange,
}: {
  label: string;
  /** Millimetres. */
  value?: number | undefined;
  onChange: (mm: number) => void;
}) {
  const { w } = useWords();
  const { wrong, props } = useTypedLength({ value, decimals: 1, signed: true, onChange });
  return (
    <label className="field">
      {label}
      <input {...props} />
      {wrong && <span role="alert">{w("page.edit.no-length")}</span>}
    </label>
  );
}

import { useState } from "react";

/** A century, as in the file. */
const LONGEST = 1200;

/** Months between: left empty, as often as is usual. */
export function MonthsField({
  label,
  usual,
  months,
  onChange,
}: {
  label: string;
  /** What stands there while nothing is given. */
  usual: number | undefined;
  months: number | undefined;
  onChange(months: number | undefined): void;
}) {
  const shown = months === undefined ? "" : String(months);
  const [typed, setTyped] = useState<string>();
  const text = typed ?? shown;
  const value = text.trim() === "" ? undefined : Number(text);
  const wrong = value !== undefined && !(Number.isInteger(value) && value >= 1 && value <= LONGEST);
  const commit = (): void => {
    if (wrong) return;
    setTyped(undefined);
    if (value !== months) onChange(value);
  };
  return (
    <input
      className="months"
      inputMode="numeric"
      autoComplete="off"
      aria-label={label}
      aria-invalid={wrong}
      placeholder={usual === undefined ? "?" : String(usual)}
      value={text}
      onChange={({ target }) => setTyped(target.value)}
      onBlur={commit}
      onKeyDown={({ key }) => {
        if (key === "Enter") commit();
        if (key === "Escape") setTyped(undefined);
      }}
    />
  );
}

import { useId, useState } from "react";
import { useWords } from "../../words.ts";
import type { Field } from "../help/fields.ts";
import { useHelp } from "../help/use-help.tsx";

/** A count from one up; what is none stays in the field and is told, and changes nothing. */
export function CountField({
  label,
  help,
  value,
  most,
  onChange,
}: {
  label: string;
  help: Field;
  value: number;
  most: number;
  onChange: (count: number) => void;
}) {
  const { w } = useWords();
  const id = useId();
  const { button, note } = useHelp(help, label);
  const [typed, setTyped] = useState<string>();
  const text = typed ?? `${value}`;
  const count = Number(text.trim());
  const wrong = text.trim() === "" || !Number.isInteger(count) || count < 1 || count > most;
  const commit = (): void => {
    if (wrong) return;
    setTyped(undefined);
    if (count !== value) onChange(count);
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
          inputMode="numeric"
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
            {w("page.edit.no-count", { most })}
          </span>
        )}
      </div>
      {note}
    </>
  );
}

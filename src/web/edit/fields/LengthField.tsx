import { useId } from "react";
import { useWords } from "../../words.ts";
import type { Field } from "../help/fields.ts";
import { useHelp } from "../help/use-help.tsx";
import { useTypedLength } from "./use-typed-length.ts";

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
  /** Undefined where the file does not tell it. */
  value: number | undefined;
  /** Less than this is refused (mm). */
  least?: number;
  onChange: (mm: number) => void;
}) {
  const { w } = useWords();
  const id = useId();
  const { button, note } = useHelp(help, label);
  const { wrong, props } = useTypedLength({ value, least, decimals: 3, onChange });
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

import { useId } from "react";
import type { Field } from "../help/fields.ts";
import { useHelp } from "../help/use-help.tsx";

/** One of a few words. */
export function ChoiceField<Value extends string>({
  label,
  help,
  value,
  choices,
  onChoose,
}: {
  label: string;
  help: Field;
  value: Value;
  choices: readonly { readonly value: Value; readonly text: string }[];
  onChoose: (value: Value) => void;
}) {
  const id = useId();
  const { button, note } = useHelp(help, label);
  return (
    <>
      <div className="length-field">
        <p className="field-head">
          <label htmlFor={id}>{label}</label>
          {button}
        </p>
        <select
          id={id}
          value={value}
          onChange={({ currentTarget }) => {
            const chosen = choices.find((one) => one.value === currentTarget.value);
            if (chosen) onChoose(chosen.value);
          }}
        >
          {choices.map((one) => (
            <option key={one.value} value={one.value}>
              {one.text}
            </option>
          ))}
        </select>
      </div>
      {note}
    </>
  );
}

import { FIELDS, type Field } from "../help/fields.ts";
import { useReadOnly } from "../read-only.ts";
import { FieldFrame } from "./FieldFrame.tsx";

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
  // A choice that the file does not keep only leads to what is looked at.
  const disabled = useReadOnly() && "at" in FIELDS[help];
  return (
    <FieldFrame label={label} help={help}>
      {(id) => (
        <select
          id={id}
          value={value}
          disabled={disabled}
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
      )}
    </FieldFrame>
  );
}

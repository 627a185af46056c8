import { useId } from "react";

/** One of a few words. */
export function ChoiceField<Value extends string>({
  label,
  value,
  choices,
  onChoose,
}: {
  label: string;
  value: Value;
  choices: readonly { readonly value: Value; readonly text: string }[];
  onChoose: (value: Value) => void;
}) {
  const id = useId();
  return (
    <p className="length-field">
      <label htmlFor={id}>{label}</label>
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
    </p>
  );
}

import { useState } from "react";
import { sayNumber } from "../../../text/say.ts";
import { useWords } from "../../words.ts";
import type { Field } from "../help/fields.ts";
import { useReadOnly } from "../read-only.ts";
import { FieldFrame } from "./FieldFrame.tsx";

/** A plain number to be typed, its unit in its label; what cannot be read stays, is told, and changes nothing. */
export function NumberField({
  label,
  help,
  value,
  wrong: said,
  isGood,
  onChange,
}: {
  label: string;
  help: Field;
  /** Undefined where the file does not tell it. */
  value: number | undefined;
  /** What is told of a text that is no number of this kind. */
  wrong: string;
  isGood: (typed: number) => boolean;
  onChange: (value: number) => void;
}) {
  const { reader } = useWords();
  const readOnly = useReadOnly();
  const [typed, setTyped] = useState<string>();
  const shown = value === undefined ? "" : sayNumber(value, undefined, reader);
  const text = (typed ?? shown).trim();
  const read = Number(text.replace(",", "."));
  // An empty field tells nothing where the file has nothing; it takes nothing out of the file either.
  const empty = text === "" && value === undefined;
  const wrong = !empty && (text === "" || !isGood(read));
  const commit = (): void => {
    if (wrong || empty) return;
    setTyped(undefined);
    if (typed !== undefined && read !== value) onChange(read);
  };
  return (
    <FieldFrame label={label} help={help} wrong={wrong ? said : undefined}>
      {(id, told) => (
        <input
          id={id}
          readOnly={readOnly}
          inputMode="decimal"
          autoComplete="off"
          value={typed ?? shown}
          aria-invalid={wrong}
          aria-describedby={told}
          onChange={({ target }) => setTyped(target.value)}
          onBlur={commit}
          onKeyDown={({ key }) => {
            if (key === "Enter") commit();
            if (key === "Escape") setTyped(undefined);
          }}
        />
      )}
    </FieldFrame>
  );
}

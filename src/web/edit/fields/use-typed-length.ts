/** A length being typed, in either system: what cannot be read stays in its field and changes nothing. */
import { type ChangeEvent, type KeyboardEvent, useState } from "react";
import { parseLength, printLength } from "../../../units/feet-inch.ts";
import { useWords } from "../../words.ts";
import { useReadOnly } from "../read-only.ts";

export interface TypedLength {
  /** What is typed is no length, or too short or too long a one. */
  readonly wrong: false | "unread" | "short" | "long";
  /** For the input. */
  readonly props: {
    readonly readOnly: boolean;
    readonly inputMode: "decimal" | "text";
    readonly autoComplete: "off";
    readonly value: string;
    readonly "aria-invalid": boolean;
    onChange(event: ChangeEvent<HTMLInputElement>): void;
    onBlur(): void;
    onKeyDown(event: KeyboardEvent): void;
  };
}

/**
 * @param value mm; absent where each one that is typed is another one
 * @param least less than this is refused (mm)
 * @param most more than this is refused (mm)
 * @param onChange hears of a length once it is whole and differs
 */
export function useTypedLength({
  value,
  least,
  most,
  decimals,
  signed = false,
  isGuess = false,
  onChange,
}: {
  readonly value: number | undefined;
  readonly least?: number | undefined;
  readonly most?: number | undefined;
  readonly decimals: number;
  /** It is often less than nothing. */
  readonly signed?: boolean;
  /** Nobody has said the value: the same one typed, or taken with Enter, is heard of as well. */
  readonly isGuess?: boolean;
  readonly onChange: (mm: number) => void;
}): TypedLength {
  const { reader } = useWords();
  const readOnly = useReadOnly();
  const [typed, setTyped] = useState<string>();
  const shown =
    value === undefined
      ? ""
      : printLength(value, {
          display: reader.units,
          denominator: 32,
          decimals,
          decimalSign: reader.language === "fr" ? "," : ".",
        });
  const empty = value === undefined && !typed?.trim();
  const read =
    typed === undefined || empty ? undefined : parseLength(typed, reader.units === "mm" ? "mm" : "in");
  const short = read?.ok === true && least !== undefined && read.value < least;
  const long = read?.ok === true && most !== undefined && read.value > most;
  const wrong = read?.ok === false ? "unread" : short ? "short" : long ? "long" : false;
  const commit = (entered = false): void => {
    if (wrong || readOnly) return;
    setTyped(undefined);
    if (isGuess && value !== undefined && (read?.ok ? read.value === value : entered)) onChange(value);
    if (read?.ok && typed !== shown && read.value !== value) onChange(read.value);
  };
  return {
    wrong,
    props: {
      // Beside its figures a phone shows no minus, and no foot or inch.
      readOnly,
      inputMode: reader.units === "mm" && !signed ? "decimal" : "text",
      autoComplete: "off",
      value: typed ?? shown,
      "aria-invalid": wrong !== false,
      onChange: ({ currentTarget }) => setTyped(currentTarget.value),
      onBlur: () => commit(),
      onKeyDown({ key }) {
        if (key === "Enter") commit(true);
        if (key === "Escape") setTyped(undefined);
      },
    },
  };
}

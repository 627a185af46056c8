import { useWords } from "../../words.ts";
import type { Field } from "../help/fields.ts";
import { FieldFrame } from "./FieldFrame.tsx";
import { useTypedLength } from "./use-typed-length.ts";

/** A length to be typed in either system; what cannot be read stays in the field and is told, and changes nothing. */
export function LengthField({
  label,
  help,
  value,
  least,
  most,
  outside,
  onChange,
}: {
  label: string;
  help: Field;
  /** Undefined where the file does not tell it. */
  value: number | undefined;
  /** Less than this is refused (mm). */
  least?: number;
  /** More than this is refused (mm). */
  most?: number;
  /** What is told of a length that is refused; that it is nothing, unless told. */
  outside?: string;
  onChange: (mm: number) => void;
}) {
  const { w } = useWords();
  const { wrong, props } = useTypedLength({ value, least, most, decimals: 3, onChange });
  return (
    <FieldFrame
      label={label}
      help={help}
      wrong={
        wrong === false
          ? undefined
          : wrong === "unread"
            ? w("page.edit.no-length")
            : (outside ?? w("page.edit.too-short"))
      }
    >
      {(id, told) => <input id={id} {...props} aria-describedby={told} />}
    </FieldFrame>
  );
}

import { useTypedLength } from "../edit/fields/use-typed-length.ts";
import { useWords } from "../words.ts";

/** A reading to be typed in either system; what cannot be read stays, is told, and changes nothing. */
export function ReadingField({
  label,
  value,
  isFaint = false,
  onChange,
}: {
  label: string;
  /** Absent where each one typed is another reading. */
  value?: number;
  /** It is what is drawn and was not measured. */
  isFaint?: boolean;
  onChange: (mm: number) => void;
}) {
  const { w } = useWords();
  const { wrong, props } = useTypedLength({ value, decimals: 1, signed: true, isGuess: isFaint, onChange });
  return (
    <>
      <input className={isFaint ? "reading faint" : "reading"} aria-label={label} {...props} />
      {wrong && (
        <span className="wrong" role="alert">
          {w("page.edit.no-length")}
        </span>
      )}
    </>
  );
}

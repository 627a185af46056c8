import { useId, useState } from "react";
import type { Sourced } from "../../../project/editing/wind.ts";
import { sayNumber } from "../../../text/say.ts";
import { useWords } from "../../words.ts";
import type { Field } from "../help/fields.ts";
import { useHelp } from "../help/use-help.tsx";

/** A number with where it was read: it counts once both are typed. */
export function SourcedField({
  label,
  help,
  held,
  per = 1,
  within: [least, most],
  onChange,
}: {
  /** With its unit. */
  label: string;
  help: Field;
  held: { readonly value: number; readonly source?: string | undefined } | undefined;
  /** How many of the file’s unit one of the field’s is. */
  per?: number;
  /** In the field’s unit. */
  within: readonly [number, number];
  onChange: (typed: Sourced) => void;
}) {
  const { w, reader } = useWords();
  const id = useId();
  const { button, note } = useHelp(help, label);
  const about = useHelp("wind-source", w("page.wind-fields.source"));
  const [typed, setTyped] = useState<string>();
  const [from, setFrom] = useState<string>();
  // Six figures: a value that came in another unit is not shown with the crumbs of its turning.
  const shown = held ? sayNumber(Number((held.value / per).toPrecision(6)), undefined, reader) : "";
  const text = typed ?? shown;
  const source = from ?? held?.source ?? "";
  const plain = text.trim().replace(",", ".");
  const value = plain === "" ? Number.NaN : Number(plain);
  const outside = text.trim() !== "" && !(value >= least && value <= most);
  const unsourced = text.trim() !== "" && !outside && source.trim() === "";
  const commit = (): void => {
    if (outside || unsourced || text.trim() === "") return;
    const changed = (typed !== undefined && typed !== shown) || (from !== undefined && from !== held?.source);
    if (!changed) return;
    onChange({ value: text === shown && held ? held.value : value * per, source: source.trim() });
    setTyped(undefined);
    setFrom(undefined);
  };
  const onKeyDown = ({ key }: { key: string }): void => {
    if (key === "Enter") commit();
    if (key === "Escape") {
      setTyped(undefined);
      setFrom(undefined);
    }
  };
  return (
    <>
      <div className="length-field sourced">
        <p className="field-head">
          <label htmlFor={id}>{label}</label>
          {button}
        </p>
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={outside}
          aria-describedby={outside ? `${id}-wrong` : undefined}
          onChange={({ currentTarget }) => setTyped(currentTarget.value)}
          onBlur={commit}
          onKeyDown={onKeyDown}
        />
        {outside && (
          <span id={`${id}-wrong`} className="wrong" role="alert">
            {w("page.wind-fields.outside", { least, most })}
          </span>
        )}
      </div>
      <div className="length-field">
        <p className="field-head">
          <label htmlFor={`${id}-from`}>{w("page.wind-fields.source-of", { field: label })}</label>
          {about.button}
        </p>
        <input
          id={`${id}-from`}
          autoComplete="off"
          value={source}
          aria-invalid={unsourced}
          aria-describedby={unsourced ? `${id}-unsourced` : undefined}
          onChange={({ currentTarget }) => setFrom(currentTarget.value)}
          onBlur={commit}
          onKeyDown={onKeyDown}
        />
        {unsourced && (
          <span id={`${id}-unsourced`} className="wrong" role="alert">
            {w("page.figures.no-source")}
          </span>
        )}
      </div>
      {note}
      {about.note}
    </>
  );
}

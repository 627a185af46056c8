import { type ReactNode, useId } from "react";
import type { Field } from "../help/fields.ts";
import { useHelp } from "../help/use-help.tsx";

/** What every field has round its input: its label with help beside it, what is wrong with it, and the note that the help opens. */
export function FieldFrame({
  label,
  help,
  wrong,
  children,
}: {
  label: string;
  help: Field;
  /** Told under the input; undefined where nothing is wrong. */
  wrong?: string | undefined;
  /** @param told the id of what is wrong, for the input to be described by */
  children: (id: string, told: string | undefined) => ReactNode;
}) {
  const id = useId();
  const { button, note } = useHelp(help, label);
  const told = wrong === undefined ? undefined : `${id}-wrong`;
  return (
    <>
      <div className="length-field">
        <p className="field-head">
          <label htmlFor={id}>{label}</label>
          {button}
        </p>
        {children(id, told)}
        {told && (
          <span id={told} className="wrong" role="alert">
            {wrong}
          </span>
        )}
      </div>
      {note}
    </>
  );
}

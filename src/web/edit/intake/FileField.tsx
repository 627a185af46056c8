import { useId } from "react";
import type { Field } from "../help/fields.ts";
import { useHelp } from "../help/use-help.tsx";

/** A file to be chosen from disk; one that was mended there may be chosen again under its name. */
export function FileField({
  label,
  help: field,
  accept,
  onFile,
}: {
  label: string;
  help: Field;
  /** Endings of its name. */
  accept: string;
  onFile: (file: File) => void;
}) {
  const id = useId();
  const help = useHelp(field, label);
  return (
    <>
      <div className="length-field intake-whole">
        <p className="field-head">
          <label htmlFor={id}>{label}</label>
          {help.button}
        </p>
        <input
          id={id}
          type="file"
          accept={accept}
          onClick={({ currentTarget }) => {
            // The browser tells of no change where the same name is chosen twice.
            currentTarget.value = "";
          }}
          onChange={({ currentTarget }) => {
            const file = currentTarget.files?.[0];
            if (file) onFile(file);
          }}
        />
      </div>
      {help.note}
    </>
  );
}

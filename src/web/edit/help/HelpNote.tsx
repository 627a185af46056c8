import "./texts.ts";
import { MM_PER_INCH } from "../../../units/length.ts";
import { useWords } from "../../words.ts";
import { FIELDS, type Field, type Helped, SAID } from "./fields.ts";

/** What a field is, where its value is found, and what is usual. */
export default function HelpNote({ field }: { field: Field }) {
  const { w, reader } = useWords();
  const { usual = {} }: Helped = FIELDS[field];
  const values = Object.fromEntries(
    Object.entries(usual).map(([name, [mm, inches]]) => [
      name,
      reader.units === "mm" ? mm : inches * MM_PER_INCH,
    ]),
  );
  return SAID.map((part) => (
    <span key={part} className="help-said">
      {part !== "what" && <b>{w(`page.help.head-${part}`)}</b>} {w(`page.help.${field}.${part}`, values)}
    </span>
  ));
}

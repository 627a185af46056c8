import type { Source } from "../../../project/editing/change.ts";
import { type SawField, setSaw } from "../../../project/editing/saw.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";
import type { Field } from "../help/fields.ts";
import { LengthField } from "./LengthField.tsx";
import { NumberField } from "./NumberField.tsx";

/** Thinner than any blade (mm). */
const LEAST = 0.1;

type Saw = Source["project"]["stock"]["saw"];

/** In millimetres; undefined where the file does not tell one. */
const LENGTHS: readonly {
  readonly field: SawField;
  readonly help: Field;
  readonly of: (saw: Saw) => number | undefined;
}[] = [
  { field: "kerf", help: "saw-kerf", of: ({ kerf }) => kerf },
  { field: "table-length", help: "saw-table", of: ({ table }) => table?.length },
  { field: "table-width", help: "saw-table", of: ({ table }) => table?.width },
  { field: "fence", help: "saw-fence", of: ({ fence }) => fence },
];

/** What the saw takes and can be asked: cut plans and their steps are held to it. */
export function SawFields({ source, onEdit }: { source: Source; onEdit: (edit: Edit) => void }) {
  const { w } = useWords();
  const { saw } = source.project.stock;
  const set = (field: SawField) => (value: number) =>
    onEdit({ ...setSaw(source, field, value), made: source.document });
  return (
    <form className="saw-fields" aria-label={w("page.saw")} onSubmit={(event) => event.preventDefault()}>
      {LENGTHS.map(({ field, help, of }) => (
        <LengthField
          key={field}
          label={w(`page.saw.${field}`)}
          help={help}
          value={of(saw)}
          least={LEAST}
          onChange={set(field)}
        />
      ))}
      <NumberField
        label={w("page.saw.lift")}
        help="saw-lift"
        value={saw.lift}
        wrong={w("page.saw.no-weight")}
        isGood={(kg) => kg > 0}
        onChange={set("lift")}
      />
    </form>
  );
}

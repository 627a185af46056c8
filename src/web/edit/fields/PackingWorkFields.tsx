import type { Source } from "../../../project/editing/change.ts";
import { PACKING_WORK, setPackingWork } from "../../../project/editing/packing-work.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";
import type { Field } from "../help/fields.ts";
import { NumberField } from "./NumberField.tsx";

const HELP: Readonly<Record<(typeof PACKING_WORK)[number]["name"], Field>> = {
  "minutes-packer": "packing-minutes-packer",
  "minutes-spot": "packing-minutes-spot",
  "price-packer": "packing-price-packer",
  "price-hour": "packing-price-hour",
};

/** What packing takes and costs, by the reader's own figures: planes are priced by them. */
export function PackingWorkFields({ source, onEdit }: { source: Source; onEdit: (edit: Edit) => void }) {
  const { w } = useWords();
  const { packingWork = {} } = source.project;
  return (
    <form
      className="saw-fields"
      aria-label={w("page.packing-work")}
      onSubmit={(event) => event.preventDefault()}
    >
      {PACKING_WORK.map(({ key, name, most }) => (
        <NumberField
          key={key}
          label={w(`page.packing-work.${name}`)}
          help={HELP[name]}
          value={packingWork[key]}
          wrong={w("page.packing-work.no-number")}
          isGood={(value) => value >= 0 && value <= most}
          onChange={(value) =>
            onEdit({ ...setPackingWork(source, { key, name }, value), made: source.document })
          }
        />
      ))}
    </form>
  );
}

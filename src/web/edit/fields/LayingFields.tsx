import type { Source } from "../../../project/editing/change.ts";
import {
  BANDS,
  type BandName,
  MOST_WEIGHT,
  setBand,
  setWeight,
  WEIGHTS,
  type WeightName,
} from "../../../project/editing/laying.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";
import type { Field } from "../help/fields.ts";
import { LengthField } from "./LengthField.tsx";
import { NumberField } from "./NumberField.tsx";

const HELP: Readonly<Record<BandName | WeightName, Field>> = {
  joint: "laying-joint",
  clearance: "laying-clearance",
  trimCut: "laying-trim-cut",
  remakeCut: "laying-remake-cut",
  trimFinished: "laying-trim-finished",
  remakeFinished: "laying-remake-finished",
};

/** What joints and clearances may take when a face is laid again, and what re-cuts cost against each other. */
export function LayingFields({ source, onEdit }: { source: Source; onEdit: (edit: Edit) => void }) {
  const { w } = useWords();
  const { within, weights } = source.project.asBuilt ?? {};
  return (
    <form
      className="saw-fields"
      aria-label={w("page.survey.laying")}
      onSubmit={(event) => event.preventDefault()}
    >
      {BANDS.map((name) => (
        <LengthField
          key={name}
          label={w(`page.survey.laying-${name}`)}
          help={HELP[name]}
          value={within?.[name]?.value}
          least={0}
          outside={w("page.survey.no-band")}
          onChange={(mm) => onEdit({ ...setBand(source, name, mm), made: source.document })}
        />
      ))}
      {WEIGHTS.map((name) => (
        <NumberField
          key={name}
          label={w(`page.survey.laying-${name}`)}
          help={HELP[name]}
          value={weights?.[name]}
          wrong={w("page.survey.no-weight", { most: MOST_WEIGHT })}
          isGood={(value) => Number.isInteger(value) && value >= 0 && value <= MOST_WEIGHT}
          onChange={(value) => onEdit({ ...setWeight(source, name, value), made: source.document })}
        />
      ))}
    </form>
  );
}

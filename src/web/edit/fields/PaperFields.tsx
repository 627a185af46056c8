import { useMemo } from "react";
import { usualLabels, usualLabelsOn } from "../../../output/drawings/labels.ts";
import { usualPaper } from "../../../output/drawings/paper.ts";
import type { Source } from "../../../project/editing/change.ts";
import {
  type LabelField,
  setLabelMeasure,
  setLabelSheet,
  setSheetPaper,
} from "../../../project/editing/sheets.ts";
import { pastPaper } from "../../../project/label-sheet.ts";
import {
  LABEL_PAPERS,
  type LabelSheet,
  MOST_LABEL_COLUMNS,
  MOST_LABEL_ROWS,
  SHEET_PAPERS,
} from "../../../project/schema/sheets.ts";
import { PAPER_SIZES } from "../../../units/paper-sizes.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";
import type { Field } from "../help/fields.ts";
import { ChoiceField } from "./ChoiceField.tsx";
import { LabelPicture } from "./LabelPicture.tsx";
import { LengthField } from "./LengthField.tsx";
import { NumberField } from "./NumberField.tsx";

/** Where nothing is told. */
const USUAL = "usual";

/** Of a label that still takes its mark and a code that can be read (mm; common practice). */
const LEAST_WIDTH = 30;
const LEAST_HEIGHT = 15;

const LENGTHS: readonly {
  readonly field: Exclude<LabelField, "columns" | "rows">;
  readonly help: Field;
  readonly least: number;
}[] = [
  { field: "width", help: "label-width", least: LEAST_WIDTH },
  { field: "height", help: "label-height", least: LEAST_HEIGHT },
  { field: "left", help: "label-left", least: 0 },
  { field: "top", help: "label-top", least: 0 },
  { field: "gapX", help: "label-gap-x", least: 0 },
  { field: "gapY", help: "label-gap-y", least: 0 },
];

/** What sheets are printed on, and how the sheet of labels is divided. */
export function PaperFields({ source, onEdit }: { source: Source; onEdit: (edit: Edit) => void }) {
  const { w, reader } = useWords();
  const { sheets } = source.project;
  const held = useMemo(() => sheets?.labels ?? usualLabels(reader), [sheets, reader]);
  const { right, below } = pastPaper(held);
  const set = (field: LabelField) => (value: number) => onEdit(setLabelMeasure(source, held, field, value));
  return (
    <form className="saw-fields" aria-label={w("page.papers")} onSubmit={(event) => event.preventDefault()}>
      <ChoiceField
        label={w("page.papers.sheets")}
        help="sheet-paper"
        value={sheets?.paper ?? USUAL}
        choices={[
          {
            value: USUAL,
            text: w("page.papers.usual", { paper: PAPER_SIZES[usualPaper({ units: reader.units })].name }),
          },
          ...SHEET_PAPERS.map((paper) => ({ value: paper, text: PAPER_SIZES[paper].name })),
        ]}
        onChoose={(paper) => onEdit(setSheetPaper(source, paper === USUAL ? undefined : paper))}
      />
      <ChoiceField
        label={w("page.labels.paper")}
        help="label-paper"
        value={sheets?.labels?.paper ?? USUAL}
        choices={[
          {
            value: USUAL,
            text: w("page.papers.usual", { paper: PAPER_SIZES[usualLabels(reader).paper].name }),
          },
          ...LABEL_PAPERS.map((paper) => ({ value: paper, text: PAPER_SIZES[paper].name })),
        ]}
        onChoose={(paper) =>
          onEdit(setLabelSheet(source, paper === USUAL ? undefined : onPaper(held, paper)))
        }
      />
      <NumberField
        label={w("page.labels.columns")}
        help="label-columns"
        value={held.columns}
        wrong={w("page.edit.no-count", { most: MOST_LABEL_COLUMNS })}
        isGood={(count) => Number.isInteger(count) && count >= 1 && count <= MOST_LABEL_COLUMNS}
        onChange={set("columns")}
      />
      <NumberField
        label={w("page.labels.rows")}
        help="label-rows"
        value={held.rows}
        wrong={w("page.edit.no-count", { most: MOST_LABEL_ROWS })}
        isGood={(count) => Number.isInteger(count) && count >= 1 && count <= MOST_LABEL_ROWS}
        onChange={set("rows")}
      />
      {LENGTHS.map(({ field, help, least }) => (
        <LengthField
          key={field}
          label={w(`page.labels.${field}`)}
          help={help}
          value={held[field]}
          least={least}
          onChange={set(field)}
        />
      ))}
      <LabelPicture sheet={held} />
      <p className="papers-past" role="status">
        {right > 0 && w("page.labels.past-right", { by: right })}{" "}
        {below > 0 && w("page.labels.past-below", { by: below })}
      </p>
    </form>
  );
}

/** Measures that are usual on one paper become those that are usual on the other; others stay. */
function onPaper(held: LabelSheet, paper: LabelSheet["paper"]): LabelSheet {
  const usual = usualLabelsOn(held.paper);
  const isUsual = LENGTHS.every(({ field }) => held[field] === usual[field]);
  const asMany = held.columns === usual.columns && held.rows === usual.rows;
  return isUsual && asMany ? usualLabelsOn(paper) : { ...held, paper };
}

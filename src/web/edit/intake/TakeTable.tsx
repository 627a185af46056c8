import "../../../project/intake/texts.ts";
import "./intake.css";
import { type ReactNode, useMemo, useState } from "react";
import type { CsvFile } from "../../../output/csv/table.ts";
import type { Change } from "../../../project/editing/change.ts";
import {
  lacksUnit,
  type Mapping,
  mapColumns,
  type Reads,
  type TableColumns,
} from "../../../project/intake/table/columns.ts";
import type { Table } from "../../../project/intake/table/table.ts";
import type { Taken } from "../../../project/intake/taken.ts";
import type { LengthUnit } from "../../../units/feet-inch.ts";
import { handOut } from "../../sheet/hand-out.ts";
import { useWords } from "../../words.ts";
import { ChoiceField } from "../fields/ChoiceField.tsx";
import type { Field } from "../help/fields.ts";
import { ColumnChoice } from "./ColumnChoice.tsx";
import { FileField } from "./FileField.tsx";
import { TakenTold } from "./TakenTold.tsx";
import { TakePress } from "./TakePress.tsx";
import { useTable } from "./use-table.ts";

const UNITS: readonly LengthUnit[] = ["mm", "cm", "m", "in", "ft"];

/** What a table comes to, with what is shown of it besides what is told. */
export interface TableTaken {
  readonly taken: Taken;
  readonly shown?: ReactNode;
}

export interface TakeTableProps<Column extends string> {
  /** What is taken in, of the file that is chosen, and of the presses. */
  readonly says: {
    readonly what: string;
    readonly file: string;
    readonly save: string;
    readonly take: string;
  };
  readonly help: Field;
  readonly columns: TableColumns<Column>;
  /** The table that is handed out to be filled in. */
  readonly template: () => CsvFile;
  /** What a table comes to; one function as long as the same would come of it. */
  readonly take: (table: Table, reads: Reads<Column>) => TableTaken;
  onTake(change: Change): void;
}

/** A table chosen from disk: its columns and their unit, what would be otherwise, and what is wrong, before it is taken. */
export function TakeTable<Column extends string>({
  says,
  help,
  columns,
  template,
  take,
  onTake,
}: TakeTableProps<Column>) {
  const { w } = useWords();
  const { read, choose } = useTable();
  const [said, setSaid] = useState<ReadonlyMap<Column, number | "none">>(new Map());
  const [unit, setUnit] = useState<LengthUnit>("mm");
  const table = read?.ok ? read.table : undefined;
  const mapping = useMemo(() => table && chosen(mapColumns(table, columns), said), [table, columns, said]);
  const result = useMemo((): TableTaken | undefined => {
    if (table && mapping) return take(table, { mapping, unit });
    return read && !read.ok ? { taken: read } : undefined;
  }, [read, table, mapping, unit, take]);
  return (
    <section className="intake" aria-label={says.what}>
      <FileField
        label={says.file}
        help={help}
        accept=".csv,.xlsx"
        onFile={(file) => {
          setSaid(new Map());
          void choose(file);
        }}
      />
      <p className="edit-words">
        <button
          type="button"
          onClick={() => {
            const { name, text } = template();
            handOut({ name, content: text }, "text/csv");
          }}
        >
          {says.save}
        </button>
      </p>
      {table && mapping && (
        <ColumnChoice
          titles={table.titles}
          columns={columns}
          mapping={mapping}
          onChoose={(column, at) => setSaid(new Map(said).set(column, at))}
        />
      )}
      {table && mapping && lacksUnit(table, columns, mapping) && (
        <ChoiceField
          label={w("page.intake.table-unit")}
          help="table-unit"
          value={unit}
          choices={UNITS.map((value) => ({ value, text: value }))}
          onChoose={setUnit}
        />
      )}
      {result?.shown}
      {result && <TakenTold taken={result.taken} />}
      {result && (
        <TakePress taken={result.taken} says={says.take} onTake={({ change }) => change && onTake(change)} />
      )}
    </section>
  );
}

function chosen<Column extends string>(
  found: Mapping<Column>,
  said: ReadonlyMap<Column, number | "none">,
): Mapping<Column> {
  const mapping: Partial<Record<Column, number>> = { ...found };
  for (const [column, at] of said) {
    if (at === "none") delete mapping[column];
    else mapping[column] = at;
  }
  return mapping;
}

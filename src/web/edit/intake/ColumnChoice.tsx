import { columnsOf, type Mapping, type TableColumns } from "../../../project/intake/table/columns.ts";
import { useWords } from "../../words.ts";
import { ChoiceField } from "../fields/ChoiceField.tsx";

/** Which title of a table stands for which column: those that every row must say, and the others folded behind them. */
export function ColumnChoice<Column extends string>({
  titles,
  columns,
  mapping,
  onChoose,
}: {
  titles: readonly string[];
  columns: TableColumns<Column>;
  mapping: Mapping<Column>;
  onChoose: (column: Column, at: number | "none") => void;
}) {
  const { w } = useWords();
  const choices = titles.map((title, at) => ({
    value: String(at),
    text: title === "" ? w("page.intake.untitled", { at: String(at + 1) }) : title,
  }));
  const field = (column: Column) => {
    const at = mapping[column];
    const isNeeded = columns.needed.includes(column);
    const none = { value: "none", text: w("page.intake.no-column") };
    return (
      <ChoiceField
        key={column}
        label={w(columns.titles[column])}
        help="table-column"
        value={at === undefined ? "none" : String(at)}
        choices={isNeeded && at !== undefined ? choices : [none, ...choices]}
        onChoose={(value) => onChoose(column, value === "none" ? "none" : Number(value))}
      />
    );
  };
  const others = columnsOf(columns).filter((column) => !columns.needed.includes(column));
  return (
    <>
      {columns.needed.map(field)}
      {others.length > 0 && (
        <details className="intake-whole">
          <summary>{w("page.intake.other-columns")}</summary>
          <div className="intake">{others.map(field)}</div>
        </details>
      )}
    </>
  );
}

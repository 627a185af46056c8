import "../../../project/intake/texts.ts";
import "./intake.css";
import { useId, useMemo, useState } from "react";
import { pileCsv } from "../../../output/csv/pile.ts";
import type { Source } from "../../../project/editing/change.ts";
import { mapColumns, NEEDED, PILE_COLUMNS, type PileColumn } from "../../../project/intake/pile/columns.ts";
import { readPile } from "../../../project/intake/pile/read-pile.ts";
import { replacePile } from "../../../project/intake/pile/replace-pile.ts";
import { readCsv } from "../../../project/intake/table/read-csv.ts";
import type { ReadTable } from "../../../project/intake/table/table.ts";
import { type Taken, tried } from "../../../project/intake/taken.ts";
import { handOut } from "../../sheet/hand-out.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";
import { ChoiceField } from "../fields/ChoiceField.tsx";
import { useHelp } from "../help/use-help.tsx";
import { TakenTold } from "./TakenTold.tsx";
import { textOf } from "./text-of.ts";

/** A table of boards chosen from disk: its columns, what the pile would be, and what is wrong, before it is taken. */
export function TakePile({ source, onEdit }: { source: Source; onEdit: (edit: Edit) => void }) {
  const { w, reader } = useWords();
  const id = useId();
  const help = useHelp("pile-file", w("page.intake.pile"));
  const [read, setRead] = useState<ReadTable>();
  const [said, setSaid] = useState<Readonly<Partial<Record<PileColumn, string>>>>({});
  const table = read?.ok ? read.table : undefined;
  const mapping = useMemo(() => (table ? mapColumns(table, said) : {}), [table, said]);
  const taken = useMemo((): Taken | undefined => {
    if (!read) return undefined;
    if (!read.ok) return read;
    const lots = (source.project.pile?.lots ?? []).map(({ id: lot }) => lot);
    const pile = readPile(read.table, { mapping, lots });
    if (!pile.ok) return pile;
    const { name } = read.table;
    return tried(
      { document: source.document, name },
      { ...replacePile(source, pile.pile, name), findings: [] },
    );
  }, [read, mapping, source]);
  const choose = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setSaid({});
    if (!/\.xlsx$/i.test(file.name)) {
      setRead(readCsv(await textOf(file), file.name));
      return;
    }
    const { readXlsx } = await import("../../../project/intake/table/read-xlsx.ts");
    setRead(await readXlsx(new Uint8Array(await file.arrayBuffer()), file.name));
  };
  return (
    <section className="intake" aria-label={w("page.intake.pile-what")}>
      <div className="length-field intake-whole">
        <p className="field-head">
          <label htmlFor={id}>{w("page.intake.pile")}</label>
          {help.button}
        </p>
        <input
          id={id}
          type="file"
          accept=".csv,.xlsx"
          onChange={({ currentTarget }) => void choose(currentTarget.files?.[0])}
        />
      </div>
      {help.note}
      <p className="edit-words">
        <button
          type="button"
          onClick={() =>
            handOut({ name: "pile.csv", content: pileCsv(source.project, reader).text }, "text/csv")
          }
        >
          {w("page.intake.pile-save")}
        </button>
      </p>
      {table &&
        NEEDED.map((column) => {
          const at = mapping[column];
          return (
            <ChoiceField
              key={column}
              label={w(PILE_COLUMNS[column])}
              help="pile-column"
              value={at === undefined ? "" : (table.titles[at] ?? "")}
              choices={[...(at === undefined ? [""] : []), ...table.titles].map((value) => ({
                value,
                text: value,
              }))}
              onChoose={(title) => setSaid({ ...said, [column]: title })}
            />
          );
        })}
      {taken && <TakenTold taken={taken} />}
      {taken && (
        <p className="edit-words">
          <button
            type="button"
            disabled={!taken.ok}
            onClick={() => taken.ok && taken.change && onEdit(taken.change)}
          >
            {w("page.intake.pile-take")}
          </button>
        </p>
      )}
    </section>
  );
}

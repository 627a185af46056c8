import { useCallback } from "react";
import { pileCsv } from "../../../output/csv/pile.ts";
import type { Source } from "../../../project/editing/change.ts";
import { PILE_COLUMNS, type PileColumn } from "../../../project/intake/pile/columns.ts";
import { readPile } from "../../../project/intake/pile/read-pile.ts";
import { replacePile } from "../../../project/intake/pile/replace-pile.ts";
import { tried } from "../../../project/intake/taken.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";
import { TakeTable, type TakeTableProps } from "./TakeTable.tsx";

/** A table of boards: what the pile would be of it. */
export function TakePile({ source, onEdit }: { source: Source; onEdit: (edit: Edit) => void }) {
  const { w, reader } = useWords();
  const take = useCallback<TakeTableProps<PileColumn>["take"]>(
    (table, reads) => {
      const lots = (source.project.pile?.lots ?? []).map(({ id }) => id);
      const pile = readPile(table, { ...reads, lots });
      if (!pile.ok) return { taken: pile };
      const { document } = source;
      const { name } = table;
      return { taken: tried({ document, name }, { ...replacePile(source, pile.pile, name), findings: [] }) };
    },
    [source],
  );
  return (
    <TakeTable
      says={{
        what: w("page.intake.pile-what"),
        file: w("page.intake.pile"),
        save: w("page.intake.pile-save"),
        take: w("page.intake.pile-take"),
      }}
      help="pile-file"
      columns={PILE_COLUMNS}
      template={() => pileCsv(source.project, reader)}
      take={take}
      onTake={onEdit}
    />
  );
}

import { useCallback } from "react";
import { readingsCsv } from "../../../output/csv/readings.ts";
import type { Source } from "../../../project/editing/change.ts";
import { READING_COLUMNS, type ReadingColumn } from "../../../project/intake/readings/columns.ts";
import { readReadings } from "../../../project/intake/readings/read-readings.ts";
import { takeReadings } from "../../../project/intake/readings/take-readings.ts";
import { tried } from "../../../project/intake/taken.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";
import { PlacesTaken } from "./PlacesTaken.tsx";
import { TakeTable, type TakeTableProps } from "./TakeTable.tsx";

/** A table of readings: where on the walls they lie, and what each place had before. */
export function TakeReadings({ source, onEdit }: { source: Source; onEdit: (edit: Edit) => void }) {
  const { w, reader } = useWords();
  const take = useCallback<TakeTableProps<ReadingColumn>["take"]>(
    (table, reads) => {
      const { project, document } = source;
      const { name } = table;
      const found = readReadings(table, { ...reads, faces: project.faces });
      if (!found.ok) return { taken: found };
      const { change, tells, places } = takeReadings(source, found.readings, name);
      return {
        taken: tried({ document, name }, { change, tells, findings: found.findings }),
        shown: <PlacesTaken faces={project.faces} places={places} />,
      };
    },
    [source],
  );
  return (
    <TakeTable
      says={{
        what: w("page.intake.readings-what"),
        file: w("page.intake.readings"),
        save: w("page.intake.readings-save"),
        take: w("page.intake.readings-take"),
      }}
      help="readings-file"
      columns={READING_COLUMNS}
      template={() => readingsCsv(source.project, reader)}
      take={take}
      onTake={onEdit}
    />
  );
}

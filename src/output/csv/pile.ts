/** The pile as a table that can be taken in again; of a project without one, the titles to fill in. */
import { PILE_COLUMNS, type PileColumn } from "../../project/intake/pile/columns.ts";
import type { PileBoard, Project } from "../../project/schema/project.ts";
import type { Reader } from "../../text/say.ts";
import { type Column, type CsvFile, csvFile, titled } from "./table.ts";
import type { Cell } from "./write.ts";

/** Lengths in millimetres, whoever reads: this goes back and forth. */
export function pileCsv({ pile }: Pick<Project, "pile">, reader: Reader): CsvFile {
  const lots = new Map(pile?.lots.map((lot) => [lot.id, lot]));
  const of = (name: PileColumn, cell: (board: PileBoard) => Cell, unit?: string): Column<PileBoard> =>
    titled(PILE_COLUMNS.titles[name], cell, unit);
  return csvFile<PileBoard>("pile.csv", {
    reader,
    rows: pile?.boards ?? [],
    columns: [
      of("board", ({ id }) => id),
      of("lot", ({ lot }) => lot),
      of("length", ({ length }) => length, "mm"),
      of("width", ({ width }) => width, "mm"),
      of("thickness", ({ thickness }) => thickness, "mm"),
      of(
        "defects",
        ({ defects }) => defects.map(({ kind, from, to }) => `${kind} ${from}-${to}`).join("; "),
        "mm",
      ),
      of("wane", ({ wane }) => wane && `${wane.edge} ${wane.width}`, "mm"),
      of("face", ({ face }) => face),
      of("grade", ({ grade }) => grade),
      of("species", ({ lot }) => lots.get(lot)?.species),
      of("from", ({ lot }) => lots.get(lot)?.from),
    ],
  });
}

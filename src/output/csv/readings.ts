/** Readings of walls as a table that can be taken in again; of walls that were not read, the places of a grid to read. */
import { evenGrid } from "../../project/editing/readings.ts";
import { READING_COLUMNS } from "../../project/intake/readings/columns.ts";
import type { Project } from "../../project/schema/project.ts";
import { readingsOf } from "../../site/survey/reading.ts";
import type { Reader } from "../../text/say.ts";
import { type CsvFile, csvFile, titled } from "./table.ts";

interface Row {
  readonly face: string;
  readonly x: number;
  readonly y: number;
  /** Absent where it is still to be read. */
  readonly outward?: number;
}

/** Lengths in millimetres, whoever reads: this goes back and forth. A place that was read twice stands twice. */
export function readingsCsv(project: Pick<Project, "faces" | "survey">, reader: Reader): CsvFile {
  const read = readingsOf(project);
  const rows = project.faces.flatMap((face): readonly Row[] => {
    const own = read.filter((one) => one.face === face.id);
    if (own.length > 0) return own;
    const { x, y } = evenGrid(face);
    return y.flatMap((up) => x.map((across) => ({ face: face.id, x: across, y: up })));
  });
  const { titles } = READING_COLUMNS;
  return csvFile<Row>("readings.csv", {
    reader,
    rows,
    columns: [
      titled(titles.face, ({ face }) => face),
      titled(titles.x, ({ x }) => x, "mm"),
      titled(titles.y, ({ y }) => y, "mm"),
      titled(titles.outward, ({ outward }) => outward, "mm"),
    ],
  });
}

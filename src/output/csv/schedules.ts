/** Piece schedule, batten schedule and every screw, as CSV. */
import type { Facade, Fixing } from "../../setout/facade.ts";
import type { BattenLine, PieceLine, Takeoff } from "../../takeoff/model.ts";
import { message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { type CsvFile, column, csvFile, lengthColumns } from "./table.ts";

export function pieceScheduleCsv({ pieces }: Takeoff, reader: Reader): CsvFile {
  const length = lengthColumns(reader);
  return csvFile<PieceLine>("piece-schedule.csv", {
    reader,
    rows: pieces,
    columns: [
      column("mark", ({ mark }) => mark),
      column("kind", ({ kind }) => say(message(`term.${kind}`), reader)),
      column("face", ({ face }) => face),
      column("zone", ({ zone }) => zone),
      column("course", ({ course }) => course),
      length("length", "cut", (row) => row.length),
      length("width", "rip", ({ width }) => width),
      length("thickness", "size", ({ thickness }) => thickness),
      column("material", ({ material }) => material),
      column("mass", ({ massKg }) => massKg, "kg"),
      column("lot", ({ lot }) => lot),
      column("finish", ({ finish }) => finish),
    ],
  });
}

export function battenScheduleCsv({ battens }: Takeoff, reader: Reader): CsvFile {
  const length = lengthColumns(reader);
  return csvFile<BattenLine>("batten-schedule.csv", {
    reader,
    rows: battens,
    columns: [
      column("mark", ({ mark }) => mark),
      column("kind", ({ kind }) => say(message(`term.${kind}`), reader)),
      column("face", ({ face }) => face),
      column("zone", ({ zone }) => zone),
      column("stock", ({ stock }) => stock),
      length("length", "cut", (row) => row.length),
      length("width", "rip", ({ width }) => width),
      length("thickness", "size", ({ thickness }) => thickness),
      column("ripped", ({ ripped }) => say(message(`schedule.${ripped ? "yes" : "no"}`), reader)),
      column("material", ({ material }) => material),
      column("screws", ({ screws }) => screws.map(({ screw, count }) => `${count} × ${screw}`).join("; ")),
      column("packers", ({ packers }) =>
        packers
          .map(({ thickness, count }) => say(message("schedule.packers", { count, thickness }), reader))
          .join("; "),
      ),
      column("mass", ({ massKg }) => massKg, "kg"),
    ],
  });
}

interface FixingRow {
  readonly piece: string;
  readonly face: string;
  readonly fixing: Fixing;
}

export function fixingsCsv(facade: Facade, reader: Reader): CsvFile {
  const length = lengthColumns(reader);
  return csvFile<FixingRow>("fixings.csv", {
    reader,
    rows: { [Symbol.iterator]: () => fixingRows(facade) },
    columns: [
      column("piece", ({ piece }) => piece),
      column("face", ({ face }) => face),
      length("x", "place", ({ fixing }) => fixing.x),
      length("y", "place", ({ fixing }) => fixing.y),
      length("side-z", "place", ({ fixing }) => fixing.side?.z),
      column("kind", ({ fixing }) => say(message(`term.${fixing.kind}`), reader)),
      column("screw", ({ fixing }) => fixing.screw),
      length("hole", "hole", ({ fixing }) => fixing.hole),
      column("into", ({ fixing }) => fixing.into),
      length("bite", "size", ({ fixing }) => fixing.bite),
    ],
  });
}

function* fixingRows({ faces }: Facade): Generator<FixingRow> {
  for (const { id: face, pieces } of faces) {
    for (const { mark: piece, fixings } of pieces)
      for (const fixing of fixings) yield { piece, face, fixing };
  }
}

/** The schedules, cut lists and the order as one workbook: the tables of the CSV files, a sheet each. */
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import { type CsvRequest, csvFiles } from "../csv/csv-files.ts";
import { type WorkbookSheet, writeWorkbook } from "./workbook.ts";

/** @param title of the project */
export function schedulesXlsx(request: CsvRequest, title: string): Iterable<Uint8Array> {
  const sheets = csvFiles(request).map(({ name, records }): WorkbookSheet => {
    const [titles = []] = records;
    return {
      name: say(message(`schedule.sheet.${name.replace(/\.csv$/, "")}`), request.reader),
      titles: titles.map(String),
      rows: { [Symbol.iterator]: () => afterFirst(records) },
    };
  });
  return writeWorkbook(sheets, { title, paper: request.reader.units === "feet-inch" ? "letter" : "A4" });
}

function* afterFirst<One>(all: Iterable<One>): Generator<One> {
  let isFirst = true;
  for (const one of all) {
    if (!isFirst) yield one;
    isFirst = false;
  }
}

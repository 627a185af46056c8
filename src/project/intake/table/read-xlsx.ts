/** The first sheet of a workbook (Office Open XML). The library that unpacks it stays behind this file. */
import { readSheet } from "read-excel-file/universal";
import { type ReadTable, type TableCell, tableOf, unreadable } from "./table.ts";

export async function readXlsx(bytes: Uint8Array, name: string): Promise<ReadTable> {
  try {
    // A copy of its own: what was read may be a part of a larger buffer.
    const sheet = await readSheet(new Uint8Array(bytes).buffer);
    return tableOf(
      name,
      sheet.map((row) =>
        row.map((cell): TableCell => {
          if (cell === null || typeof cell === "number") return cell ?? undefined;
          return String(cell);
        }),
      ),
    );
  } catch {
    // Whatever it stumbles over, the file is no workbook that can be read.
    return unreadable("intake.table.workbook", name);
  }
}

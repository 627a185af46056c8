import { useRef, useState } from "react";
import { readCsv } from "../../../project/intake/table/read-csv.ts";
import { type ReadTable, unreadable } from "../../../project/intake/table/table.ts";
import { textOf } from "./text-of.ts";

/** The table of the file that was chosen last, however long an earlier one takes. */
export function useTable(): {
  readonly read: ReadTable | undefined;
  readonly choose: (file: File) => Promise<void>;
} {
  const [read, setRead] = useState<ReadTable>();
  const turn = useRef(0);
  const choose = async (file: File): Promise<void> => {
    turn.current += 1;
    const mine = turn.current;
    // A file that was written over since it was chosen cannot be read any more.
    const found = await tableIn(file).catch(() => unreadable("intake.table.gone", file.name));
    if (mine === turn.current) setRead(found);
  };
  return { read, choose };
}

async function tableIn(file: File): Promise<ReadTable> {
  if (!/\.xlsx$/i.test(file.name)) return readCsv(await textOf(file), file.name);
  const { readXlsx } = await import("../../../project/intake/table/read-xlsx.ts");
  return readXlsx(new Uint8Array(await file.arrayBuffer()), file.name);
}

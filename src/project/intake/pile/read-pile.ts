/** Boards from a table: each row checked by itself, every fault told by row, column, value and mend, and none taken where one fails. */
import { type Finding, finding } from "../../../findings/finding.ts";
import { type Message, message } from "../../../text/message.ts";
import { type LengthUnit, parseLength } from "../../../units/feet-inch.ts";
import type { Project } from "../../schema/project.ts";
import { id as idShape } from "../../schema/values.ts";
import { columnsMissing, type Reads } from "../table/columns.ts";
import type { Table, TableRow } from "../table/table.ts";
import { unitOf } from "../table/title.ts";
import { PILE_COLUMNS, type PileColumn } from "./columns.ts";
import "../texts.ts";

type Pile = NonNullable<Project["pile"]>;
export type TakenBoard = Pick<
  Pile["boards"][number],
  "id" | "lot" | "length" | "width" | "thickness" | "defects" | "wane" | "face" | "grade"
>;
/** Characters of a grade, as the file takes it. */
const LONGEST_GRADE = 40;

export type TakenLot = Pick<Pile["lots"][number], "id" | "from" | "species">;

export interface TakenPile {
  readonly boards: readonly TakenBoard[];
  /** Lots that the table tells of by their species. */
  readonly lots: readonly TakenLot[];
}

export type ReadPile =
  | { readonly ok: true; readonly pile: TakenPile }
  | { readonly ok: false; readonly findings: readonly Finding[] };

export function readPile(
  table: Table,
  { lots: known, ...reads }: Reads<PileColumn> & { readonly lots: readonly string[] },
): ReadPile {
  const missing = columnsMissing(table, PILE_COLUMNS, reads.mapping);
  if (missing) return { ok: false, findings: [missing] };
  const reading = new Reading(table, reads, new Set(known));
  const boards = table.rows.flatMap((row) => reading.board(row) ?? []);
  if (boards.length === 0 && reading.findings.length === 0) {
    reading.findings.push(
      finding({
        code: "F036",
        outcome: "fail",
        where: {},
        says: message("intake.pile.none", { file: table.name }),
      }),
    );
  }
  if (reading.findings.length > 0) return { ok: false, findings: reading.findings };
  return { ok: true, pile: { boards, lots: [...reading.lots.values()] } };
}

class Reading {
  readonly findings: Finding[] = [];
  readonly lots = new Map<string, TakenLot>();
  private readonly seen = new Map<string, number>();

  private readonly table: Table;
  private readonly reads: Reads<PileColumn>;
  private readonly known: ReadonlySet<string>;

  constructor(table: Table, reads: Reads<PileColumn>, known: ReadonlySet<string>) {
    this.table = table;
    this.reads = reads;
    this.known = known;
  }

  board(row: TableRow): TakenBoard | undefined {
    const before = this.findings.length;
    const id = this.name(row, "board");
    const first = id === undefined ? undefined : this.seen.get(id);
    if (id !== undefined && first !== undefined) this.fault(row, "board", "twice", { first: String(first) });
    if (id !== undefined) this.seen.set(id, first ?? row.number);
    const lot = this.lot(row);
    const [length, width, thickness] = (["length", "width", "thickness"] as const).map((column) =>
      this.size(row, column),
    );
    const defects = this.defects(row, length);
    const wane = this.wane(row, width);
    const face = this.text(row, "face");
    const grade = this.grade(row);
    if (this.findings.length > before || id === undefined || lot === undefined) return undefined;
    if (length === undefined || width === undefined || thickness === undefined) return undefined;
    return {
      id,
      lot,
      length,
      width,
      thickness,
      defects,
      ...(wane && { wane }),
      ...(face !== undefined && { face }),
      ...(grade !== undefined && { grade }),
    };
  }

  private grade(row: TableRow): string | undefined {
    const text = this.text(row, "grade");
    if (text !== undefined && text.length > LONGEST_GRADE)
      this.fault(row, "grade", "long", { most: LONGEST_GRADE });
    return text;
  }

  private text(row: TableRow, column: PileColumn): string | undefined {
    const at = this.reads.mapping[column];
    const cell = at === undefined ? undefined : row.cells[at];
    return cell === undefined ? undefined : String(cell);
  }

  private unit(column: PileColumn): LengthUnit {
    return unitOf(this.table.titles[this.reads.mapping[column] ?? -1] ?? "", this.reads.unit);
  }

  private fault(
    row: TableRow,
    column: PileColumn,
    what: string,
    more: Readonly<Record<string, string | number>> = {},
  ): void {
    const at = this.reads.mapping[column];
    const says: Message = message(`intake.pile.${what}`, {
      file: this.table.name,
      row: String(row.number),
      column: at === undefined ? message(PILE_COLUMNS.titles[column]) : (this.table.titles[at] ?? ""),
      value: this.text(row, column) ?? "",
      ...more,
    });
    const hint = message(`intake.hint.pile.${what}`, { ...more });
    this.findings.push(finding({ code: "F036", outcome: "fail", where: {}, says, hint }));
  }

  private name(row: TableRow, column: "board" | "lot"): string | undefined {
    const text = this.text(row, column);
    if (text !== undefined && idShape.safeParse(text).success) return text;
    this.fault(row, column, text === undefined ? "empty" : "name");
    return undefined;
  }

  private lot(row: TableRow): string | undefined {
    const lot = this.name(row, "lot");
    if (lot === undefined) return undefined;
    const species = this.text(row, "species");
    if (species !== undefined && !this.lots.has(lot)) {
      this.lots.set(lot, { id: lot, species, from: this.text(row, "from") ?? "" });
    }
    if (!this.known.has(lot) && !this.lots.has(lot)) this.fault(row, "lot", "lot");
    return lot;
  }

  private size(row: TableRow, column: "length" | "width" | "thickness"): number | undefined {
    const at = this.reads.mapping[column] as number;
    const cell = row.cells[at];
    if (cell === undefined) {
      this.fault(row, column, "empty");
      return undefined;
    }
    const read = parseLength(String(cell), this.unit(column));
    if (read.ok && read.value > 0) return read.value;
    this.fault(row, column, read.ok ? "nothing" : "length");
    return undefined;
  }

  /** `nail row 595-625; split 0-120`, each from and to along the board. */
  private defects(row: TableRow, length: number | undefined): TakenBoard["defects"] {
    const unit = this.unit("defects");
    const parts = (this.text(row, "defects") ?? "").split(";").map((part) => part.trim());
    return parts.flatMap((part) => {
      if (part === "") return [];
      const [, kind = "", a = "", b = ""] = /^(.*\S)\s+(\S+)\s*[-–]\s*(\S+)$/.exec(part) ?? [];
      const [from, to] = [parseLength(a, unit), parseLength(b, unit)];
      if (kind === "" || !from.ok || !to.ok) {
        this.fault(row, "defects", "defect", { part });
        return [];
      }
      if (from.value < 0 || to.value < from.value || (length !== undefined && to.value > length)) {
        this.fault(row, "defects", "defect-off", { part });
        return [];
      }
      return [{ kind, from: from.value, to: to.value }];
    });
  }

  /** `left 12`: the edge, and how much of its width. */
  private wane(row: TableRow, width: number | undefined): TakenBoard["wane"] {
    const text = this.text(row, "wane");
    if (text === undefined) return undefined;
    const [, word = "", of = ""] = /^(left|right|gauche|droite)\s+(\S.*)$/i.exec(text) ?? [];
    const read = parseLength(of, this.unit("wane"));
    if (!read.ok || read.value <= 0 || (width !== undefined && read.value >= width)) {
      this.fault(row, "wane", "wane");
      return undefined;
    }
    return { edge: /^[lg]/i.test(word) ? "left" : "right", width: read.value };
  }
}

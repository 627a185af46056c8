/** Makes `docs/sources.md` from the reference data: every document, what rests on it, and what nobody has confirmed. */
import type { AnyFigure, Basis } from "../src/catalogue/figure.ts";
import { figureKeys } from "../src/catalogue/own-figures.ts";
import { type SourcedRecord, sourcedRecords, unconfirmed } from "../src/catalogue/records.ts";
import { type Source, source, sourceKeys } from "../src/catalogue/sources.ts";

type DataBasis = Exclude<Basis, "given">;

const basisWords: Record<DataBasis, string> = {
  published: "read in the issuing body's own text",
  "seen-secondary": "read in a reprint or a quotation",
  derived: "worked out from figures that were read",
  memory: "remembered, not confirmed",
  "common-practice": "practice of the trade, no document",
  invented: "made for the demonstration",
};

const kindTitles: Record<Source["kind"], string> = {
  standard: "Standards and codes",
  handbook: "Handbooks and records",
  guidance: "Guidance and articles",
  derived: "Worked out here",
  "common-practice": "Practice of the trade",
  memory: "No document",
};

function cell(text: string): string {
  return text.replaceAll("|", "\\|").replaceAll("\n", " ");
}

function row(cells: readonly string[]): string {
  return `| ${cells.map(cell).join(" | ")} |`;
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  return [row(head), row(head.map(() => "---")), ...rows.map(row), ""];
}

function counted(records: readonly SourcedRecord[]): string {
  const counts = (Object.keys(basisWords) as DataBasis[])
    .map((basis) => ({ basis, count: records.filter((entry) => entry.basis === basis).length }))
    .filter(({ count }) => count > 0);
  return counts.map(({ basis, count }) => `${count} ${basis}`).join(", ");
}

function valueText(value: AnyFigure["value"]): string {
  if (typeof value === "number") return String(value);
  if (Array.isArray(value)) return value.join(", ");
  if (value.min === undefined) return `up to ${value.max}`;
  return value.max === undefined ? `from ${value.min}` : `${value.min} to ${value.max}`;
}

function recordText(record: SourcedRecord["record"]): string {
  if ("value" in record) return `${valueText(record.value)} ${record.unit === "1" ? "" : record.unit}`.trim();
  return "key" in record ? record.key : "a row of classes";
}

function noteText(record: SourcedRecord["record"]): string {
  return "note" in record && record.note !== undefined ? record.note : "";
}

function sourceSection(kind: Source["kind"], records: readonly SourcedRecord[]): string[] {
  const rows = sourceKeys().flatMap((key) => {
    const found = source(key);
    if (found?.kind !== kind) return [];
    const where = [found.document, found.edition, found.clause]
      .filter((part) => part !== undefined)
      .join(", ");
    return [
      [`\`${key}\``, where, found.note ?? "", counted(records.filter((entry) => entry.source === key))],
    ];
  });
  return [`### ${kindTitles[kind]}`, "", ...table(["Key", "Document", "Remark", "Records"], rows)];
}

/** The whole page as Markdown, ending in a newline. The same data gives the same bytes. */
export function sourcesPage(): string {
  const records = sourcedRecords();
  const open = unconfirmed();
  const lines = [
    "# Sources of the reference data",
    "",
    "Made from `data/` by `scripts/docs-sources.ts`; do not edit by hand.",
    "",
    "Every record names where it stands (the source) and how we came by it (the basis). A source key on a remembered",
    "figure says where to look it up, not that it was looked up. Results that rest on an unconfirmed figure are",
    "provisional. Values for products are typical: the data sheet of what is bought, local codes and licensed practice rule.",
    "",
    `${records.length} records from ${sourceKeys().length} sources; ${open.length} of them unconfirmed.`,
    "",
    ...table(
      ["Basis", "Meaning", "Records"],
      (Object.keys(basisWords) as DataBasis[]).map((basis) => [
        basis,
        basisWords[basis],
        String(records.filter((entry) => entry.basis === basis).length),
      ]),
    ),
    "## Documents",
    "",
    ...(Object.keys(kindTitles) as Source["kind"][]).flatMap((kind) => sourceSection(kind, records)),
    "## Unconfirmed figures",
    "",
    ...table(
      ["File", "Where", "Value", "Look it up in", "Basis", "Note"],
      open.map((entry) => [
        entry.file,
        entry.path,
        recordText(entry.record),
        `\`${entry.source}\``,
        entry.basis,
        noteText(entry.record),
      ]),
    ),
    "## Figures that a project file can replace",
    "",
    "Those that a rule, setting-out or the take-off reads. A project names them in `figures`, with a value of the same form",
    "and unit and with where it stands; `docs/decisions/0012` says how.",
    "",
    ...table(
      ["Name", "Value", "Source", "Basis"],
      figureKeys().flatMap((key) =>
        records
          .filter((entry) => `${entry.file}.${entry.path}` === key)
          .map((entry) => [`\`${key}\``, recordText(entry.record), `\`${entry.source}\``, entry.basis]),
      ),
    ),
  ];
  return `${lines.join("\n").trimEnd()}\n`;
}

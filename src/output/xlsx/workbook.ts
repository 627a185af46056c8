/**
 * Tables as a workbook (Office Open XML, ECMA-376 part 1: SpreadsheetML): a sheet each, its titles standing still, filters on
 * them, and a page that repeats them. Numbers are numbers. No time stands in it: the same tables give the same bytes. Rows are
 * gone through twice, first for how wide the columns are, and are not held.
 */
import { zipped } from "../archive.ts";
import { escapeXml } from "../svg/markup.ts";

export interface WorkbookSheet {
  /** At most 31 letters, none of `[]:*?/\`. */
  readonly name: string;
  readonly titles: readonly string[];
  readonly rows: Iterable<readonly (string | number | undefined)[]>;
}

export interface WorkbookOptions {
  readonly title: string;
  readonly paper: "A4" | "letter";
}

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

/** Code of the paper in SpreadsheetML (ST_PaperSize as printed in part 1, 18.3.1.63). */
const PAPER_CODES = { A4: 9, letter: 1 } as const;

/** Letters of a column that is wider are broken in view, not in print. */
const WIDEST = 60;

export function* writeWorkbook(
  sheets: readonly WorkbookSheet[],
  { title, paper }: WorkbookOptions,
): Generator<Uint8Array> {
  const measured = sheets.map(measuredSheet);
  yield* zipped([
    { name: "[Content_Types].xml", pieces: [contentTypes(sheets.length)] },
    {
      name: "_rels/.rels",
      pieces: [
        relations([
          ["rId1", `${OFFICE}/officeDocument`, "xl/workbook.xml"],
          ["rId2", `${PACKAGE}/relationships/metadata/core-properties`, "docProps/core.xml"],
        ]),
      ],
    },
    {
      name: "docProps/core.xml",
      pieces: [
        `${HEAD}<cp:coreProperties xmlns:cp="${PACKAGE}/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title>${escapeXml(title)}</dc:title><dc:creator>Outerleaf</dc:creator></cp:coreProperties>`,
      ],
    },
    { name: "xl/workbook.xml", pieces: [workbook(measured)] },
    {
      name: "xl/_rels/workbook.xml.rels",
      pieces: [
        relations([
          ...sheets.map(
            (_, i) => [`rId${i + 1}`, `${OFFICE}/worksheet`, `worksheets/sheet${i + 1}.xml`] as const,
          ),
          ["rIdStyles", `${OFFICE}/styles`, "styles.xml"],
        ]),
      ],
    },
    { name: "xl/styles.xml", pieces: [STYLES] },
    ...measured.map((sheet, i) => ({
      name: `xl/worksheets/sheet${i + 1}.xml`,
      pieces: worksheet(sheet, PAPER_CODES[paper], i === 0),
    })),
  ]);
}

interface MeasuredSheet extends WorkbookSheet {
  /** Rows under the titles. */
  readonly count: number;
  /** Letters of the longest cell of each column, its title not counted. */
  readonly longest: readonly number[];
}

function measuredSheet(sheet: WorkbookSheet): MeasuredSheet {
  const longest = sheet.titles.map(() => 0);
  let count = 0;
  for (const row of sheet.rows) {
    count += 1;
    for (const i of longest.keys()) {
      longest[i] = Math.max(longest[i] ?? 0, String(row[i] ?? "").length);
    }
  }
  return { ...sheet, count, longest };
}

function contentTypes(count: number): string {
  const type = "application/vnd.openxmlformats-officedocument.spreadsheetml";
  const parts = Array.from(
    { length: count },
    (_, i) => `<Override PartName="/xl/worksheets/sheet${i + 1}.xml" ContentType="${type}.worksheet+xml"/>`,
  );
  return `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${type}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="${type}.styles+xml"/><Override PartName="/docProps/core.xml" ContentType="application/vnd.openxmlformats-package.core-properties+xml"/>${parts.join("")}</Types>`;
}

function relations(all: readonly (readonly [id: string, type: string, target: string])[]): string {
  const rows = all.map(
    ([id, type, target]) => `<Relationship Id="${id}" Type="${type}" Target="${target}"/>`,
  );
  return `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${rows.join("")}</Relationships>`;
}

function workbook(sheets: readonly MeasuredSheet[]): string {
  const names = sheets.flatMap((sheet, i) => {
    const of = `'${sheet.name.replaceAll("'", "''")}'!`;
    const area = escapeXml(`${of}$A$1:$${columnName(sheet.titles.length)}$${sheet.count + 1}`);
    const name = (key: string, value: string, more = ""): string =>
      `<definedName name="_xlnm.${key}" localSheetId="${i}"${more}>${value}</definedName>`;
    return [
      name("_FilterDatabase", area, ' hidden="1"'),
      name("Print_Area", area),
      name("Print_Titles", escapeXml(`${of}$1:$1`)),
    ];
  });
  const list = sheets.map(
    ({ name }, i) => `<sheet name="${escapeXml(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`,
  );
  return `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${list.join("")}</sheets><definedNames>${names.join("")}</definedNames></workbook>`;
}

/** 0: as it is; 1: titles; 2: words that may be broken. */
const STYLES = `${HEAD}<styleSheet xmlns="${MAIN}"><fonts count="2"><font><sz val="10"/><family val="2"/></font><font><b/><sz val="10"/><family val="2"/></font></fonts><fills count="3"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFE8E8E4"/></patternFill></fill></fills><borders count="2"><border><left/><right/><top/><bottom/><diagonal/></border><border><left/><right/><top/><bottom style="thin"><color auto="1"/></bottom><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="3"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="0" fontId="1" fillId="2" borderId="1" xfId="0" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1"><alignment vertical="bottom" wrapText="1"/></xf><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0" applyAlignment="1"><alignment vertical="top" wrapText="1"/></xf></cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>`;

function* worksheet(
  { titles, rows, count, longest }: MeasuredSheet,
  paper: number,
  isShown: boolean,
): Generator<string> {
  const last = `${columnName(titles.length)}${count + 1}`;
  const columns = titles.map((title, i) => {
    // A title may be broken in two; its filter's press takes room beside it.
    const width = Math.min(WIDEST, Math.max(6, longest[i] ?? 0, Math.ceil(title.length / 2) + 2)) + 2;
    return `<col min="${i + 1}" max="${i + 1}" width="${width}" customWidth="1"/>`;
  });
  yield `${HEAD}<worksheet xmlns="${MAIN}"><sheetPr><pageSetUpPr fitToPage="1"/></sheetPr><dimension ref="A1:${last}"/><sheetViews><sheetView${isShown ? ' tabSelected="1"' : ""} workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><sheetFormatPr defaultRowHeight="13"/><cols>${columns.join("")}</cols><sheetData>`;
  yield `<row r="1">${titles.map((title, i) => cell(title, `${columnName(i + 1)}1`, 1)).join("")}</row>`;
  let r = 1;
  for (const row of rows) {
    r += 1;
    const cells = row.map((value, i) =>
      cell(value, `${columnName(i + 1)}${r}`, typeof value === "string" && value.length > WIDEST ? 2 : 0),
    );
    yield `<row r="${r}">${cells.join("")}</row>`;
  }
  yield `</sheetData><autoFilter ref="A1:${last}"/><pageMargins left="0.5" right="0.5" top="0.6" bottom="0.6" header="0.3" footer="0.3"/><pageSetup paperSize="${paper}" orientation="landscape" fitToHeight="0"/><headerFooter><oddHeader>&amp;A</oddHeader><oddFooter>&amp;P / &amp;N</oddFooter></headerFooter></worksheet>`;
}

function cell(value: string | number | undefined, at: string, style: number): string {
  const look = style === 0 ? "" : ` s="${style}"`;
  if (value === undefined || value === "") return "";
  if (typeof value === "number") return `<c r="${at}"${look}><v>${Number(value.toFixed(6))}</v></c>`;
  return `<c r="${at}"${look} t="inlineStr"><is><t xml:space="preserve">${escapeXml(value)}</t></is></c>`;
}

/** 1 is A, 27 is AA. */
function columnName(number: number): string {
  const before = Math.floor((number - 1) / 26);
  return `${before > 0 ? columnName(before) : ""}${String.fromCharCode(65 + ((number - 1) % 26))}`;
}

/** The schedules as a workbook, read back by a general reader and held to the CSV of the same tables (ECMA-376 part 1). */
import { unzipSync } from "fflate";
import readWorkbook from "read-excel-file/node";
import { beforeAll, describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { csvFiles } from "../../src/output/csv/csv-files.ts";
import { allBytes } from "../../src/output/pieces.ts";
import { schedulesXlsx } from "../../src/output/xlsx/schedules.ts";
import { writeWorkbook } from "../../src/output/xlsx/workbook.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import type { Reader } from "../../src/text/say.ts";
import { fixtureFacade } from "../helpers/fixture-facade.ts";

const READER: Reader = { language: "fr", units: "feet-inch", denominator: 16 };

describe("a workbook of schedules", () => {
  const { facade, project } = fixtureFacade();
  const { plan } = cutFacade(project, facade);
  const request = { facade, cutPlan: plan, takeoff: takeOff(project, facade, plan), reader: READER };
  const bytes = allBytes(schedulesXlsx(request, "Pavillon & cie"));
  const files = csvFiles(request).map(({ records }) => [...records]);
  let sheets: { sheet: string; data: unknown[][] }[] = [];
  beforeAll(async () => {
    sheets = (await readWorkbook(Buffer.from(bytes))) as unknown as typeof sheets;
  });

  it("holds a sheet for each table, each cell of it, and numbers as numbers", () => {
    expect(sheets.map(({ sheet }) => sheet)).toEqual([
      "Pièces",
      "Lattes",
      "Vis",
      "Coupes des panneaux",
      "Ordre des coupes",
      "Coupes des longueurs",
      "Refentes",
      "Commande",
    ]);
    for (const [i, { data }] of sheets.entries()) {
      const wanted = (files[i] ?? []).map((row) =>
        row.map((value) =>
          value === undefined || value === ""
            ? null
            : typeof value === "number"
              ? Number(value.toFixed(6))
              : value,
        ),
      );
      expect(data).toEqual(wanted);
    }
    const numbers = sheets[0]!.data.flat().filter((value) => typeof value === "number");
    expect(numbers.length).toBeGreaterThan(20);
    expect(sheets[0]!.data[0]!.some((title) => /\(mm\)|, mm|mm/.test(String(title)))).toBe(true);
  });

  it("freezes and filters the titles, and prints the whole width with them on every page", () => {
    const parts = unzipSync(bytes);
    const text = (name: string) => Buffer.from(parts[name] ?? []).toString("utf8");
    for (const [i, records] of files.entries()) {
      const sheet = text(`xl/worksheets/sheet${i + 1}.xml`);
      expect(sheet).toContain('<pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/>');
      expect(sheet).toMatch(new RegExp(`<autoFilter ref="A1:[A-Z]+${records.length}"/>`));
      expect(sheet).toContain('paperSize="1" orientation="landscape" fitToHeight="0"');
    }
    const names = text("xl/workbook.xml").match(/<definedName [^>]*>[^<]*/g) ?? [];
    expect(names.filter((name) => name.includes("Print_Area"))).toHaveLength(files.length);
    expect(names.filter((name) => name.includes("Print_Titles") && name.endsWith("!$1:$1"))).toHaveLength(
      files.length,
    );
    expect(text("docProps/core.xml")).toContain("Pavillon &amp; cie");
  });

  it("is the same bytes again, by any clock", () => {
    const zone = process.env.TZ;
    process.env.TZ = "Pacific/Auckland";
    const again = allBytes(schedulesXlsx(structuredClone(request), "Pavillon & cie"));
    process.env.TZ = zone;
    expect(Buffer.from(again).equals(Buffer.from(bytes))).toBe(true);
  });

  it("names columns past Z, and keeps texts that look like formulas as texts", async () => {
    const titles = Array.from({ length: 28 }, (_, i) => `t${i}`);
    const wide = writeWorkbook(
      [{ name: "wide", titles, rows: [["=1+1", ...Array.from({ length: 27 }, (_, i) => i)]] }],
      {
        title: "",
        paper: "A4",
      },
    );
    const [first] = (await readWorkbook(Buffer.from(allBytes(wide)))) as unknown as typeof sheets;
    expect(first?.data[1]?.[0]).toBe("=1+1");
    expect(first?.data[1]?.[27]).toBe(26);
  });
});

/**
 * A whole issue, as `outerleaf issue` writes it less the disk: every document of the demo by its family, then how the time a sheet
 * and the memory grow with the faces, each building in a process of its own. Processor time, so that what else the machine does
 * does not count; the ratio is to the smallest building of the same run.
 */
import { spawnSync } from "node:child_process";
import { extname } from "node:path";
import { readPdfFonts } from "../src/cli/pdf-fonts.ts";
import { cutFacade } from "../src/cutting/facade/cut-facade.ts";
import { design } from "../src/design.ts";
import { byWeight } from "../src/findings/finding.ts";
import type { Shelf } from "../src/output/issue/shelf.ts";
import { type IssueFacts, writeIssue } from "../src/output/issue/write-issue.ts";
import type { Project } from "../src/project/schema/project.ts";
import { takeOff } from "../src/takeoff/take-off.ts";
import { ENGLISH_MM } from "../src/text/say.ts";
import { exampleDocument, manyFaces, readAs } from "./buildings.ts";

const GROWTH = [10, 40, 160, 500];

const round = (value: number): number => Math.round(value * 10) / 10;

/** Milliseconds of the processor since it was made. */
function stopwatch(): () => number {
  const began = process.cpuUsage();
  return () => {
    const { user, system } = process.cpuUsage(began);
    return (user + system) / 1000;
  };
}

/** Cutting is measured by itself (`cut-facade`); without it the sheets of cutting and the order are not drawn. */
function factsOf(project: Project, cut: boolean): IssueFacts {
  const made = design(project);
  const { plan, findings: cutFindings } = cut
    ? cutFacade(project, made.facade)
    : { plan: undefined, findings: [] };
  return {
    design: made,
    findings: [...made.findings, ...cutFindings].sort(byWeight),
    cutFindings,
    plan,
    takeoff: takeOff(project, made.facade, plan),
    reader: ENGLISH_MM,
  };
}

interface Count {
  documents: number;
  bytes: number;
  ms: number;
}

/** Counts what it gets and keeps nothing; each document bears the time since the one before. */
function countingShelf(): {
  shelf: Shelf;
  families: Map<string, Count>;
  seen(name: string, bytes: number): void;
} {
  const families = new Map<string, Count>();
  let clock = stopwatch();
  const seen = (name: string, bytes: number, documents = 0): void => {
    const family = extname(name) === ".pdf" ? name : extname(name);
    const own = families.get(family) ?? { documents: 0, bytes: 0, ms: 0 };
    families.set(family, own);
    own.documents += documents;
    own.bytes += bytes;
    own.ms += clock();
    clock = stopwatch();
  };
  const shelf: Shelf = {
    put: async ({ name, content }) => seen(name, content.length, 1),
    open: async (name) => {
      seen(name, 0, 1);
      return { add: async (chunk) => seen(name, chunk.length), close: async () => seen(name, 0) };
    },
  };
  return { shelf, families, seen };
}

async function measured(project: Project, cut: boolean) {
  const whole = stopwatch();
  const facts = factsOf(project, cut);
  const designMs = whole();
  const fonts = await readPdfFonts();
  const { shelf, families } = countingShelf();
  const clock = stopwatch();
  let sheets = 0;
  await writeIssue(facts, shelf, {
    fonts,
    sheetDone: (_, of) => {
      sheets ||= of;
    },
  });
  const ms = clock();
  return { faces: facts.design.facade.faces.length, sheets, designMs, ms, families };
}

const child = process.argv.indexOf("--child");
if (child >= 0) {
  const { sheets, designMs, ms } = await measured(manyFaces(Number(process.argv[child + 1])), false);
  const peakMb = process.resourceUsage().maxRSS / 1024;
  console.log(JSON.stringify({ sheets, designMs, ms, peakMb }));
} else {
  const demo = readAs(exampleDocument("atelier-bouleau"), "demo");
  await measured(demo, true);
  const { sheets, ms, families } = await measured(demo, true);
  console.table(
    [...families].map(([family, { documents, bytes, ms: own }]) => ({
      family,
      documents,
      kb: Math.round(bytes / 1024),
      ms: Math.round(own),
    })),
  );
  console.table([{ demo: "all documents", sheets, msASheet: round(ms / sheets), bound: 120 }]);
  const rows = GROWTH.map((faces) => {
    const { stdout } = spawnSync(process.execPath, [process.argv[1] as string, "--child", String(faces)], {
      encoding: "utf8",
      stdio: ["ignore", "pipe", "inherit"],
    });
    return {
      faces,
      ...(JSON.parse(stdout) as { sheets: number; designMs: number; ms: number; peakMb: number }),
    };
  });
  const [first] = rows;
  console.table(
    rows.map((row) => ({
      faces: row.faces,
      sheets: row.sheets,
      designMs: Math.round(row.designMs),
      writeMsASheet: round(row.ms / row.sheets),
      ofTheFirst: round(row.ms / row.sheets / ((first?.ms ?? 1) / (first?.sheets ?? 1))),
      peakMb: Math.round(row.peakMb),
      peakMbAFace: round(row.peakMb / row.faces),
    })),
  );
}

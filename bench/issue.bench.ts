/**
 * A whole issue, as `outerleaf issue` writes it less the disk: every document of the demo by its family, then how the time a sheet
 * and the memory grow with the faces, each building in a process of its own. Processor time, so that what else the machine does
 * does not count; the ratio is to the smallest building of the same run. `--long` adds a building of 500 faces, which takes minutes.
 *
 * Memory is told three ways: what the model holds before anything is written (facade, findings, take-off), the most that is alive at
 * any moment of writing above that, and the peak of the process, which is more by what no one has swept up yet.
 */
import { spawnSync } from "node:child_process";
import { extname } from "node:path";
import { readPdfFonts } from "../src/cli/pdf-fonts.ts";
import { cutFacade } from "../src/cutting/facade/cut-facade.ts";
import { design } from "../src/design.ts";
import { byWeight } from "../src/findings/finding.ts";
import type { Shelf } from "../src/output/issue/shelf.ts";
import { type IssueFacts, writeIssue } from "../src/output/issue/write-issue.ts";
import { gathered } from "../src/output/pieces.ts";
import type { Project } from "../src/project/schema/project.ts";
import { takeOff } from "../src/takeoff/take-off.ts";
import { ENGLISH_MM } from "../src/text/say.ts";
import { exampleDocument, manyFaces, readAs } from "./buildings.ts";

const GROWTH = [10, 40, 160, ...(process.argv.includes("--long") ? [500] : [])];

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

/** Looks at what is alive a few times of a set, and of every large document. */
const LOOKS = 24;
const PIECES_A_LOOK = 128;

/** Counts what it gets and keeps nothing; each document bears the time since the one before. */
function countingShelf(look: () => void): { shelf: Shelf; families: Map<string, Count> } {
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
    put: async ({ name, pieces }) => {
      seen(name, 0, 1);
      let taken = 0;
      for (const piece of gathered(pieces)) {
        seen(name, piece.length);
        taken += 1;
        if (taken % PIECES_A_LOOK === 1 && !OF_A_SHEET.includes(extname(name))) look();
      }
    },
    open: async (name) => {
      seen(name, 0, 1);
      return { add: async (chunk) => seen(name, chunk.length), close: async () => seen(name, 0) };
    },
  };
  return { shelf, families };
}

const OF_A_SHEET = [".svg", ".dxf"];

/** Bytes that are alive. */
function alive(): number {
  globalThis.gc?.();
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

async function measured(project: Project, { cut, memory }: { cut: boolean; memory: boolean }) {
  const whole = stopwatch();
  const facts = factsOf(project, cut);
  const designMs = whole();
  const fonts = await readPdfFonts();
  const model = memory ? alive() : 0;
  let most = model;
  let looking = 0;
  const look = (): void => {
    if (!memory) return;
    const own = stopwatch();
    most = Math.max(most, alive());
    looking += own();
  };
  const { shelf, families } = countingShelf(look);
  const clock = stopwatch();
  let sheets = 0;
  await writeIssue(facts, shelf, {
    fonts,
    sheetDone: (number, of) => {
      sheets ||= of;
      if (number % Math.ceil(of / LOOKS) === 0) look();
    },
  });
  const ms = clock() - looking;
  return { sheets, designMs, ms, families, modelMb: model / MB, writingMb: (most - model) / MB };
}

const MB = 2 ** 20;

const child = process.argv.indexOf("--child");
if (child >= 0) {
  const project = manyFaces(Number(process.argv[child + 1]));
  const { families: _, ...told } = await measured(project, { cut: false, memory: true });
  console.log(JSON.stringify({ ...told, peakMb: process.resourceUsage().maxRSS / 1024 }));
} else {
  const demo = readAs(exampleDocument("atelier-bouleau"), "demo");
  await measured(demo, { cut: true, memory: false });
  const { sheets, ms, families } = await measured(demo, { cut: true, memory: false });
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
    const { stdout } = spawnSync(
      process.execPath,
      ["--expose-gc", process.argv[1] as string, "--child", String(faces)],
      { encoding: "utf8", stdio: ["ignore", "pipe", "inherit"] },
    );
    return {
      faces,
      ...(JSON.parse(stdout) as Omit<Awaited<ReturnType<typeof measured>>, "families"> & { peakMb: number }),
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
      modelMb: Math.round(row.modelMb),
      writingMb: Math.round(row.writingMb),
      writingOfModel: round(row.writingMb / row.modelMb),
      peakMb: Math.round(row.peakMb),
      peakMbAFace: round(row.peakMb / row.faces),
    })),
  );
}

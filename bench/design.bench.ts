/**
 * How long `design()` takes without cutting, what memory it holds, and how both grow with the building. Times are of one
 * process after warm-up; the growth is a ratio of times per piece measured in the same run.
 *
 * Warm-up goes on until it no longer helps: the engine goes on compiling for some hundred designs, and a page that a builder
 * edits has made as many.
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { design } from "../src/design.ts";
import type { Project } from "../src/project/schema/project.ts";
import { exampleDocument, manyFaces, readAs } from "./buildings.ts";

/** Warm-up helps while a round's median is below this share of the least before it. */
const HELPS = 0.97;

/** Times that the growth is measured. */
const PAIRS = 5;

interface Row {
  readonly building: string;
  readonly pieces: number;
  /** Designs made before those that are measured. */
  readonly warmUp: number;
  readonly medianMs: number;
  readonly leastMs: number;
  readonly perPieceUs: number;
  readonly piecesPerSecond: number;
  readonly heldMB: number;
}

function measure(
  building: string,
  project: Project,
  { runs, atMost }: { runs: number; atMost: number },
): Row {
  const medianOf = (count: number): { median: number; least: number } => {
    const times: number[] = [];
    for (let i = 0; i < count; i++) {
      const start = performance.now();
      design(project);
      times.push(performance.now() - start);
    }
    times.sort((a, b) => a - b);
    return { median: times[times.length >> 1] ?? 0, least: times[0] ?? 0 };
  };
  let warmUp = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let unhelpful = 0; unhelpful < 2 && warmUp < atMost; warmUp += runs) {
    const { median } = medianOf(runs);
    unhelpful = median < least * HELPS ? 0 : unhelpful + 1;
    least = Math.min(least, median);
  }
  // Memory afterwards: a collection makes the room for young objects small again, and what follows it slow.
  const { median: medianMs, least: leastMs } = medianOf(runs);
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  const result = design(project);
  globalThis.gc?.();
  const heldMB = (process.memoryUsage().heapUsed - before) / 1e6;
  const pieces = result.facade.faces.reduce((sum, face) => sum + face.pieces.length, 0);
  return {
    building,
    pieces,
    warmUp,
    medianMs: round(medianMs),
    leastMs: round(leastMs),
    perPieceUs: round((medianMs * 1000) / pieces),
    piecesPerSecond: Math.round((pieces / medianMs) * 1000),
    heldMB: round(heldMB),
  };
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

interface Case {
  readonly name: string;
  readonly project: () => Project;
  readonly runs: number;
  /** Designs of warm-up at most. */
  readonly atMost: number;
}

const CASES: Readonly<Record<string, Case>> = {
  ...Object.fromEntries(
    ["atelier-bouleau", "imperial", "l-plan", "porch", "two-storey"].map((name): [string, Case] => [
      name,
      { name, project: () => readAs(exampleDocument(name), name), runs: 60, atMost: 1200 },
    ]),
  ),
  10: { name: "10 faces", project: () => manyFaces(10), runs: 30, atMost: 600 },
  100: { name: "100 faces", project: () => manyFaces(100), runs: 7, atMost: 42 },
  1000: { name: "1000 faces", project: () => manyFaces(1000), runs: 3, atMost: 3 },
};

/** One measurement in a process of its own, so that one's memory does not count as another's. */
function inChild(...words: string[]): Record<string, unknown> {
  const child = spawnSync(process.execPath, ["--expose-gc", fileURLToPath(import.meta.url), ...words], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "inherit"],
  });
  return JSON.parse(child.stdout);
}

const [wanted, once] = process.argv.slice(2);
if (wanted) {
  const one = CASES[wanted];
  if (!one) throw new Error(`no case ${wanted}; there are ${Object.keys(CASES).join(", ")}`);
  if (once) {
    design(one.project());
    console.log(JSON.stringify({ onceMostMB: Math.round(process.resourceUsage().maxRSS / 1000) }));
  } else console.log(JSON.stringify(measure(one.name, one.project(), one)));
} else {
  const rows = Object.keys(CASES).map(
    (key) => ({ ...inChild(key), ...inChild(key, "once") }) as unknown as Row,
  );
  console.table(rows);
  // In turn, since a machine is not as fast from one minute to the next.
  const perPiece = (key: string): number => (inChild(key) as unknown as Row).perPieceUs;
  const ratios = Array.from({ length: PAIRS }, () => {
    const few = perPiece("10");
    return round(perPiece("1000") / few);
  }).sort((a, b) => a - b);
  console.log(
    `time per piece, 1000 faces over 10 faces, median of pairs: ${ratios[PAIRS >> 1]} (${ratios.join(", ")})`,
  );
}

/**
 * How long `design()` takes without cutting, what memory it holds, and how both grow with the building. Times are of one
 * process after warm-up; the growth is a ratio of times per piece measured in the same run.
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { design } from "../src/design.ts";
import type { Project } from "../src/project/schema/project.ts";
import { exampleDocument, manyFaces, readAs } from "./buildings.ts";

interface Row {
  readonly building: string;
  readonly pieces: number;
  readonly medianMs: number;
  readonly leastMs: number;
  readonly perPieceUs: number;
  readonly piecesPerSecond: number;
  readonly heldMB: number;
}

function measure(
  building: string,
  project: Project,
  { warmUp, runs }: { warmUp: number; runs: number },
): Row {
  for (let i = 0; i < warmUp; i++) design(project);
  const times: number[] = [];
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  let result = design(project);
  globalThis.gc?.();
  const heldMB = (process.memoryUsage().heapUsed - before) / 1e6;
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    result = design(project);
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  const medianMs = times[times.length >> 1] ?? 0;
  const pieces = result.facade.faces.reduce((sum, face) => sum + face.pieces.length, 0);
  return {
    building,
    pieces,
    medianMs: round(medianMs),
    leastMs: round(times[0] ?? 0),
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
  readonly warmUp: number;
  readonly runs: number;
}

const CASES: Readonly<Record<string, Case>> = {
  ...Object.fromEntries(
    ["atelier-bouleau", "imperial", "l-plan", "porch", "two-storey"].map((name): [string, Case] => [
      name,
      { name, project: () => readAs(exampleDocument(name), name), warmUp: 40, runs: 60 },
    ]),
  ),
  10: { name: "10 faces", project: () => manyFaces(10), warmUp: 20, runs: 30 },
  100: { name: "100 faces", project: () => manyFaces(100), warmUp: 3, runs: 7 },
  1000: { name: "1000 faces", project: () => manyFaces(1000), warmUp: 1, runs: 3 },
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
  const perPiece = (building: string): number =>
    rows.find((row) => row.building === building)?.perPieceUs ?? 0;
  console.log(
    `time per piece, 1000 faces over 10 faces: ${round(perPiece("1000 faces") / perPiece("10 faces"))}`,
  );
}

/**
 * How long `design()` takes without cutting, what memory it holds, and how both grow with the building. Times are of one
 * process after warm-up; the growth is a ratio of times per piece measured in the same run.
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { design } from "../src/design.ts";
import type { Project } from "../src/project/schema/project.ts";
import { demoDocument, manyFaces, readAs } from "./buildings.ts";

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

const CASES: Readonly<Record<string, () => Row>> = {
  demo: () => measure("Atelier Bouleau", readAs(demoDocument(), "demo"), { warmUp: 40, runs: 60 }),
  10: () => measure("10 faces", manyFaces(10), { warmUp: 20, runs: 30 }),
  100: () => measure("100 faces", manyFaces(100), { warmUp: 3, runs: 7 }),
  1000: () => measure("1000 faces", manyFaces(1000), { warmUp: 1, runs: 3 }),
};

// Each building is measured in a process of its own, so that one's memory does not count as another's.
const wanted = process.argv[2];
if (wanted) {
  const row = CASES[wanted]?.();
  console.log(JSON.stringify({ ...row, mostMB: Math.round(process.resourceUsage().maxRSS / 1000) }));
} else {
  const rows = ["demo", "10", "100", "1000"].map((name) => {
    const child = spawnSync(
      process.execPath,
      ["--expose-gc", "--import", "tsx", fileURLToPath(import.meta.url), name],
      {
        encoding: "utf8",
        stdio: ["ignore", "pipe", "inherit"],
      },
    );
    return JSON.parse(child.stdout) as Row & { readonly mostMB: number };
  });
  console.table(rows);
  const [, ten, , thousand] = rows;
  console.log(
    `time per piece, 1000 faces over 10 faces: ${round((thousand?.perPieceUs ?? 0) / (ten?.perPieceUs ?? 1))}`,
  );
}

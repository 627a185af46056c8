/**
 * The storey rod of the demo: how long one rod takes, and how long the choice of its widths among all singles and pairs from 70 to 160 mm,
 * against asking of each set whether it has a rod and solving it if so. The latter is taken from every tenth set. Times are of one process;
 * the first call, before anything is warm, is told apart.
 */
import { demandsOf } from "../src/codes/demands.ts";
import { counterClockwise, type Polygon } from "../src/geometry/polygon.ts";
import { keepOutsOf, zoneGround } from "../src/setout/ground-plan.ts";
import { isPossible, solveRod } from "../src/setout/rod/index.ts";
import { chooseWidths, type WidthsQuestion } from "../src/setout/rod-choice/index.ts";
import { settingOf } from "../src/setout/storey/task.ts";
import { exampleDocument, readAs } from "./buildings.ts";

const RUNS = 21;

function median(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[times.length >> 1] ?? 0;
}

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

const project = readAs(exampleDocument("atelier-bouleau"), "demo");
const [spec] = project.rods ?? [];
if (!spec) throw new Error("the demo has no rod");
const zones = spec.zones.flatMap(({ face: faceId, zone: zoneId }) => {
  const face = project.faces.find(({ id }) => id === faceId);
  const zone = face?.zones.find(({ id }) => id === zoneId);
  if (!face || !zone) return [];
  const keepOuts = keepOutsOf(project, face);
  const outline = counterClockwise(face.outline as Polygon);
  return [{ ground: zoneGround({ face, zone, outline, keepOuts, rounds: [] }), faceKeepOuts: keepOuts }];
});
const cladding = zones[0]?.ground.zone.cladding ?? "";
const demand = demandsOf(project).boards[cladding];
const { problem } = settingOf({
  project,
  spec,
  zones,
  gapBand: demand?.gapBand ?? [6, 12],
  season: demand?.seasonal,
});

const question: WidthsQuestion = { ...problem, widths: { from: 70, to: 160 } };
const firstMs = timed(() => chooseWidths(question));
for (let i = 0; i < 5; i++) chooseWidths(question);
const choiceMs = median(Array.from({ length: RUNS }, () => timed(() => chooseWidths(question))));
const outcome = chooseWidths(question);
if (outcome.kind !== "ranked") throw new Error("the demo's rod has faults");

const sets: number[][] = [];
for (let narrow = 70; narrow <= 160; narrow++) {
  sets.push([narrow]);
  for (let wide = narrow + 1; wide <= 160; wide++) sets.push([narrow, wide]);
}
const sample = sets.filter((_, place) => place % 10 === 0);
function alone(widths: readonly number[]): void {
  const one = { ...problem, widths };
  if (isPossible(one)) solveRod(one);
}
for (const widths of sample.slice(0, 50)) alone(widths);
const sampleMs = timed(() => {
  for (const widths of sample) alone(widths);
});
const naiveMs = (sampleMs / sample.length) * sets.length;
for (let i = 0; i < 20; i++) solveRod(problem);
const rodMs = median(Array.from({ length: RUNS }, () => timed(() => solveRod(problem))));

console.table({
  "one rod": { ms: Number(rodMs.toFixed(2)) },
  "choice of widths": { ms: Number(choiceMs.toFixed(1)) },
  "choice of widths, first call": { ms: Number(firstMs.toFixed(1)) },
  "each set by itself": { ms: Math.round(naiveMs) },
});
console.log(
  `${outcome.proof.sets} sets, ${outcome.proof.solved} solved; each set by itself takes ${(naiveMs / choiceMs).toFixed(1)} times as long`,
);

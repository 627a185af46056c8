/** How long the demo's sheet zones take to plan, warm, and what each pattern and a pin cost on top. */
import type { Project } from "../src/project/schema/project.ts";
import { type ColumnPlan, planColumns } from "../src/setout/sheets/plan.ts";
import type { SheetZone } from "../src/setout/sheets/zone.ts";
import { sheetZones } from "../test/helpers/sheet-zones.ts";
import { exampleDocument, manyFaces, readAs } from "./buildings.ts";

const WARM_UP = 200;
const RUNS = 300;

function measure(name: string, zones: readonly SheetZone[], runs = RUNS) {
  let plans: ColumnPlan[] = [];
  for (let i = 0; i < Math.min(WARM_UP, runs); i++) plans = zones.map(planColumns);
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    plans = zones.map(planColumns);
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const sum = (count: (plan: ColumnPlan) => number): number =>
    plans.reduce((all, plan) => all + count(plan), 0);
  return {
    zones: `${zones.length} of ${name}`,
    medianMs: round(times[times.length >> 1] ?? 0),
    leastMs: round(times[0] ?? 0),
    candidates: sum(({ candidates }) => candidates),
    sheets: sum(({ score }) => score.sheets),
    atLeast: sum(({ bound }) => bound.unnotched),
  };
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function demoWith(change: (zone: Project["faces"][number]["zones"][number]) => object): SheetZone[] {
  const project = readAs(exampleDocument("atelier-bouleau"), "demo");
  return sheetZones({
    ...project,
    faces: project.faces.map((face) => ({
      ...face,
      zones: face.zones.map((zone) => ({ ...zone, ...change(zone) })),
    })),
  });
}

console.table([
  measure(
    "the demo",
    demoWith(() => ({})),
  ),
  measure(
    "the demo, grid",
    demoWith(() => ({ pattern: "grid" })),
    40,
  ),
  measure(
    "the demo, offset",
    demoWith(() => ({ pattern: "offset" })),
    40,
  ),
  measure(
    "the demo, one pin each",
    demoWith(() => ({ joints: { pinned: { x: [6700] } } })),
  ),
  measure("100 faces", sheetZones(manyFaces(100)), 20),
]);

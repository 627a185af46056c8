/**
 * How long the plane search takes: the demo's front with what follows it, then with planing, then three build-ups in one
 * face, then a large stock. Times are of one process after warm-up. Wall time suffers from whatever else the machine does,
 * so processor time is measured beside it.
 */
import { demandsOf } from "../src/codes/demands.ts";
import type { Project, ProjectDocument } from "../src/project/schema/project.ts";
import { type Planing, planeGroups, searchPlanes } from "../src/setout/plane-search/index.ts";
import { exampleDocument, readAs } from "./buildings.ts";

function measure(name: string, project: Project, { planing, runs }: { planing?: Planing; runs: number }) {
  const demands = demandsOf(project);
  const zones = planeGroups(project)[0] ?? [];
  const once = () => searchPlanes({ project, demands, zones, ...(planing && { planing }) });
  for (let i = 0; i < runs; i++) once();
  const times: number[] = [];
  const before = process.cpuUsage();
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    once();
    times.push(performance.now() - start);
  }
  const { user } = process.cpuUsage(before);
  times.sort((a, b) => a - b);
  const { counts } = once();
  return {
    search: name,
    ...counts,
    medianMs: round(times[runs >> 1] ?? 0),
    leastMs: round(times[0] ?? 0),
    processorMs: round(user / 1000 / runs),
  };
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

/** The front's sheets in two zones, the second thinner, each on a build-up of its own. */
function threeBuildUps(): ProjectDocument {
  const document = exampleDocument("atelier-bouleau");
  const front = document.faces.find(({ id }) => id === "front");
  const [boards, sheets] = front?.zones ?? [];
  const [, behind] = document.buildUps;
  const [, thick] = document.claddings;
  if (!front || !boards || !sheets || !behind || !thick) throw new Error("the demo's front has two zones");
  document.buildUps.push({ ...structuredClone(behind), id: "thin" });
  document.claddings.push({ ...structuredClone(thick), id: "thin", thickness: 6 });
  front.zones = [
    boards,
    { ...sheets, x: [2410, 6090] },
    { id: "thin", cladding: "thin", buildUp: "thin", x: [6100, "right end"] },
  ];
  return document;
}

/** Battens from 19 to 45 mm, two millimetres apart, and six packers. */
function largeStock(document: ProjectDocument): ProjectDocument {
  for (let thickness = 21; thickness <= 45; thickness += 2)
    document.stock.battens.push({
      ...{ id: `b${thickness}`, thickness, width: 64, lengths: [3660], pricePerM: thickness / 12 },
    });
  document.stock.packers = [0.5, 1, 2, 3, 5, 8];
  return document;
}

const fine = { least: -4, most: 4, step: 0.5 };
console.table([
  measure("the demo", readAs(exampleDocument("atelier-bouleau"), "demo"), { runs: 60 }),
  measure("with planing of ±4 by 1", readAs(exampleDocument("atelier-bouleau"), "demo"), {
    planing: { least: -4, most: 4, step: 1 },
    runs: 20,
  }),
  measure("three build-ups", readAs(threeBuildUps(), "three"), { runs: 10 }),
  measure("a large stock, planing by 0.5", readAs(largeStock(exampleDocument("atelier-bouleau")), "large"), {
    planing: fine,
    runs: 2,
  }),
]);

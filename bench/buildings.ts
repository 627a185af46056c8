/** Buildings of many faces for measuring growth: a crenellated plan, every face of the same make as the demo's. */
import { readFileSync } from "node:fs";
import { readDocument } from "../src/project/read.ts";
import type { Project, ProjectDocument } from "../src/project/schema/project.ts";

const BAY_MM = 4800;
const DEEP_MM = 3600;
const TOP_MM = 2990;

export function exampleDocument(name: string): ProjectDocument {
  return JSON.parse(readFileSync(new URL(`../examples/${name}.outerleaf.json`, import.meta.url), "utf8"));
}

export function readAs(document: ProjectDocument, name: string): Project {
  const result = readDocument(document, name);
  if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.findings[0])}`);
  return result.project;
}

/** Faces that stand in one stepped wall; a longer row starts anew beside it, so that no coordinate leaves the site. */
const FACES_IN_ROW = 40;
const BETWEEN_ROWS_MM = 12_000;
const FIRST_ROW_MM = -150_000;

/** From and to in plan of each face: rows of walls that step in and out, left to right. */
function steppedPlan(faces: number): { from: [number, number]; to: [number, number] }[] {
  let at: [number, number] = [0, 0];
  return Array.from({ length: faces }, (_, i) => {
    const place = i % FACES_IN_ROW;
    if (place === 0) at = [0, FIRST_ROW_MM + (i / FACES_IN_ROW) * BETWEEN_ROWS_MM];
    const from = at;
    const [x, y] = from;
    at = place % 2 === 0 ? [x + BAY_MM, y] : [x, place % 4 === 1 ? y + DEEP_MM : y - DEEP_MM];
    return { from, to: at };
  });
}

/** A building of that many faces, boards and sheets in turn, one rod for all the boards. */
export function manyFaces(count: number): Project {
  const demo = exampleDocument("atelier-bouleau");
  const plan = steppedPlan(count);
  const faces = Array.from({ length: count }, (_, i): ProjectDocument["faces"][number] => {
    const { from, to } = plan[i] as (typeof plan)[number];
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const heading = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
    const boards = i % 2 === 0;
    return {
      id: `f${i + 1}`,
      azimuthDeg: (((180 - heading) % 360) + 360) % 360,
      plan: { from, to },
      outline: [
        [0, -50],
        [length, -50],
        [length, TOP_MM],
        [0, TOP_MM],
      ],
      ground: [
        [0, -350],
        [length, -350],
      ],
      frameProjection: 71,
      openings: [{ id: `w${i + 1}`, kind: "window", x: [1200, 2100], y: [920, 2100] }],
      zones: [
        {
          id: "all",
          cladding: boards ? "charred-boards" : "grey-sheets",
          buildUp: boards ? "over-wool-boards" : "over-wool-sheets",
          x: ["left end", "right end"],
        },
      ],
    };
  });
  const boardFaces = faces.filter((_, i) => i % 2 === 0);
  return readAs(
    {
      ...demo,
      title: `${count} faces`,
      faces,
      corners: [],
      rods: [
        {
          id: "rod",
          zones: boardFaces.map(({ id }) => ({ face: id, zone: "all" })),
          leads: [boardFaces[0]?.id ?? ""],
          lineTolerance: 2,
        },
      ],
      survey: [],
      crews: [],
    },
    `${count} faces`,
  );
}

/** The drawings of the five example buildings against committed ones: a change is looked at before it is kept. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { renderSceneSvg } from "../../src/output/svg/scene-svg.ts";
import { readProject } from "../../src/project/read.ts";
import type { Scene } from "../../src/scene/model.ts";
import { battenElevation } from "../../src/scene/views/batten-elevation.ts";
import { developedElevation } from "../../src/scene/views/developed-elevation.ts";
import { faceElevation } from "../../src/scene/views/face-elevation.ts";
import { verticalSection } from "../../src/scene/views/vertical-section.ts";
import { differenceFromGolden } from "./compare.ts";

const EXAMPLES: readonly { name: string; face: string; x: number; notched?: string }[] = [
  { name: "atelier-bouleau", face: "west", x: 2400 },
  { name: "l-plan", face: "south", x: 1000 },
  { name: "two-storey", face: "east", x: 1000, notched: "north" },
  { name: "imperial", face: "front", x: 1000 },
  { name: "porch", face: "porch-back", x: 800 },
];

describe.each(EXAMPLES)("$name", ({ name, face, x, notched }) => {
  const result = readProject(readFileSync(`examples/${name}.outerleaf.json`, "utf8"), name);
  if (!result.ok) throw new Error(`${name} does not read`);
  const { project } = result;
  const { facade, findings } = design(project);
  const reader = {
    language: "en",
    units: project.display.units,
    denominator: project.display.denominator,
  } as const;

  const views: readonly (readonly [view: string, scene: Scene | undefined])[] = [
    ["developed", developedElevation(facade, project, { findings })],
    [`face-${face}`, faceElevation(facade, project, face)],
    [`battens-${face}`, battenElevation(facade, project, face)],
    [`section-${face}`, verticalSection(facade, project, { face, x })],
    // A face whose notched sheets are drilled at their inner corners.
    ...(notched === undefined ? [] : [[`face-${notched}`, faceElevation(facade, project, notched)] as const]),
  ];

  it.each(views)("%s", (view, scene) => {
    if (!scene) throw new Error(`${name} has no ${view}`);
    expect(
      differenceFromGolden(`${name}-${view}`, renderSceneSvg(scene, { reader, theme: "light" })),
    ).toBeUndefined();
  });
});

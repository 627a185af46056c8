import { expect, it } from "vitest";
import { renderSceneSvg } from "../../src/output/svg/scene-svg.ts";
import { renderSheetSvg } from "../../src/output/svg/sheet-svg.ts";
import { ENGLISH_MM, type Reader } from "../../src/text/say.ts";
import { fixtureScenes, fixtureSheet } from "../helpers/fixture-drawings.ts";
import { differenceFromGolden } from "./compare.ts";

const FRENCH_FEET: Reader = { language: "fr", units: "feet-inch", denominator: 16 };
const scenes = fixtureScenes();

it.each(Object.entries(scenes))("fixture: %s", (name, scene) => {
  const svg = renderSceneSvg(scene, { reader: ENGLISH_MM, theme: "light" });
  expect(differenceFromGolden(`fixture-${name}`, svg)).toBeUndefined();
});

it("fixture: a sheet for print, in French and feet", () => {
  const scene = scenes["face-front"];
  if (!scene) throw new Error("no face-front");
  const svg = renderSheetSvg(fixtureSheet(scene), { reader: FRENCH_FEET, theme: "print" });
  expect(differenceFromGolden("fixture-sheet", svg)).toBeUndefined();
});

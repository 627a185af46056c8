/** The light proof of the hand-made wall against committed drawings: a change is looked at before it is kept. */
import { expect, it } from "vitest";
import { renderSceneSvg } from "../../src/output/svg/scene-svg.ts";
import { zoneLights } from "../../src/proof/light/zone-light.ts";
import { gapsForLimit } from "../../src/proof/light-dose.ts";
import { lightProof } from "../../src/scene/views/light-proof.ts";
import { ENGLISH_MM, type Reader } from "../../src/text/say.ts";
import { proofFixture } from "../helpers/proof-fixture.ts";
import { differenceFromGolden } from "./compare.ts";

const FRENCH_FEET: Reader = { language: "fr", units: "feet-inch", denominator: 16 };

const lights = zoneLights(proofFixture()) ?? [];

function zone(id: string) {
  const light = lights.find(({ view }) => view.zone.id === id);
  if (!light) throw new Error(`no light behind ${id}`);
  return light;
}

it("behind bevelled boards, with the gaps that keep a limit", () => {
  const light = zone("boards");
  const scene = lightProof({ light, limit: 12, gaps: gapsForLimit(light, 12) });
  if (!scene) throw new Error("no scene");
  const svg = renderSceneSvg(scene, { reader: ENGLISH_MM, theme: "light" });
  expect(differenceFromGolden("fixture-light-boards", svg)).toBeUndefined();
});

it("behind sheets, without a limit, in French and feet", () => {
  const scene = lightProof({ light: zone("sheets"), gaps: [] });
  if (!scene) throw new Error("no scene");
  const svg = renderSceneSvg(scene, { reader: FRENCH_FEET, theme: "print" });
  expect(differenceFromGolden("fixture-light-sheets", svg)).toBeUndefined();
});

it("no page where no joint lets light in", () => {
  expect(lightProof({ light: { ...zone("boards"), worst: undefined }, gaps: [] })).toBeUndefined();
});

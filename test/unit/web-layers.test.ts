/** Layers of the elevation: what is taken away is not drawn, and what lies behind it is. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { designFile } from "../../src/design.ts";
import { windUses } from "../../src/proof/wind/uses.ts";
import { STAGES } from "../../src/site/journal/entry.ts";
import { ENGLISH_MM } from "../../src/text/say.ts";
import { drawElevation } from "../../src/web/drawing/elevation.ts";
import { ELEVATION_LAYERS, type ElevationLayer, USUALLY_SHOWN } from "../../src/web/drawing/layers.ts";

const text = readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8");
const made = designFile({ name: "demo", text });
if (made.kind !== "designed") throw new Error("the demo reads");
const { design } = made;

/** A stage for every piece, all stages among them. */
const told = Object.fromEntries(
  design.facade.faces
    .flatMap(({ pieces }) => pieces)
    .map(({ mark }, i) => [mark, { stage: STAGES[i % STAGES.length] ?? "cut", ticks: {} }]),
);

/** Elements of the names of layers that are drawn (ISO 13567-2). */
function drawn(shown: Iterable<ElevationLayer>): Set<string> {
  const { parts } = drawElevation(design, {
    scale: 1 / 30,
    reader: ENGLISH_MM,
    findings: design.findings,
    shown: new Set(shown),
    uses: new Set(shown).has("wind") ? windUses(design) : [],
    told: new Set(shown).has("progress") ? told : undefined,
  });
  const names = parts.flatMap(({ layers }) =>
    layers.flatMap(({ layer }) => [...layer.matchAll(/^A-(\w+)-*E-$/g)]),
  );
  return new Set(names.map(([, element = ""]) => element));
}

const OWN: Readonly<Record<ElevationLayer, readonly string[]>> = {
  cladding: ["BOARD", "SHEET", "TRIM"],
  fixings: ["FIXING"],
  battens: ["BATTEN", "STRUCT"],
  membrane: ["MEMBR"],
  lines: ["CTRLIN", "ROD"],
  findings: ["FINDNG"],
  wind: ["WIND"],
  progress: ["WORK"],
};

describe("the layers of the elevation", () => {
  it.each(ELEVATION_LAYERS)("%s are drawn when they are shown, and not when they are taken away", (layer) => {
    const all = drawn(ELEVATION_LAYERS);
    for (const element of OWN[layer]) expect(all).toContain(element);
    const without = drawn(ELEVATION_LAYERS.filter((one) => one !== layer));
    for (const element of OWN[layer]) {
      // Closures behind the cladding are bent metal too, and go with the battens.
      if (element === "TRIM") continue;
      expect(without).not.toContain(element);
    }
  });

  it("keeps battens for when they are asked for", () => {
    expect(drawn(USUALLY_SHOWN)).not.toContain("BATTEN");
  });
});

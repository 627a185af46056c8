/** Layers of the elevation: what is taken away is not drawn, and what lies behind it is. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { designFile } from "../../src/design.ts";
import { intervalLength } from "../../src/geometry/interval.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { zoneViews } from "../../src/proof/context.ts";
import { zoneLights } from "../../src/proof/light/zone-light.ts";
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
    lights: new Set(shown).has("light") ? (zoneLights({ ...design, zones: zoneViews(design) }) ?? []) : [],
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
  closures: ["TRIM"],
  membrane: ["MEMBR"],
  lines: ["CTRLIN", "ROD"],
  findings: ["FINDNG"],
  wind: ["WIND"],
  light: ["LIGHT"],
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

  it("shows closures apart from the battens", () => {
    const of = (shown: readonly ElevationLayer[]): string =>
      drawElevation(design, {
        scale: 1 / 30,
        reader: ENGLISH_MM,
        findings: [],
        shown: new Set(shown),
      })
        .parts.flatMap(({ layers }) => layers.flatMap(({ elements }) => elements))
        .join();
    const marks = (kind: string): string[] =>
      design.facade.faces.flatMap(({ pieces }) =>
        pieces.filter((piece) => piece.kind === kind).map(({ mark }) => mark),
      );
    const [closure = "", batten = ""] = [marks("closure")[0], marks("batten")[0]];
    expect(of(["closures"])).toContain(`data-of="${closure}"`);
    expect(of(["closures"])).not.toContain(`data-of="${batten}"`);
    expect(of(["battens"])).not.toContain(`data-of="${closure}"`);
    expect(of(["battens"])).toContain(`data-of="${batten}"`);
  });

  it("says of each zone in light what its proof says", () => {
    const lights = zoneLights({ ...design, zones: zoneViews(design) }) ?? [];
    const { parts } = drawElevation(design, {
      scale: 1 / 30,
      reader: ENGLISH_MM,
      findings: [],
      shown: new Set(["light"]),
      lights,
    });
    const said = parts.flatMap(({ layers }) => layers.flatMap(({ elements }) => elements)).join("\n");
    // Letters are left out where a zone is too narrow for them.
    const wide = lights.filter(
      ({ view: { zone }, worst }) => worst && intervalLength(polygonBounds(zone.region).x) > 2000,
    );
    expect(wide.length).toBeGreaterThan(3);
    for (const { worst } of wide) expect(said).toContain(`>${worst?.point.year.uvMJYear.toFixed(1)} MJ/m²`);
  });

  it("keeps battens for when they are asked for", () => {
    expect(drawn(USUALLY_SHOWN)).not.toContain("BATTEN");
  });
});

/** Layers of the elevation: what is taken away is not drawn, and what lies behind it is. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { designFile } from "../../src/design.ts";
import { intervalLength } from "../../src/geometry/interval.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { faceLights } from "../../src/proof/light/face-lights.ts";
import { windUses } from "../../src/proof/wind/uses.ts";
import type { Item } from "../../src/scene/model.ts";
import { textWidth } from "../../src/scene/text-widths.ts";
import { packingMap } from "../../src/scene/views/packing-map.ts";
import { surveyItems } from "../../src/scene/views/survey-marks.ts";
import { STAGES } from "../../src/site/journal/entry.ts";
import { foldJournal } from "../../src/site/journal/fold.ts";
import { PLANE_KINDS } from "../../src/site/survey/packing.ts";
import { readingsOf } from "../../src/site/survey/reading.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { drawElevation } from "../../src/web/drawing/elevation.ts";
import { ELEVATION_LAYERS, type ElevationLayer, USUALLY_SHOWN } from "../../src/web/drawing/layers.ts";
import { surveyedWalls } from "../../src/web/survey/surveyed-walls.ts";
import { told } from "../helpers/journal.ts";

const text = readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8");
const made = designFile({ name: "demo", text });
if (made.kind !== "designed") throw new Error("the demo reads");
const { design } = made;

/** A stage for every piece, all stages among them. */
const { pieces } = foldJournal(
  design.facade.faces
    .flatMap(({ pieces }) => pieces)
    .map(({ mark }, i) =>
      told(i + 1, { place: { piece: mark }, body: { stage: STAGES[i % STAGES.length] } }),
    ),
);

const walls = [...surveyedWalls({ design, told: undefined, plane: undefined })];

/** Elements of the names of layers that are drawn (ISO 13567-2). */
function drawn(shown: Iterable<ElevationLayer>): Set<string> {
  const { parts } = drawElevation(design, {
    scale: 1 / 30,
    reader: ENGLISH_MM,
    findings: design.findings,
    shown: new Set(shown),
    uses: new Set(shown).has("wind") ? windUses(design) : [],
    lights: new Set(shown).has("light") ? faceLights(design) : [],
    walls: new Set(shown).has("survey") ? walls : [],
    told: new Set(shown).has("progress") ? pieces : undefined,
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
  survey: ["SURVEY"],
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
    const lights = faceLights(design);
    const { parts } = drawElevation(design, {
      scale: 1 / 30,
      reader: ENGLISH_MM,
      findings: [],
      shown: new Set(["light"]),
      lights,
    });
    const said = parts.flatMap(({ layers }) => layers.flatMap(({ elements }) => elements)).join("\n");
    // Letters are left out where a zone is too narrow for them.
    const wide = lights
      .flatMap(({ zones }) => zones)
      .filter(({ view: { zone }, worst }) => worst && intervalLength(polygonBounds(zone.region).x) > 2000);
    expect(wide.length).toBeGreaterThan(3);
    for (const { worst } of wide) expect(said).toContain(`>${worst?.point.year.uvMJYear.toFixed(1)} MJ/m²`);
  });

  it("keeps battens for when they are asked for", () => {
    expect(drawn(USUALLY_SHOWN)).not.toContain("BATTEN");
  });
});

describe("the survey over the elevation", () => {
  const texts = (items: readonly Item[]): string[] =>
    items.flatMap((item) =>
      item.kind === "text" && typeof item.text !== "string" && item.of !== undefined
        ? [`${item.of} ${item.at[1]} ${item.ink} ${say(item.text, ENGLISH_MM)}`]
        : [],
    );
  const crosses = (items: readonly Item[]) =>
    items.flatMap((item) =>
      item.kind === "line" && item.from[1] === item.to[1]
        ? [`${((item.from[0] + item.to[0]) / 2).toFixed(3)} ${item.from[1]}`]
        : [],
    );

  it.each(PLANE_KINDS)("is packed to the plane %s as the packing map of the face is", (plane) => {
    const [wall] = [...surveyedWalls({ design, told: undefined, plane })];
    // Only one face of the demo was read, so that no corner joins it to another.
    expect(wall?.packing?.kind).toBe(plane === "joined" ? "outer" : plane);
    if (!wall?.packing) throw new Error("the demo's front was read");
    const near = surveyItems(wall, 1 / 10);
    const map = packingMap(design, { face: wall.face, packing: wall.packing }, { scale: 1 / 10 });
    const marks = new Set(wall.packing.crossings.map(({ batten }) => batten));
    const mapped = texts(map?.items ?? []).filter((one) => marks.has(one.split(" ")[0] as string));
    expect(mapped).toHaveLength(wall.packing.crossings.length);
    expect(texts(near).sort()).toEqual(mapped.sort());
    const planed = texts(near).filter((one) => one.includes(" red "));
    expect(planed).toHaveLength(wall.packing.crossings.filter(({ planeOff }) => planeOff > 0).length);
  });

  it("has a cross at every place that was read, whatever the scale, and figures where they have room", () => {
    const [wall] = walls;
    const places = new Set(readingsOf(design.project).map(({ x, y }) => `${x.toFixed(3)} ${y}`));
    for (const scale of [1 / 10, 1 / 200]) {
      expect(new Set(crosses(wall ? surveyItems(wall, scale) : []))).toEqual(places);
    }
    const count = (scale: number) => (wall ? texts(surveyItems(wall, scale)).length : 0);
    expect(count(1 / 200)).toBeLessThan(count(1 / 10));
  });

  it("writes no packing over the screw of another crossing, whose it would seem to be", () => {
    const crossings = walls[0]?.packing?.crossings ?? [];
    for (const scale of [1 / 20, 1 / 50, 1 / 100]) {
      const figures = (walls[0] ? surveyItems(walls[0], scale) : []).filter(
        (item) => item.kind === "text" && item.of !== undefined,
      );
      expect(figures.length).toBeGreaterThan(10);
      for (const item of figures) {
        if (item.kind !== "text" || typeof item.text === "string") continue;
        const width =
          textWidth({ text: say(item.text, ENGLISH_MM), height: item.height, weight: "regular" }) / scale;
        const [x, y] = item.at;
        const [from, to] = item.anchor === "end" ? [x - width, x] : [x, x + width];
        const half = item.height / 2 / scale;
        const covered = crossings.filter((one) => one.x > from && one.x < to && Math.abs(one.y - y) < half);
        expect(covered).toEqual([]);
      }
    }
  });

  it("tells what is planed off however little room there is", () => {
    const [wall] = [...surveyedWalls({ design, told: undefined, plane: "planed 2" })];
    const far = wall ? texts(surveyItems(wall, 1 / 500)) : [];
    expect(far.filter((one) => one.includes(" red "))).toHaveLength(2);
    const sides = (wall ? surveyItems(wall, 1 / 500) : []).flatMap((item) =>
      item.kind === "text" && item.ink === "red" ? [item.anchor] : [],
    );
    expect(sides).toEqual(["end", "start"]);
  });

  it("adds what phones told, and shows nothing where nobody read a wall", () => {
    const { survey: _, ...project } = design.project;
    const unread = { facade: design.facade, project };
    expect([...surveyedWalls({ design: unread, told: { readings: [] }, plane: undefined })]).toEqual([]);
    const reading = told(1, {
      kind: "reading",
      place: { face: "west", x: 500, y: 700 },
      body: { outward: -3 },
    });
    const { readings } = foldJournal([reading]);
    const found = [...surveyedWalls({ design: unread, told: { readings }, plane: undefined })];
    expect(found.map(({ face, spots }) => [face, spots])).toEqual([
      ["west", [{ x: 500, y: 700, outward: -3, times: 1 }]],
    ]);
    // What is read has its own sign and is not a part of any piece.
    const figures = found
      .flatMap((wall) => surveyItems(wall, 1 / 50))
      .flatMap((item) =>
        item.kind === "text" && item.of === undefined && typeof item.text !== "string"
          ? [say(item.text, ENGLISH_MM)]
          : [],
      );
    expect(figures).toEqual(["−3"]);
  });
});

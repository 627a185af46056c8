/** P011: the weight of the cladding on screws that reach the studs through insulation. */
import { FOAM_TABLE, type FurringOverFoam, thickestFoam } from "../equations/hanging/foam-sheathing.ts";
import { screwSway } from "../equations/hanging/screw-sway.ts";
import { type Finding, finding, type Outcome, type Source, type WorkingInput } from "../findings/finding.ts";
import { regionArea } from "../geometry/region.ts";
import type { Layer } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { railsOf, widestGap, widestSpan } from "./spans.ts";
import { compared, holds, input, written } from "./working.ts";

const FOAM_SOURCE: Source = { kind: "document", ...FOAM_TABLE };
const MM2_PER_M2 = 1e6;
const G = 9.80665;

/** The table’s foam, in the words of the two languages of the project file; other insulation is not judged by it. */
const FOAM = /\bfoam|polysty|polyiso|\b(?:eps|xps|pir|pur)\b|mousse/i;
/** A bar held at both ends, and at one: how far it sags lies between. */
const HELD_BOTH = 12;
const HELD_ONE = 3;
const STEEL_MPA = 210_000;

type Insulation = Extract<Layer, { kind: "insulation" }>;

export function hungLoad(context: FaceContext): Finding[] {
  return context.zones.flatMap((view) => {
    const index = context.project.buildUps.findIndex(({ id }) => id === view.zone.buildUp);
    const buildUp = context.project.buildUps[index];
    const layers = (buildUp?.layers ?? []).filter((layer) => layer.kind === "insulation");
    const load = hung(view);
    if (!buildUp || layers.length === 0 || !load) return [];
    const path = `/buildUps/${index}`;
    return layers.some(({ bearing, material }) => bearing === "soft" || !FOAM.test(material))
      ? [throughSoft({ view, path, layers, load })]
      : [throughFirm(context, { view, path, layers, load, screw: buildUp.battenScrew })];
  });
}

interface HungLoad {
  readonly massKg: number;
  readonly areaM2: number;
  readonly kgPerM2: number;
}

interface Hung {
  readonly view: ZoneView;
  readonly path: string;
  readonly layers: readonly Insulation[];
  readonly load: HungLoad;
}

/** Cladding and battens over the area of the cladding. */
function hung({ pieces, battens }: ZoneView): HungLoad | undefined {
  const areaM2 =
    pieces.reduce((sum, { outline, holes }) => sum + regionArea({ outline, holes }), 0) / MM2_PER_M2;
  if (areaM2 === 0) return undefined;
  const massKg = [...pieces, ...battens].reduce((sum, piece) => sum + piece.massKg, 0);
  return { massKg, areaM2, kgPerM2: massKg / areaM2 };
}

function thickness(layers: readonly Insulation[]): number {
  return layers.reduce((sum, layer) => sum + layer.thickness, 0);
}

function loadInputs({ massKg, areaM2 }: HungLoad): WorkingInput[] {
  return [
    input("m", { meaning: "hung-mass", value: massKg, unit: "kg", basis: "typical" }),
    input("A", { meaning: "piece-area", value: areaM2, unit: "m²", basis: "derived" }),
  ];
}

function substituted({ massKg, areaM2, kgPerM2 }: HungLoad): string {
  return `${written(massKg)} / ${written(areaM2, 2)} = ${written(kgPerM2)}`;
}

function throughSoft({ view, path, layers, load }: Hung): Finding {
  return finding({
    code: "P011",
    outcome: "cannot evaluate",
    where: { path: `${path}/layers`, ...view.where },
    says: message("proof.hung.soft", {
      mass: load.kgPerM2,
      thickness: thickness(layers),
      material: layers.map(({ material }) => material),
    }),
    hint: message("proof.hung.ask"),
    demand: load.kgPerM2,
    unit: "kg/m²",
    working: { formula: "m / A", inputs: loadInputs(load), substituted: substituted(load) },
    source: FOAM_SOURCE,
  });
}

/** What a screw carries, and between what it would sag if its own stiffness were all that held it. */
function sway(
  { demands }: FaceContext,
  asked: FurringOverFoam & { readonly foamMm: number },
): { load: number; least: number; most: number } {
  const loadN = (asked.claddingKgPerM2 * G * asked.screwSpacingMm * asked.furringSpacingMm) / MM2_PER_M2;
  const bar = {
    loadN,
    gapMm: asked.foamMm,
    rootMm: asked.screwDiameterMm * demands.heat.fasteners.coreShare.value,
    modulusMPa: STEEL_MPA,
  };
  return {
    load: loadN,
    least: screwSway({ ...bar, stiffness: HELD_BOTH }),
    most: screwSway({ ...bar, stiffness: HELD_ONE }),
  };
}

function throughFirm(
  context: FaceContext,
  { view, path, layers, load, screw }: Hung & { screw: string },
): Finding {
  const found = context.project.stock.screws.find(({ id }) => id === screw);
  const screwSpacings = view.battens.map(({ fixings }) => widestGap(fixings.map(({ y }) => y)) ?? 0);
  const rails = railsOf(view);
  const furringSpacings = view.pieces.map((piece) => widestSpan(rails, piece) ?? 0);
  const asked = {
    screwDiameterMm: found?.diameter ?? 0,
    screwSpacingMm: Math.max(0, ...screwSpacings),
    furringSpacingMm: Math.max(0, ...furringSpacings),
    claddingKgPerM2: load.kgPerM2,
  };
  const limit = asked.screwSpacingMm > 0 && asked.furringSpacingMm > 0 ? thickestFoam(asked) : undefined;
  const demand = thickness(layers);
  const outcome: Outcome =
    limit === undefined ? "cannot evaluate" : holds("at most", { demand, limit }) ? "pass" : "fail";
  const key = { "cannot evaluate": "outside", pass: "within", fail: "over" }[outcome];
  return finding({
    code: "P011",
    outcome,
    where: { path: `${path}/layers`, ...view.where },
    says: message(`proof.hung.${key}`, {
      mass: load.kgPerM2,
      thickness: demand,
      limit: limit ?? 0,
      screws: asked.screwSpacingMm,
      furring: asked.furringSpacingMm,
    }),
    hint:
      outcome === "pass" && found
        ? message("proof.hung.foam-only", sway(context, { ...asked, foamMm: demand }))
        : message("proof.hung.ask"),
    ...(limit === undefined
      ? { demand: load.kgPerM2, unit: "kg/m²" }
      : compared("at most", { demand, limit, unit: "mm" })),
    working: { formula: "m / A", inputs: loadInputs(load), substituted: substituted(load) },
    source: FOAM_SOURCE,
  });
}

/** P037: what screws through outside insulation add to the wall's loss of heat; battens in a vented cavity add nothing. */
import { conductivityOf, type HeatDemand } from "../codes/heat.ts";
import { fastenerCorrection } from "../equations/heat/fastener-correction.ts";
import { layerResistance } from "../equations/heat/layer-resistance.ts";
import { resistanceLower } from "../equations/heat/resistance-lower.ts";
import { resistanceUpper } from "../equations/heat/resistance-upper.ts";
import { ventilatedResistance } from "../equations/heat/ventilated-resistance.ts";
import { type Finding, finding } from "../findings/finding.ts";
import { regionArea } from "../geometry/region.ts";
import type { Layer, Project } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

const MM2_PER_CM2 = 100;
const SOURCE = {
  kind: "document",
  document: "ISO 6946, 2017",
  clause: "Combined method; fasteners by Annex F",
} as const;

type Insulation = Extract<Layer, { kind: "insulation" }>;

export function heatLoss(context: FaceContext): Finding[] {
  return context.zones.flatMap((view) => {
    const index = context.project.buildUps.findIndex(({ id }) => id === view.zone.buildUp);
    const buildUp = context.project.buildUps[index];
    const layers = (buildUp?.layers ?? []).filter((layer) => layer.kind === "insulation");
    const fasteners = through(view);
    if (!buildUp || layers.length === 0 || fasteners === 0) return [];
    const screw = context.project.stock.screws.find(({ id }) => id === buildUp.battenScrew);
    const path = `/buildUps/${index}`;
    const outside = resistanceOf(layers);
    const { heat } = context.project.structure;
    const { surfaces, airLayer, fasteners: known, conductivity } = context.demands.heat;
    if (!heat || outside === undefined || !screw) {
      return [unknown(view, heat ? path : "/structure/heat")];
    }
    const series =
      surfaces.inside.value +
      heat.innerM2KPerW +
      layerResistance({
        thicknessMm: context.project.structure.sheathingThickness,
        conductivityWPerMK: heat.sheathingWPerMK,
      }) +
      outside;
    const { upper, lower } = limits(context, view, series);
    const whole = (upper + lower) / 2;
    const areaM2 = regionArea({ outline: view.zone.region, holes: [] }) / 1e6;
    const insulationMm = layers.reduce((sum, { thickness }) => sum + thickness, 0);
    const core = (Math.PI / 4) * (known.coreShare.value * screw.diameter) ** 2;
    const metal = conductivityOf(screw.metal, conductivity);
    const perM2 = fasteners / areaM2;
    const added = fastenerCorrection({
      factor: known.factor.value,
      conductivityWPerMK: metal.value,
      coreMm2: core,
      perM2,
      insulationMm,
      depthMm: insulationMm,
      insulationM2KPerW: outside,
      wholeM2KPerW: whole,
    });
    const demand = 100 * added * whole;
    const limit = known.negligibleShare.value;
    const small = holds("at most", { demand, limit });
    return [
      finding({
        code: "P037",
        outcome: small ? "pass" : "attention",
        where: { path, ...view.where },
        says: message(small ? "proof.heat.small" : "proof.heat.counts", {
          share: demand,
          bare: 1 / whole,
          screwed: 1 / whole + added,
          limit,
        }),
        ...(small ? {} : { hint: message("proof.heat.fewer") }),
        ...compared("at most", { demand, limit, unit: "%" }),
        working: {
          formula: "R_T = (R' + R'')/2; ΔU = α·λ_f·A_f·n/d · (R_1/R_T)²; ΔU/U = ΔU·R_T",
          inputs: [
            input("R'", { meaning: "upper-limit", value: upper, unit: "m²K/W", basis: heat.basis }),
            input("R''", { meaning: "lower-limit", value: lower, unit: "m²K/W", basis: heat.basis }),
            input("α", { meaning: "fastener-factor", unit: "1", ...known.factor }),
            input("λ_f", { meaning: "screw-conductivity", unit: "W/mK", ...metal }),
            input("A_f", {
              meaning: "screw-core",
              value: core,
              unit: "mm²",
              basis: known.coreShare.basis,
            }),
            input("n", { meaning: "screws-per-area", value: perM2, unit: "1/m²", basis: "derived" }),
            input("d", { meaning: "insulation", value: insulationMm, unit: "mm", basis: "given" }),
            input("R_1", {
              meaning: "insulation-resistance",
              value: outside,
              unit: "m²K/W",
              basis: heat.basis,
            }),
          ],
          substituted: `(${written(upper, 2)} + ${written(lower, 2)}) / 2 = ${written(whole, 2)}; ${known.factor.value} × ${metal.value} × ${written(core)}e-6 × ${written(perM2, 2)} / ${insulationMm / 1000} × (${written(outside, 2)} / ${written(whole, 2)})² = ${written(added, 4)}; ${written(added, 4)} × ${written(whole, 2)} = ${written(demand)} %`,
        },
        source: SOURCE,
        figures: [surfaces, airLayer, known, { metal }]
          .flatMap((group) => Object.values(group))
          .flatMap(({ figures }) => figures),
      }),
    ];
  });
}

/**
 * Screws of the zone's battens that pass insulation. ISO 6946 corrects for fasteners that penetrate an insulation layer; those driven
 * through a buck pass timber, which leads the heat there itself and shuts the insulation out over its whole section. A buck lines an
 * opening, so what it leads belongs to the linear loss at the frame (ISO 10211 or 14683), not to the plain wall's U that is judged here.
 */
function through({ battens }: ZoneView): number {
  return battens.reduce(
    (sum, { fixings }) =>
      sum + fixings.filter(({ through: layers }) => layers.some(({ what }) => what === "insulation")).length,
    0,
  );
}

function resistanceOf(layers: readonly Insulation[]): number | undefined {
  let sum = 0;
  for (const { thickness, conductivityWPerMK } of layers) {
    if (conductivityWPerMK === undefined) return undefined;
    sum += layerResistance({ thicknessMm: thickness, conductivityWPerMK });
  }
  return sum;
}

interface Limited {
  readonly project: Pick<Project, "structure">;
  readonly demands: { readonly heat: HeatDemand };
}

/** The limits of the wall's resistance through its studs, with the cavity as open as its least vent makes it (m²K/W). */
function limits(
  { project: { structure }, demands }: Limited,
  { vents }: ZoneView,
  series: number,
): { readonly upper: number; readonly lower: number } {
  const { studs, heat } = structure;
  const { surfaces, airLayer } = demands.heat;
  if (!heat) return { upper: series, lower: series };
  const frame = {
    mainM2KPerW: layerResistance({ thicknessMm: studs.depth, conductivityWPerMK: heat.fillWPerMK }),
    bridgeM2KPerW: layerResistance({ thicknessMm: studs.depth, conductivityWPerMK: heat.timberWPerMK }),
    bridgeShare: studs.width / studs.spacing,
  };
  const least = greatest(vents, ({ netCm2PerM }) => -netCm2PerM)?.netCm2PerM ?? 0;
  const limit = (through: typeof resistanceUpper): number =>
    ventilatedResistance({
      openingMm2PerM: least * MM2_PER_CM2,
      stillUpToMm2PerM: airLayer.stillUpTo.value,
      openFromMm2PerM: airLayer.openFrom.value,
      stillM2KPerW: through({
        seriesM2KPerW: series + surfaces.stillAir.value + surfaces.outside.value,
        ...frame,
      }),
      openM2KPerW: through({ seriesM2KPerW: series + surfaces.sheltered.value, ...frame }),
    });
  return { upper: limit(resistanceUpper), lower: limit(resistanceLower) };
}

function unknown(view: ZoneView, path: string): Finding {
  return finding({
    code: "P037",
    outcome: "cannot evaluate",
    where: { path, ...view.where },
    says: message("proof.heat.unknown"),
    hint: message("proof.heat.enter"),
    source: SOURCE,
  });
}

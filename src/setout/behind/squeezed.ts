/**
 * Battens over soft insulation: how hard each screw is driven sets the batten's plane. The pull that sinks a batten as far
 * as faces may differ is worked from the insulation's stress at 10 % (EN 826), taken as straight up to there; a driver
 * pulls several times as hard, so it is never a pass until something else holds the battens.
 */
import { type Finding, finding } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { Piece } from "../facade.ts";
import { battenStock, buildUpOf } from "../resolve.ts";
import type { Wall } from "./wall.ts";

const TENTH = 0.1;
const PA_PER_KPA = 1000;
const MM2_PER_M2 = 1e6;

export function squeezedInsulation({ project, face, grounds, laid }: Wall): Finding[] {
  return grounds.flatMap(({ zone }): Finding[] => {
    const { layers } = buildUpOf(project, zone);
    const index = layers.findIndex((layer) => layer.kind === "insulation" && layer.bearing === "soft");
    const layer = layers[index];
    const batten = layers.slice(index + 1).find(({ kind }) => kind === "batten");
    if (layer?.kind !== "insulation" || batten?.kind !== "batten") return [];
    const path = `/buildUps/${project.buildUps.findIndex(({ id }) => id === zone.buildUp)}/layers/${index}`;
    const where = { path, face: face.id, zone: zone.id };
    const said = { code: "S026", where, source: { kind: "common practice" } } as const;
    if (layer.battensHeldBy) {
      const how = layer.battensHeldBy.replace(" ", "-");
      return [finding({ outcome: "pass", says: message(`setout.squeeze.held.${how}`), ...said })];
    }
    const stress = layer.stressAt10PercentKPa;
    const spacing = screwSpacing(laid.filter((one) => one.kind === "batten" && one.zone === zone.id));
    if (!stress || spacing === undefined) {
      return [
        finding({
          outcome: "cannot evaluate",
          says: message("setout.squeeze.unknown", { thickness: layer.thickness }),
          hint: message("setout.squeeze.enter"),
          ...said,
        }),
      ];
    }
    const sink = project.limits.facesMeetWithin;
    const width = battenStock(project, batten.stock).width;
    const strain = sink.value / layer.thickness;
    const pull = Math.round(
      ((stress.value * PA_PER_KPA * Math.min(strain, TENTH)) / TENTH) * ((width * spacing) / MM2_PER_M2),
    );
    const given = (symbol: string, meaning: string, value: number, unit: string) =>
      ({ symbol, meaning: message(`setout.squeeze.${meaning}`), value, unit, basis: "given" }) as const;
    return [
      finding({
        outcome: "attention",
        says: message("setout.squeeze.sinks", { pull, sink: sink.value, thickness: layer.thickness }),
        hint: message("setout.squeeze.hint"),
        demand: pull,
        unit: "N",
        working: {
          formula: "F = σ₁₀ · (s / t) / 0.1 · b · a",
          inputs: [
            { ...given("σ₁₀", "stress", stress.value, "kPa"), basis: stress.basis },
            { ...given("s", "sink", sink.value, "mm"), basis: sink.basis },
            given("t", "thickness", layer.thickness, "mm"),
            given("b", "width", width, "mm"),
            { ...given("a", "spacing", spacing, "mm"), basis: "derived" },
          ],
          substituted: `${stress.value} · (${sink.value} / ${layer.thickness}) / 0.1 · ${width} · ${spacing} = ${pull}`,
        },
        ...said,
      }),
    ];
  });
}

/** Mean distance of the screws along battens (mm); undefined where no batten has two. */
function screwSpacing(battens: readonly Piece[]): number | undefined {
  let [length, gaps] = [0, 0];
  for (const { fixings } of battens) {
    if (fixings.length < 2) continue;
    const ys = fixings.map(({ y }) => y);
    length += Math.max(...ys) - Math.min(...ys);
    gaps += fixings.length - 1;
  }
  return gaps > 0 ? snap(Math.round(length / gaps)) : undefined;
}

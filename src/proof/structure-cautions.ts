/** P053: what the proof of structure leaves out: earthquake, knocks near the ground, heavy cladding. */
import { type Finding, finding } from "../findings/finding.ts";
import { regionArea } from "../geometry/region.ts";
import { message } from "../text/message.ts";
import type { ProofContext, ZoneView } from "./context.ts";
import { greatest } from "./working.ts";

/** Common practice: from this weight on an engineer looks at earthquake too (kg/m²). */
const HEAVY_KG_PER_M2 = 50;
const MM2_PER_M2 = 1e6;

export function structureCautions({ demands, zones }: ProofContext): Finding[] {
  if (!demands.structure.known) return [];
  const heaviest = greatest(
    zones.map((view) => ({ view, kgPerM2: weight(view) })),
    ({ kgPerM2 }) => kgPerM2,
  );
  return [
    caution("/site/wind", message("structure.caution.left-out")),
    ...(heaviest && heaviest.kgPerM2 > HEAVY_KG_PER_M2
      ? [
          caution(
            heaviest.view.claddingPath,
            message("structure.caution.heavy", { weight: heaviest.kgPerM2, most: HEAVY_KG_PER_M2 }),
          ),
        ]
      : []),
  ];
}

function caution(path: string, says: Finding["says"]): Finding {
  return finding({
    code: "P053",
    outcome: "attention",
    where: { path },
    says,
    hint: message("structure.caution.engineer"),
    source: { kind: "common practice" },
  });
}

function weight({ pieces, battens }: ZoneView): number {
  const area = pieces.reduce((sum, { outline, holes }) => sum + regionArea({ outline, holes }), 0);
  if (area === 0) return 0;
  return ([...pieces, ...battens].reduce((sum, { massKg }) => sum + massKg, 0) * MM2_PER_M2) / area;
}

/** P038: the corrosion resistance class that the place asks, against the metal of each screw. */
import { type CorrosionDemand, className, classOf } from "../codes/metals.ts";
import { chlorideExposure } from "../equations/durability/chloride-exposure.ts";
import { corrosionClass } from "../equations/durability/corrosion-class.ts";
import { sulphurExposure } from "../equations/durability/sulphur-exposure.ts";
import { type Finding, finding } from "../findings/finding.ts";
import type { Screw } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import type { ProofContext } from "./context.ts";
import { screwsInUse } from "./screws-in-use.ts";
import { compared, holds, input } from "./working.ts";

/** The other transcription of the table sets its bounds of 1 and 0.25 km at 5 and 0.5 km. */
const OTHER_BOUNDS: readonly (readonly [km: number, asIf: number])[] = [
  [0.5, 0.25],
  [5, 1],
];
const EN = { kind: "document", document: "EN 1993-1-4", clause: "Annex A" } as const;

export function screwCorrosion(context: ProofContext): Finding[] {
  const { exposure } = context.project.site;
  if (!exposure) {
    return [
      finding({
        code: "P038",
        outcome: "cannot evaluate",
        where: { path: "/site/exposure" },
        says: message("proof.corrosion.no-place"),
        hint: message("proof.corrosion.enter-place"),
        source: EN,
      }),
    ];
  }
  const { corrosion } = context.demands;
  // In the cavity nothing washes the screws: factor F3.
  const washingFactor = corrosion.unwashed.value;
  const needed = (seaKm: number): { readonly sum: number; readonly grade: number } => {
    // No salted road is a road beyond any distance.
    const roadKm = exposure.saltedRoadKm ?? Number.POSITIVE_INFINITY;
    const chlorideFactor = chlorideExposure({ seaKm, roadKm, shoreFactor: corrosion.shore.value });
    const sulphurFactor = sulphurExposure(exposure);
    return {
      sum: chlorideFactor + sulphurFactor + washingFactor,
      grade: corrosionClass({ chlorideFactor, sulphurFactor, washingFactor }),
    };
  };
  const printed = needed(exposure.seaKm);
  const other = needed(OTHER_BOUNDS.find(([km]) => exposure.seaKm <= km)?.[1] ?? exposure.seaKm);
  return screwsInUse(context).map(({ screw, path }) =>
    judged(screw, { path, printed, other, exposure, corrosion }),
  );
}

interface Needed {
  readonly sum: number;
  readonly grade: number;
}

function judged(
  { id, metal }: Screw,
  {
    path,
    printed,
    other,
    exposure,
    corrosion: { shore, unwashed },
  }: {
    path: string;
    printed: Needed;
    other: Needed;
    exposure: NonNullable<ProofContext["project"]["site"]["exposure"]>;
    corrosion: CorrosionDemand;
  },
): Finding {
  const where = { path: `${path}/metal` };
  const needs = className(printed.grade);
  if (metal === undefined) {
    return finding({
      code: "P038",
      outcome: "cannot evaluate",
      where,
      says: message("proof.corrosion.no-metal", { screw: id, needs }),
      hint: message("proof.corrosion.enter-metal"),
      source: EN,
    });
  }
  const stands = classOf(metal);
  if (!stands) {
    return finding({
      code: "P038",
      outcome: "not applicable",
      where,
      says: message("proof.corrosion.not-stainless", { screw: id, metal: metalName(metal), needs }),
      source: EN,
    });
  }
  const asPrinted = holds("at most", { demand: printed.grade, limit: stands.grade });
  const asOther = holds("at most", { demand: other.grade, limit: stands.grade });
  const key = !asPrinted ? "weak" : asOther ? "stands" : "disputed";
  return finding({
    code: "P038",
    outcome: key === "weak" ? "fail" : key === "disputed" ? "attention" : "pass",
    where,
    says: message(`proof.corrosion.${key}`, {
      screw: id,
      metal: metalName(metal),
      needs,
      other: className(other.grade),
      stands: className(stands.grade),
    }),
    ...(key === "stands" ? {} : { hint: message("proof.corrosion.better") }),
    ...compared("at most", { demand: printed.grade, limit: stands.grade, unit: "class" }),
    working: {
      formula: "F_1 + F_2 + F_3 → class",
      inputs: [
        input("F_1 + F_2", {
          meaning: "place-factors",
          value: printed.sum - unwashed.value,
          unit: "1",
          basis: exposure.basis,
        }),
        input("F_3", {
          meaning: "washing-factor",
          value: unwashed.value,
          unit: "1",
          basis: unwashed.basis,
        }),
        input("CRC", { meaning: "metal-class", value: stands.grade, unit: "class", basis: stands.basis }),
      ],
      substituted: `${signed(printed.sum - unwashed.value)} − ${-unwashed.value} = ${signed(printed.sum)} → ${needs}`,
    },
    source: EN,
    figures: [...shore.figures, ...unwashed.figures],
  });
}

/** With the minus sign of print, as the rest of a working has. */
function signed(value: number): string {
  return String(value).replace("-", "−");
}

function metalName(metal: NonNullable<Screw["metal"]>) {
  return message(`proof.metal.${metal.replaceAll(" ", "-")}`);
}

/** What the steps of the saw ask of table, fence and those who lift, against what the project says there is. */
import { type Finding, finding } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { numberedCuts } from "../cut-order.ts";
import { type BeyondReach, beyondReach, type SawLimit } from "../verify/saw-steps.ts";
import type { CutPlan, SheetPart } from "./plan.ts";

const MM_PER_M = 1000;

const UNITS: Readonly<Record<SawLimit, "mm" | "kg">> = { table: "mm", fence: "mm", lift: "kg" };

/** C005: each limit that the project gives of its saw, over all sheets; nothing is said of limits that it does not give. */
export function sawFindings(project: Project, { sheets }: CutPlan): Finding[] {
  const { saw } = project.stock;
  const limits = (["table", "fence", "lift"] as const).filter((limit) => saw[limit] !== undefined);
  const sawn = sheets.flatMap((part) => {
    const kgPerM2 = weightOf(project, part);
    return part.result.plan.sheets.map(({ tree, placements }) => ({ kgPerM2, tree, placements }));
  });
  if (sawn.length === 0) return [];
  return limits.map((limit) => {
    const beyond = sawn.flatMap(({ kgPerM2, tree, placements }, index) =>
      beyondReach(numberedCuts(tree), { [limit]: saw[limit] }, { kerf: saw.kerf, kgPerM2 }).map((one) => ({
        ...one,
        sheet: index + 1,
        marks: placements.map(({ demandId }) => demandId),
      })),
    );
    return reachFinding(limit, beyond);
  });
}

interface Beyond extends BeyondReach {
  /** Numbered through the whole building. */
  readonly sheet: number;
  readonly marks: readonly string[];
}

function reachFinding(limit: SawLimit, beyond: readonly Beyond[]): Finding {
  const path = `/stock/saw/${limit}`;
  const [first, ...others] = beyond;
  if (first === undefined) {
    return finding({
      code: "C005",
      outcome: "pass",
      where: { path },
      says: message(`schedule.saw.within.${limit}`, {}),
    });
  }
  const worst = others.reduce((most, one) => (one.asks > most.asks ? one : most), first);
  return finding({
    code: "C005",
    outcome: "fail",
    where: { path, marks: [...new Set(beyond.flatMap(({ marks }) => marks))] },
    says: message(`schedule.saw.beyond.${limit}`, {
      count: beyond.length,
      sheet: worst.sheet,
      cut: worst.cut,
      asks: worst.asks,
      has: worst.has,
    }),
    hint: message(`schedule.saw.beyond.${limit}.hint`),
    demand: worst.asks,
    limit: worst.has,
    unit: UNITS[limit],
    ratio: worst.asks / worst.has,
  });
}

/** Kilograms a square metre, the most of its claddings. */
function weightOf(project: Project, { claddings, thickness }: SheetPart): number {
  const densities = project.claddings.flatMap((one) =>
    one.kind === "sheets" && claddings.includes(one.id) ? [one.dataSheet.densityKgM3] : [],
  );
  return (Math.max(0, ...densities) * thickness) / MM_PER_M;
}

/** Rules on boards themselves: their proportion, and what the lots can give. */
import type { Demands, ProportionDemand } from "../../codes/demands.ts";
import type { BoardCladding, Cladding, Project } from "../../project/schema/project.ts";
import { type Message, message } from "../../text/message.ts";
import type { RuleSaid } from "./model.ts";

export interface CladdingVerdict {
  readonly said: readonly RuleSaid[];
  /** Rule families that allow the given thickness and refuse this one. */
  readonly broken: number;
}

/** What holds for a cladding of a thickness whatever stands behind it. */
export function judgeCladding(
  { project, demands }: { readonly project: Project; readonly demands: Demands },
  cladding: Cladding,
  thickness: number,
): CladdingVerdict {
  if (cladding.kind !== "boards") return { said: [], broken: 0 };
  const width = Math.max(...cladding.widths);
  const refusedAt = (t: number): ProportionDemand[] =>
    demands.proportion.filter((rule) => !allows(rule, { width, thickness: t }));
  const refused = refusedAt(thickness);
  const asGiven = refusedAt(cladding.thickness);
  return {
    said: [...proportion(demands, refused, { width, thickness }), ...lots(project, cladding, thickness)],
    broken: refused.filter((rule) => !asGiven.includes(rule)).length,
  };
}

interface Section {
  readonly width: number;
  readonly thickness: number;
}

/** Ratios are compared as products, so that 126 : 18 is 7 : 1 exactly. */
function allows({ least, most, widestMm }: ProportionDemand, { width, thickness }: Section): boolean {
  return (
    (most === undefined || width <= most * thickness) &&
    (least === undefined || width >= least * thickness) &&
    (widestMm === undefined || width <= widestMm)
  );
}

/** Families disagree: only what all of them refuse fails. */
function proportion(
  demands: Demands,
  refused: readonly ProportionDemand[],
  { width, thickness }: Section,
): RuleSaid[] {
  if (refused.length === 0) return [];
  const allowed = demands.proportion.filter((rule) => !refused.includes(rule));
  const ratio = width / thickness;
  const limits = refused.flatMap(({ most }) => (most !== undefined && ratio > most ? [most] : []));
  return [
    {
      rule: "proportion",
      outcome: allowed.length === 0 ? "fail" : "attention",
      zones: [],
      demand: ratio,
      ...(limits.length > 0 && { limit: Math.min(...limits) }),
      unit: "1",
      says: message(allowed.length === 0 ? "proof.proportion.refused" : "proof.proportion.disagreed", {
        width,
        thickness,
        ratio,
        refused: refused.map(named),
        allowed: allowed.map(named),
      }),
    },
  ];
}

function named({ id, least, most }: ProportionDemand): Message {
  const values = { rule: message(`proof.rule.${id}`), least: least ?? 0, most: most ?? 0 };
  return message(least === undefined ? "proof.proportion.up-to" : "proof.proportion.between", values);
}

/** A lot without one board as thick as is asked gives nothing; one with some gives less than was counted on. */
function lots({ pile }: Project, cladding: BoardCladding, thickness: number): RuleSaid[] {
  return (cladding.lots ?? []).flatMap((lot): RuleSaid[] => {
    const boards = (pile?.boards ?? []).filter((board) => board.lot === lot);
    const thick = boards.filter((board) => board.thickness >= thickness).length;
    if (thick === boards.length) return [];
    const most = Math.max(...boards.map((board) => board.thickness));
    const least = Math.min(...boards.map((board) => board.thickness));
    const values = { lot, thickness, most, thin: boards.length - thick, boards: boards.length };
    return [
      {
        rule: "lot",
        outcome: thick === 0 ? "fail" : "attention",
        zones: [],
        demand: thickness,
        limit: thick === 0 ? most : least,
        unit: "mm",
        says: message(thick === 0 ? "planes.lot.none" : "planes.lot.some", values),
      },
    ];
  });
}

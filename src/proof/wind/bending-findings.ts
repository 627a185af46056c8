/** Findings on stress and on sag of the members of a zone in wind. */
import { type Finding, finding, type Outcome } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import type { FaceContext } from "../context.ts";
import { compared, holds, input, written } from "../working.ts";
import { type BentMember, bentMembers, mostSagged, mostStressed } from "./bending.ts";
import { type Part, type SagLimit, sagLimit } from "./sag-limit.ts";
import { windStudies, type ZoneStudy } from "./study.ts";

const CODES = {
  skin: { strength: "P046", sag: "P047" },
  carriers: { strength: "P048", sag: "P049" },
} as const;

function pathOf({ view }: ZoneStudy, part: Part): string {
  return part === "skin" ? view.claddingPath : "/stock/battens";
}

function membersOf(study: ZoneStudy, part: Part): ZoneStudy["skins"] {
  return part === "skin" ? study.skins : study.carriers;
}

export function strengthInWind(context: FaceContext, part: Part): Finding[] {
  return windStudies(context).flatMap((study) => {
    const { bent, lacks } = bentMembers(study, context.project, membersOf(study, part));
    const worst = mostStressed(bent);
    return [
      ...lacks.map((lack) => lacking(study, CODES[part].strength, { part, lack })),
      ...(worst ? [stressed(study, worst, part)] : []),
    ];
  });
}

export function sagInWind(context: FaceContext, part: Part): Finding[] {
  return windStudies(context).flatMap((study) => {
    const { bent } = bentMembers(study, context.project, membersOf(study, part));
    const worst = mostSagged(bent);
    if (!worst) return [];
    const limit = sagLimit(study, context.project, part);
    return [
      limit
        ? sagged(study, worst, { part, ...limit })
        : lacking(study, CODES[part].sag, { part, lack: "sag-limit" }),
    ];
  });
}

function lacking(
  study: ZoneStudy,
  code: Finding["code"],
  { part, lack }: { readonly part: Part; readonly lack: string },
): Finding {
  return finding({
    code,
    outcome: "cannot evaluate",
    where: {
      path:
        lack === "sag-limit"
          ? "/limits/sagSpanOver"
          : `${study.view.claddingPath}${part === "skin" ? "/dataSheet" : ""}`,
      ...study.view.where,
    },
    says: message(`structure.lack.${lack}`),
    source: { kind: "your data sheet" },
  });
}

function stressed(study: ZoneStudy, worst: BentMember, part: Part): Finding {
  const { member, grade, stressMPa } = worst;
  const limit = grade.strengthMPa;
  const passes = holds("at most", { demand: stressMPa, limit });
  const outcome: Outcome = passes ? "pass" : "fail";
  const { strength } = study.wind;
  return finding({
    code: CODES[part].strength,
    outcome,
    where: { path: pathOf(study, part), marks: [member.piece.mark], ...study.view.where },
    says: message(`structure.bending.${passes ? "bears" : "breaks"}`, {
      piece: member.piece.kind,
      mark: member.piece.mark,
      stress: stressMPa,
      strength: limit,
    }),
    ...(passes ? {} : { hint: message("structure.bending.closer") }),
    ...compared("at most", { demand: stressMPa, limit, unit: "MPa" }),
    working: {
      formula: "6·M / (b·t²), M = m·w·k",
      inputs: [
        input("w", { meaning: "net-wind", value: worst.pressurePa, unit: "Pa", basis: worst.wind }),
        input("k", { meaning: "wind-factor", value: strength.value, unit: "1", basis: strength.basis }),
        input("m", {
          meaning: "moment-of-one",
          value: member.moment,
          unit: momentUnit(part),
          basis: "derived",
        }),
        input("t", { meaning: "thickness", value: member.piece.cut.thickness, unit: "mm", basis: "given" }),
        input("R", { meaning: "bending-strength", value: limit, unit: "MPa", basis: grade.basis }),
      ],
      substituted: `6 · ${written(member.moment)} · ${written(worst.pressurePa / 1e6, 6)} · ${written(strength.value, 2)} / (${written(widthOf(worst, part))} · ${written(member.piece.cut.thickness)}²) = ${written(stressMPa, 2)}`,
    },
    source: { kind: "document", document: "Elastic bending of continuous beams" },
    figures: [...strength.figures],
  });
}

function momentUnit(part: Part): string {
  return part === "skin" ? "mm²" : "mm³";
}

/** A strip of a board or sheet is a millimetre wide. */
function widthOf({ member }: BentMember, part: Part): number {
  return part === "skin" ? 1 : member.piece.cut.width;
}

function sagged(
  study: ZoneStudy,
  worst: BentMember,
  { part, over, basis }: SagLimit & { readonly part: Part },
): Finding {
  const { member, grade, sagMm, spanMm } = worst;
  const limit = spanMm / over;
  const passes = holds("at most", { demand: sagMm, limit });
  const { sag } = study.wind;
  return finding({
    code: CODES[part].sag,
    outcome: passes ? "pass" : "fail",
    where: { path: pathOf(study, part), marks: [member.piece.mark], ...study.view.where },
    says: message(`structure.sag.${passes ? "stiff" : "slack"}`, {
      piece: member.piece.kind,
      mark: member.piece.mark,
      sag: sagMm,
      limit,
      over,
    }),
    ...(passes ? {} : { hint: message("structure.bending.closer") }),
    ...compared("at most", { demand: sagMm, limit, unit: "mm" }),
    working: {
      formula: "y·w·k / (E·b·t³/12) ≤ l / n",
      inputs: [
        input("w", { meaning: "net-wind", value: worst.pressurePa, unit: "Pa", basis: worst.wind }),
        input("k", { meaning: "wind-factor", value: sag.value, unit: "1", basis: sag.basis }),
        input("E", { meaning: "modulus", value: grade.modulusMPa, unit: "MPa", basis: grade.basis }),
        input("t", { meaning: "thickness", value: member.piece.cut.thickness, unit: "mm", basis: "given" }),
        input("l", { meaning: "span", value: spanMm, unit: "mm", basis: "derived" }),
        input("n", { meaning: "sag-span-over", value: over, unit: "1", basis }),
      ],
      substituted: `${written(Math.abs(member.bent?.sag.stiff ?? 0), 0)} · ${written(worst.pressurePa / 1e6, 6)} · ${written(sag.value, 2)} / (${grade.modulusMPa} · ${written(widthOf(worst, part))} · ${written(member.piece.cut.thickness)}³/12) = ${written(sagMm, 2)} ${passes ? "≤" : ">"} ${written(spanMm)} / ${over} = ${written(limit, 2)}`,
    },
    source: { kind: "document", document: "Elastic bending of continuous beams" },
    figures: [...sag.figures],
  });
}

/** Findings on the screws of a zone in wind: the one used most, with what it holds. */
import { type Basis, type Finding, finding } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import type { FaceContext } from "../context.ts";
import { compared, greatest, holds, input, written } from "../working.ts";
import { type Member, screwShares } from "./members.ts";
import { type ScrewUse, screwJudge } from "./screw-hold.ts";
import { closerAlong, closerRows } from "./screw-mend.ts";
import { windStudies, type ZoneStudy } from "./study.ts";

/** How far each screw of some members is used. */
function screwUses(study: ZoneStudy, context: FaceContext, members: readonly Member[]): ScrewUse[] {
  const judge = screwJudge(study, context.project);
  return members.flatMap((member) => judge.uses(member, screwShares(member)));
}

export function screwsInWind(
  context: FaceContext,
  { code, of }: { readonly code: "P050" | "P051"; readonly of: "skins" | "carriers" },
): Finding[] {
  return windStudies(context).flatMap((study) => {
    const uses = screwUses(study, context, study[of]);
    const worst = greatest(uses, ({ use }) => use);
    if (!worst) return [];
    const lacks = [...new Set(uses.flatMap((one) => one.lacks))];
    return [
      ...lacks.map((key) => lacking(study, context, { code, key, worst })),
      ...(worst.held ? [judged(study, context, { code, worst })] : []),
    ];
  });
}

function lacking(
  study: ZoneStudy,
  { project }: FaceContext,
  { code, key, worst }: { readonly code: "P050" | "P051"; readonly key: string; readonly worst: ScrewUse },
): Finding {
  const index = project.stock.screws.findIndex(({ id }) => id === worst.share.fixing.screw);
  const onSheet = /\.(?:sheet|strength|material)-/.test(key);
  return finding({
    code,
    outcome: "cannot evaluate",
    where: {
      path: onSheet ? `${study.view.claddingPath}/dataSheet` : `/stock/screws/${index}/declared`,
      marks: [worst.member.piece.mark],
      ...study.view.where,
    },
    says: message(key, { screw: worst.share.fixing.screw }),
    hint: message("structure.screw.pulled", { pull: worst.pullN, shear: worst.shearN }),
    demand: worst.pullN,
    unit: "N",
    source: { kind: "your data sheet" },
  });
}

function judged(
  study: ZoneStudy,
  context: FaceContext,
  { code, worst }: { readonly code: "P050" | "P051"; readonly worst: ScrewUse },
): Finding {
  const { member, share, held, governs, use, pullN, shearN } = worst;
  const passes = holds("at most", { demand: use, limit: 1 });
  const { strength } = study.wind;
  const basis: Basis = worst.basis;
  const newton = held?.newton ?? 0;
  const closerBy = code === "P050" ? closerRows : closerAlong;
  const closer = passes ? undefined : closerBy(study, context, worst);
  const mend = closer
    ? { hint: closer.says, choices: [closer], ...(closer.edit && { edit: closer.edit }) }
    : { hint: message("structure.screw.more") };
  return finding({
    code,
    outcome: passes ? "pass" : "fail",
    where: {
      path: study.view.claddingPath,
      marks: [member.piece.mark],
      at: [share.fixing.x, share.fixing.y],
      ...study.view.where,
    },
    says: message(`structure.screw.${passes ? "holds" : "gives"}`, {
      mark: member.piece.mark,
      pull: pullN,
      shear: shearN,
      held: newton,
      way: message(`structure.way.${governs}`),
      percent: use * 100,
    }),
    ...(passes ? {} : mend),
    ...compared("at most", { demand: use, limit: 1, unit: "1" }),
    working: {
      formula: `F = w·k·A; R = ${held?.formula ?? ""}`,
      inputs: [
        input("w", { meaning: "net-wind", value: worst.pullPa, unit: "Pa", basis: worst.wind }),
        input("k", { meaning: "wind-factor", value: strength.value, unit: "1", basis: strength.basis }),
        input("A", { meaning: "screw-area", value: share.areaMm2 / 1e6, unit: "m²", basis: "derived" }),
        input("V", { meaning: "screw-weight", value: shearN, unit: "N", basis: "typical" }),
        input("R", { meaning: "screw-holds", value: newton, unit: "N", basis }),
      ],
      substituted: `F = ${written(worst.pullPa)} · ${written(strength.value, 2)} · ${written(share.areaMm2 / 1e6, 4)} = ${written(pullN)}; R = ${held?.substituted ?? ""} = ${written(newton)}`,
    },
    source: held?.source ?? study.wind.source,
    figures: [...strength.figures],
  });
}

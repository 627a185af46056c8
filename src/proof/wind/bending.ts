/** Stress and sag of a zone's boards, sheets, rails and battens in wind, the worst of each. */
import { weaker } from "../../codes/rule-value.ts";
import { bendingStress } from "../../equations/beams/bending-stress.ts";
import type { Basis } from "../../findings/finding.ts";
import type { FacelessProject } from "../context.ts";
import { greatest } from "../working.ts";
import type { Member } from "./members.ts";
import { windOn, type ZoneStudy } from "./study.ts";

export interface Grade {
  /** Ready to compare (MPa). */
  readonly strengthMPa: number;
  readonly modulusMPa: number;
  readonly basis: Basis;
}

export type GradeAnswer = Grade | { readonly lack: string };

export interface BentMember {
  readonly member: Member;
  readonly grade: Grade;
  readonly strip: string;
  /** Of the two ways that wind goes, the stronger (Pa), before the factors of strength and sag. */
  readonly pressurePa: number;
  /** Of that pressure. */
  readonly wind: Basis;
  readonly stressMPa: number;
  readonly sagMm: number;
  /** Of the span where it sags most (mm). */
  readonly spanMm: number;
}

const PA_PER_MPA = 1e6;

/** What a member is made of, or what is missing to know it. */
function gradeOf({ view, structure }: ZoneStudy, project: FacelessProject, { piece }: Member): GradeAnswer {
  const { cladding } = view;
  if (piece.kind === "sheet" && cladding.kind === "sheets") {
    const { bendingStrengthMPa, modulusMPa, strengthLevel, materialFactor, basis } = cladding.dataSheet;
    if (bendingStrengthMPa === undefined || modulusMPa === undefined) return { lack: "sheet-strength" };
    if (strengthLevel === undefined) return { lack: "strength-level" };
    if (strengthLevel === "characteristic" && materialFactor === undefined)
      return { lack: "material-factor" };
    const factor = strengthLevel === "design" ? 1 : (materialFactor ?? 1);
    return { strengthMPa: bendingStrengthMPa / factor, modulusMPa, basis };
  }
  const named =
    piece.kind === "board"
      ? cladding.kind === "boards"
        ? cladding.grade
        : undefined
      : project.stock.battens.find(({ id }) => id === piece.stock)?.grade;
  const { timber } = structure;
  const { lowest, bending } = timber;
  if (named)
    return {
      strengthMPa: named.bendingMPa * bending.value,
      modulusMPa: named.modulusMPa,
      basis: weaker(named.basis, bending.basis),
    };
  return {
    strengthMPa: lowest.bending.value * bending.value,
    modulusMPa: lowest.modulus.value,
    basis: weaker("typical", weaker(lowest.bending.basis, bending.basis)),
  };
}

export interface BentMembers {
  readonly bent: readonly BentMember[];
  /** Messages of what is missing of those that cannot be judged. */
  readonly lacks: readonly string[];
}

/** Strength and sag judge the same members of a study one after the other. */
const BENT = new WeakMap<readonly Member[], BentMembers>();

/** The members of a study as they bend, worked out once. */
export function bentMembers(
  study: ZoneStudy,
  project: FacelessProject,
  members: readonly Member[],
): BentMembers {
  const known = BENT.get(members);
  if (known) return known;
  const found = bend(study, project, members);
  BENT.set(members, found);
  return found;
}

function bend(study: ZoneStudy, project: FacelessProject, members: readonly Member[]): BentMembers {
  const grades = new Map<string, GradeAnswer>();
  const lacks = new Set<string>();
  const relief = 1 - (project.site.wind?.reliefPercent?.value ?? 0) / 100;
  const bent = members.flatMap((member): BentMember[] => {
    const { kind, stock } = member.piece;
    const key = `${kind} ${stock}`;
    const grade = grades.get(key) ?? gradeOf(study, project, member);
    grades.set(key, grade);
    if ("lack" in grade) {
      lacks.add(grade.lack);
      return [];
    }
    const net = windOn(study, member);
    const skin = member.piece.kind === "board" || member.piece.kind === "sheet";
    const pressurePa = Math.max(net.pullPa, net.pushPa) * (skin ? relief : 1);
    const widthMm = skin ? 1 : member.piece.cut.width;
    const thicknessMm = member.piece.cut.thickness;
    const unit = pressurePa / PA_PER_MPA;
    const stressMPa = bendingStress({
      momentNmm: member.moment * unit * study.wind.strength.value,
      widthMm,
      thicknessMm,
    });
    const stiff = (grade.modulusMPa * widthMm * thicknessMm ** 3) / 12;
    const sagMm = (Math.abs(member.bent?.sag.stiff ?? 0) * unit * study.wind.sag.value) / stiff;
    return [
      {
        member,
        grade,
        strip: net.strip,
        pressurePa,
        wind: net.basis,
        stressMPa,
        sagMm,
        spanMm: sagSpan(member),
      },
    ];
  });
  return { bent, lacks: [...lacks] };
}

/** The span that the largest sag lies in; an arm counts twice (common practice). */
function sagSpan({ bent, supports, box, along }: Member): number {
  if (!bent) return 0;
  const places = supports.map(({ at }) => at);
  const { span } = bent.sag;
  if (span < 0) return 2 * ((places[0] as number) - box[along][0]);
  const [left, right] = [places[span], places[span + 1]];
  return right === undefined ? 2 * (box[along][1] - (left as number)) : right - (left as number);
}

export function mostStressed(bent: readonly BentMember[]): BentMember | undefined {
  return greatest(bent, ({ stressMPa, grade }) => stressMPa / grade.strengthMPa);
}

export function mostSagged(bent: readonly BentMember[]): BentMember | undefined {
  return greatest(
    bent.filter(({ spanMm }) => spanMm > 0),
    ({ sagMm, spanMm }) => sagMm / spanMm,
  );
}

/**
 * The fewest screws that hold: of each zone’s sheets in level rows of one spacing within the data sheet’s band, of its battens evenly
 * spaced along their studs, beside what setting-out gave them.
 */
import type { PatchOperation } from "../../findings/finding.ts";
import { type FacelessProject, type ProofInput, proofContext } from "../context.ts";
import { faceContexts } from "../face-contexts.ts";
import { bentMembers } from "./bending.ts";
import { type Member, screwShares } from "./members.ts";
import { sagLimit } from "./sag-limit.ts";
import { screwJudge } from "./screw-hold.ts";
import { fewestAlong, rowSpacing, type SheetRows, sheetRows, spacingEdit } from "./screw-mend.ts";
import { windStudies, type ZoneStudy } from "./study.ts";

export interface FixingPlan {
  readonly face: string;
  readonly zone: string;
  readonly of: "sheets" | "edge sheets" | "battens";
  /** Marks of the pieces. */
  readonly marks: readonly string[];
  readonly screwsNow: number;
  /** Undefined where no spacing that is allowed holds all of them. */
  readonly screwsAfter: number | undefined;
  /** The widest that rows, or screws along a batten, stand apart (mm). */
  readonly spacingNow: number;
  readonly spacingAfter: number | undefined;
  /** Pieces that no spacing holds. */
  readonly gives: readonly string[];
  /** Gives the sheets their spacing; absent where nothing changes, and of battens, whose screws no field sets. */
  readonly edit?: readonly PatchOperation[];
}

/** Zone by zone; nothing where the wind is not known. */
export function fixingDesign(input: ProofInput): FixingPlan[] {
  return faceContexts(proofContext(input)).flatMap((context) =>
    windStudies(context).flatMap((study) => {
      const judge = screwJudge(study, context.project);
      const holds = (member: Member): boolean =>
        judge.uses(member, screwShares(member)).every(({ use }) => use <= 1);
      const sheets = study.skins.flatMap((member): Sheet[] => {
        const rows = sheetRows(study, judge, member);
        return rows ? [{ member, rows, holds: holds(member) }] : [];
      });
      const passes = (member: Member): boolean => bearsItself(study, context.project, member);
      return [
        ...sheetPlan(
          study,
          "sheets",
          sheets.filter(({ rows }) => !rows.edgeZone),
        ),
        ...sheetPlan(
          study,
          "edge sheets",
          sheets.filter(({ rows }) => rows.edgeZone),
        ),
        ...battenPlan(study, (member) => {
          const from = Math.ceil(lengthOf(member) / BATTEN_FARTHEST_MM) + 1;
          const fewest = fewestAlong(judge, member, { from, passes });
          const now = member.supports.length;
          // Evenly spaced they may be more than what holds as it stands.
          return holds(member) && passes(member) ? Math.min(now, fewest ?? now) : fewest;
        }),
      ];
    }),
  );
}

/** Screws along a batten stand no farther apart (common practice: it cups and springs). */
export const BATTEN_FARTHEST_MM = 600;

interface Sheet {
  readonly member: Member;
  readonly rows: SheetRows;
  /** As it stands. */
  readonly holds: boolean;
}

function sheetPlan(study: ZoneStudy, of: FixingPlan["of"], sheets: readonly Sheet[]): FixingPlan[] {
  if (sheets.length === 0) return [];
  const screwsNow = sheets.reduce((sum, { member }) => sum + member.piece.fixings.length, 0);
  const spacingNow = Math.max(...sheets.map(({ rows }) => widest(rows.now)));
  // What holds as it stands is set out with the fewest rows of the widest spacing already.
  const closer = sheets.filter((sheet) => !sheet.holds);
  const gives = closer.flatMap(({ member, rows }) => (rows.fewest ? [] : [member.piece.mark]));
  const plan = { face: study.view.face.id, zone: study.view.zone.id, of, marks: marksOf(sheets), screwsNow };
  if (gives.length > 0)
    return [{ ...plan, screwsAfter: undefined, spacingNow, spacingAfter: undefined, gives }];
  if (closer.length === 0)
    return [{ ...plan, screwsAfter: screwsNow, spacingNow, spacingAfter: spacingNow, gives }];
  const spacing = Math.min(...closer.map(({ rows }) => rowSpacing(rows.fewest) ?? spacingNow));
  const counts = sheets.map(({ member, rows }) => {
    const after = rows.atMost(spacing);
    return after ? after.length * member.supports.length : member.piece.fixings.length;
  });
  const screwsAfter = counts.reduce((sum, count) => sum + count, 0);
  const edit = spacingEdit(study, { edgeZone: of === "edge sheets", spacing });
  return [{ ...plan, screwsAfter, spacingNow, spacingAfter: spacing, gives, edit }];
}

/** Battens whose screws all go into one stud: those on rails are held where they cross. */
function battenPlan(study: ZoneStudy, fewest: (member: Member) => number | undefined): FixingPlan[] {
  const battens = study.carriers.filter(
    ({ piece, supports }) =>
      supports.length > 1 && piece.fixings.every(({ into }) => into === piece.fixings[0]?.into),
  );
  if (battens.length === 0) return [];
  const counts = battens.map((member) => ({ member, count: fewest(member) }));
  const gives = counts.flatMap(({ member, count }) => (count === undefined ? [member.piece.mark] : []));
  const places = (list: readonly { readonly at: number }[]): number[] => list.map(({ at }) => at);
  const known = gives.length === 0;
  return [
    {
      face: study.view.face.id,
      zone: study.view.zone.id,
      of: "battens",
      marks: battens.map(({ piece }) => piece.mark),
      screwsNow: battens.reduce((sum, { supports }) => sum + supports.length, 0),
      screwsAfter: known ? counts.reduce((sum, { count }) => sum + (count ?? 0), 0) : undefined,
      spacingNow: Math.max(...battens.map(({ supports }) => widest(places(supports)))),
      spacingAfter: known
        ? Math.max(...counts.map(({ member, count }) => lengthOf(member) / ((count ?? 2) - 1)))
        : undefined,
      gives,
    },
  ];
}

function lengthOf({ supports }: Member): number {
  return (supports.at(-1)?.at ?? 0) - (supports[0]?.at ?? 0);
}

/** Whether it bears the wind between its screws and sags no more than it may; what is missing to tell is told by its own rule. */
function bearsItself(study: ZoneStudy, project: FacelessProject, member: Member): boolean {
  const over = sagLimit(study, project, "carriers")?.over;
  return bentMembers(study, project, [member]).bent.every(
    ({ stressMPa, grade, sagMm, spanMm }) =>
      stressMPa <= grade.strengthMPa && (over === undefined || spanMm === 0 || sagMm * over <= spanMm),
  );
}

function marksOf(sheets: readonly Sheet[]): string[] {
  return sheets.map(({ member }) => member.piece.mark);
}

function widest(places: readonly number[]): number {
  return Math.max(0, ...places.slice(1).map((at, i) => at - (places[i] as number)));
}

/** How many rows of screws a sheet takes that gives in wind: now, and at the spacing that would hold. */

import { continuousBeam } from "../../equations/beams/continuous-beam.ts";
import type { Choice, PatchOperation } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import type { FaceContext } from "../context.ts";
import { fewestRows } from "./fewest-rows.ts";
import { type Member, screwShares } from "./members.ts";
import { type ScrewJudge, type ScrewUse, screwJudge } from "./screw-hold.ts";
import type { ZoneStudy } from "./study.ts";

/** The mend with its edit; undefined for boards, and where no spacing of the data sheet's band holds. */
export function closerRows(study: ZoneStudy, { project }: FaceContext, worst: ScrewUse): Choice | undefined {
  const { member } = worst;
  const found = sheetRows(study, screwJudge(study, project), member);
  const spacing = found && rowSpacing(found.fewest);
  if (!found?.fewest || spacing === undefined) return undefined;
  return {
    says: message("structure.screw.rows", {
      before: found.now.length,
      after: found.fewest.length,
      screws: found.fewest.length * member.supports.length,
      spacing,
    }),
    edit: spacingEdit(study, { edgeZone: found.edgeZone, spacing }),
  };
}

export interface SheetRows {
  /** Heights of the rows as they stand (mm). */
  readonly now: readonly number[];
  /** Over the sheet’s lower edge (mm); undefined where no spacing of the data sheet’s band holds. */
  readonly fewest: readonly number[] | undefined;
  /** Which of the data sheet’s bands the sheet answers to. */
  readonly edgeZone: boolean;
  /** The fewest rows of that band with a most of one’s own, whatever they hold: as many as one spacing gives a whole zone. */
  readonly atMost: (spacing: number) => readonly number[] | undefined;
}

/** Rows of a sheet’s screws, now and the fewest that hold; undefined of what is no sheet on upright battens. */
export function sheetRows(study: ZoneStudy, judge: ScrewJudge, member: Member): SheetRows | undefined {
  const { cladding } = study.view;
  if (cladding.kind !== "sheets" || member.piece.kind !== "sheet" || member.along !== "x") return undefined;
  const now = rowsOf(member);
  const [first, last] = [now[0], now.at(-1)];
  if (first === undefined || last === undefined || last === first) return undefined;
  const [bottom, top] = member.box.y;
  // Setting-out keeps its distance from the edges, whatever the spacing.
  const edge = Math.max(first - bottom, top - last);
  const { edgeZone, fixingSpacing } = cladding.dataSheet;
  const inEdgeZone = edgeZone !== undefined && reaches(member, study, edgeZone.width);
  const spacing = inEdgeZone ? edgeZone.fixingSpacing : fixingSpacing;
  const asked = { heightMm: top - bottom, edgeMm: [edge, edge], spacingMm: spacing } as const;
  return {
    now,
    edgeZone: inEdgeZone,
    fewest: fewestRows({
      ...asked,
      hold: (heights) => {
        const other = withRows(
          member,
          heights.map((height) => bottom + height),
        );
        return judge.uses(other, screwShares(other)).every(({ use }) => use <= 1);
      },
    }),
    atMost: (most) => fewestRows({ ...asked, spacingMm: [spacing[0], most], hold: () => true }),
  };
}

/** From one row to the next, no less than they stand (whole mm). */
export function rowSpacing(rows: readonly number[] | undefined): number | undefined {
  const [lower, upper] = rows ?? [];
  return lower === undefined || upper === undefined ? undefined : Math.ceil(upper - lower);
}

/** The edit that gives a zone’s sheets rows so far apart at the most. */
export function spacingEdit(
  { view: { claddingPath } }: ZoneStudy,
  { edgeZone, spacing }: { readonly edgeZone: boolean; readonly spacing: number },
): PatchOperation[] {
  const path = `${claddingPath}/dataSheet/${edgeZone ? "edgeZone/" : ""}fixingSpacing/1`;
  return [{ op: "replace", path, value: spacing }];
}

/** Screws of a batten stand at least this far apart along it (common practice: the wood splits). */
const BATTEN_CLOSEST_MM = 100;

/** The fewest screws, evenly spaced, that hold a batten or rail which gives; no field of the file sets them, so there is no edit. */
export function closerAlong(study: ZoneStudy, { project }: FaceContext, worst: ScrewUse): Choice | undefined {
  const { member } = worst;
  const { supports } = member;
  const [first, last] = [supports[0], supports.at(-1)];
  if (!first || !last || first === last) return undefined;
  const judge = screwJudge(study, project);
  const count = fewestAlong(judge, member, { from: supports.length + 1 });
  if (count === undefined) return undefined;
  const spacing = (last.at - first.at) / (count - 1);
  return { says: message("structure.screw.along", { before: supports.length, after: count, spacing }) };
}

/** How many places, evenly spaced from the first to the last, hold a batten or rail; from so many on, and by what else it must pass. */
export function fewestAlong(
  judge: ScrewJudge,
  member: Member,
  { from, passes = () => true }: { readonly from: number; readonly passes?: (member: Member) => boolean },
): number | undefined {
  const { supports, box, along, gathers } = member;
  const [first, last] = [supports[0], supports.at(-1)];
  const like = first?.fixings[0];
  if (!first || !last || !like || first === last) return undefined;
  const length = last.at - first.at;
  for (let count = from; length / (count - 1) >= BATTEN_CLOSEST_MM; count++) {
    const places = Array.from({ length: count }, (_, i) => first.at + (length * i) / (count - 1));
    const bent = continuousBeam({ supports: places, from: box[along][0], to: box[along][1], load: gathers });
    const other: Member = {
      ...member,
      bent,
      moment: bent?.moment ?? 0,
      supports: places.map((at, i) => ({
        at,
        share: bent?.reactions[i] ?? 0,
        fixings: [{ ...like, [along]: at }],
      })),
    };
    if (judge.uses(other, screwShares(other)).every(({ use }) => use <= 1) && passes(other)) return count;
  }
  return undefined;
}

function rowsOf({ supports }: Member): number[] {
  const longest = supports.reduce<readonly { y: number }[]>(
    (most, { fixings }) => (fixings.length > most.length ? fixings : most),
    [],
  );
  return longest.map(({ y }) => y).sort((a, b) => a - b);
}

function reaches({ box }: Member, { bands }: ZoneStudy, width: number): boolean {
  const [left, right] = [bands[0]?.x[0] ?? 0, bands.at(-1)?.x[1] ?? 0];
  return box.x[0] < left + width || box.x[1] > right - width;
}

/** The same sheet on the same battens with other rows; the fixed point stays in its line, in the row nearest to where it was. */
function withRows(member: Member, heights: readonly number[]): Member {
  return {
    ...member,
    supports: member.supports.map((support) => {
      const [like] = support.fixings;
      const fixed = support.fixings.find(({ kind }) => kind === "fixed");
      const nearest =
        fixed && heights.reduce((best, y) => (Math.abs(y - fixed.y) < Math.abs(best - fixed.y) ? y : best));
      return {
        ...support,
        fixings: like
          ? heights.map((y) => ({
              ...like,
              y,
              kind: y === nearest ? ("fixed" as const) : fixed ? ("sliding" as const) : like.kind,
            }))
          : [],
      };
    }),
  };
}

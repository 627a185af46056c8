/** How many rows of screws a sheet takes that gives in wind: now, and at the spacing that would hold. */

import { continuousBeam } from "../../equations/beams/continuous-beam.ts";
import type { Choice, PatchOperation } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import type { FaceContext } from "../context.ts";
import { fewestRows } from "./fewest-rows.ts";
import { type Member, screwShares } from "./members.ts";
import { type ScrewUse, screwJudge } from "./screw-hold.ts";
import type { ZoneStudy } from "./study.ts";

/** The mend with its edit; undefined for boards, and where no spacing of the data sheet's band holds. */
export function closerRows(study: ZoneStudy, { project }: FaceContext, worst: ScrewUse): Choice | undefined {
  const { cladding, claddingPath } = study.view;
  const { member } = worst;
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
  const judge = screwJudge(study, project);
  const rows = fewestRows({
    heightMm: top - bottom,
    edgeMm: [edge, edge],
    spacingMm: spacing,
    hold: (heights) => {
      const other = withRows(
        member,
        heights.map((height) => bottom + height),
      );
      return judge.uses(other, screwShares(other)).every(({ use }) => use <= 1);
    },
  });
  const [lower, upper] = rows ?? [];
  if (!rows || lower === undefined || upper === undefined) return undefined;
  const spaced = Math.ceil(upper - lower);
  const path = `${claddingPath}/dataSheet/${inEdgeZone ? "edgeZone/" : ""}fixingSpacing/1`;
  const edit: PatchOperation[] = [{ op: "replace", path, value: spaced }];
  return {
    says: message("structure.screw.rows", {
      before: now.length,
      after: rows.length,
      screws: rows.length * member.supports.length,
      spacing: spaced,
    }),
    edit,
  };
}

/** Screws of a batten stand at least this far apart along it (common practice: the wood splits). */
const BATTEN_CLOSEST_MM = 100;

/** The fewest screws, evenly spaced, that hold a batten or rail which gives; no field of the file sets them, so there is no edit. */
export function closerAlong(study: ZoneStudy, { project }: FaceContext, worst: ScrewUse): Choice | undefined {
  const { member } = worst;
  const { supports, box, along, gathers } = member;
  const [first, last] = [supports[0], supports.at(-1)];
  if (!first || !last || first === last) return undefined;
  const length = last.at - first.at;
  const judge = screwJudge(study, project);
  for (let count = supports.length + 1; length / (count - 1) >= BATTEN_CLOSEST_MM; count++) {
    const places = Array.from({ length: count }, (_, i) => first.at + (length * i) / (count - 1));
    const bent = continuousBeam({ supports: places, from: box[along][0], to: box[along][1], load: gathers });
    const other: Member = {
      ...member,
      bent,
      supports: places.map((at, i) => ({
        at,
        share: bent?.reactions[i] ?? 0,
        fixings: [{ ...worst.share.fixing, [along]: at }],
      })),
    };
    if (judge.uses(other, screwShares(other)).every(({ use }) => use <= 1)) {
      const spacing = length / (count - 1);
      return {
        says: message("structure.screw.along", { before: supports.length, after: count, spacing }),
      };
    }
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

/** What is found of openings and ends as measured: M008 and M009. */
import { type Finding, finding } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { allowedOf } from "./allowed.ts";
import type { CannotLay, FaceLaidAgain } from "./lay-again.ts";
import type { Measured, MeasuredOpening } from "./measured.ts";

/** @param laid of the faces that anything was measured of */
export function asBuiltFindings(
  project: Pick<Project, "asBuilt">,
  { openings, ends }: Measured,
  laid: readonly (FaceLaidAgain | CannotLay)[],
): Finding[] {
  return [
    ...openings.flatMap((one) => [...unknownSides(one), ...unknownLean(one), ...leaning(project, one)]),
    ...ends.flatMap(({ face, end, drawn, measured }) =>
      drawn === measured
        ? []
        : [
            finding({
              code: "M009",
              outcome: "attention",
              where: { face },
              says: message("built.end", {
                face,
                end: message(`built.end-${end}`),
                by: measured - drawn,
              }),
              hint: message("built.end.hint"),
            }),
          ],
    ),
    ...laid.flatMap((one) => (one.kind === "found" ? ofLayout(one) : [cannot(one)])),
  ];
}

function unknownSides({ face, opening, sides }: MeasuredOpening): Finding[] {
  const unknown = sides.filter(({ measured }) => measured === undefined);
  if (unknown.length === 0) return [];
  return [
    finding({
      code: "M008",
      outcome: "cannot evaluate",
      where: { face, opening },
      says: message("built.unknown", {
        opening,
        face,
        sides: unknown.map(({ side }) => message(`built.side-${side}`)),
      }),
      hint: message("built.unknown.hint"),
    }),
  ];
}

/** Diagonals that were measured tell nothing without the width. */
function unknownLean({ face, opening, lean, hasDiagonals }: MeasuredOpening): Finding[] {
  if (!hasDiagonals || lean !== undefined) return [];
  return [
    finding({
      code: "M008",
      outcome: "cannot evaluate",
      where: { face, opening },
      says: message("built.lean-unknown", { opening, face }),
      hint: message("built.lean-unknown.hint"),
    }),
  ];
}

/** Jambs that lean take so much of the clearance beside them. */
function leaning(project: Pick<Project, "asBuilt">, { face, opening, lean }: MeasuredOpening): Finding[] {
  if (lean === undefined) return [];
  const limit = allowedOf(project).clearance;
  const within = Math.abs(lean) <= limit;
  return [
    finding({
      code: "M008",
      outcome: within ? "pass" : "attention",
      where: { face, opening },
      says: message("built.lean", { opening, face, by: Math.abs(lean) }),
      ...(within ? {} : { hint: message("built.lean.hint") }),
      demand: Math.abs(lean),
      limit,
      unit: "mm",
      source: { kind: "common practice" },
    }),
  ];
}

function ofLayout({ face, standing, closing, cost, least }: FaceLaidAgain): Finding[] {
  const wide = closing.map(({ kind, marks, opening, nominal, band }) =>
    finding({
      code: "M008",
      outcome: "attention",
      where: { face, marks, ...(opening !== undefined && { opening }) },
      says: message(`built.closing-${kind}`, { mark: marks[0] ?? "", face, gap: nominal, band }),
      hint: message("built.closing.hint"),
      demand: band,
      limit: nominal,
      unit: "mm",
      source: { kind: "common practice" },
    }),
  );
  const out = standing.map(({ marks, opening = "", after, band: [low, high] }) =>
    finding({
      code: "M008",
      outcome: "fail",
      where: { face, opening, marks },
      says: message("built.standing", {
        mark: marks[0] ?? "",
        opening,
        gap: after,
        least: low,
        most: high,
      }),
      hint: message("built.standing.hint"),
      demand: after,
      limit: after < low ? low : high,
      unit: "mm",
      source: { kind: "common practice" },
    }),
  );
  if (least === cost) return [...out, ...wide];
  return [
    ...out,
    ...wide,
    finding({
      code: "S029",
      outcome: "attention",
      where: { face },
      says: message("built.not-searched", { face, cost, least }),
    }),
  ];
}

function cannot({ face, marks, openings, shortBy }: CannotLay): Finding {
  return finding({
    code: "S029",
    outcome: "fail",
    where: { face, marks, ...(openings[0] !== undefined && { opening: openings[0] }) },
    says: message("built.cannot", { face, marks, by: shortBy }),
    hint: message("built.cannot.hint"),
  });
}

/** P015: the gap between courses in the driest and the wettest month, against the band. */
import type { SeasonalDemand } from "../codes/demands.ts";
import { type Finding, finding, type Outcome } from "../findings/finding.ts";
import type { BoardCladding } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import { boardZones, type FaceContext, type ZoneView } from "./context.ts";
import { compared, input, written } from "./working.ts";

export function seasonalGap(context: FaceContext): Finding[] {
  return boardZones(context).flatMap((view) => {
    const demand = context.demands.boards[view.cladding.id];
    const gaps = view.joints.filter(({ kind }) => kind === "course gap").map(({ width }) => width);
    if (!demand || gaps.length === 0) return [];
    const where = { path: `${view.claddingPath}/gapBand`, ...view.where };
    const { seasonal } = demand;
    if (!seasonal) {
      return [
        finding({
          code: "P015",
          outcome: "cannot evaluate",
          where: { ...where, path: demand.seasonalLacks[0] ?? where.path },
          says: message("proof.season.lacks", { paths: demand.seasonalLacks }),
          hint: message("proof.season.enter"),
          source: SOURCE,
        }),
      ];
    }
    const width = Math.max(...view.pieces.map(({ cut }) => cut.width));
    return [
      judged({ view, seasonal, width, gaps: [Math.min(...gaps), Math.max(...gaps)], band: demand.gapBand }),
    ];
  });
}

const SOURCE = {
  kind: "document",
  document: "Wood Handbook, Forest Products Laboratory, FPL-GTR-282 (2021)",
  clause: "Equations 4-5 and 4-9",
} as const;

interface Judged {
  readonly view: ZoneView<BoardCladding>;
  readonly seasonal: SeasonalDemand;
  /** The widest board: it moves most. */
  readonly width: number;
  readonly gaps: readonly [least: number, most: number];
  readonly band: readonly [least: number, most: number];
}

function judged({ view, seasonal, width, gaps, band }: Judged): Finding {
  const closes = seasonal.wettestMm * width;
  const opens = seasonal.driestMm * width;
  const wettest = gaps[0] + closes;
  const driest = gaps[1] + opens;
  const under = wettest < band[0];
  const over = driest > band[1];
  const outcome: Outcome = wettest <= 0 ? "fail" : under || over ? "attention" : "pass";
  const key = { fail: "closes", attention: "outside", pass: "within" }[outcome];
  const comparison =
    under || outcome === "fail"
      ? compared("at least", { demand: wettest, limit: band[0], unit: "mm" })
      : compared("at most", { demand: driest, limit: band[1], unit: "mm" });
  return finding({
    code: "P015",
    outcome,
    where: { path: `${view.claddingPath}/gapBand`, ...view.where },
    says: message(`proof.season.${key}`, {
      gap: gaps[0],
      widestGap: gaps[1],
      wettest,
      driest,
      wettestMonth: message(`proof.month.${seasonal.wettestMonth}`),
      driestMonth: message(`proof.month.${seasonal.driestMonth}`),
      least: band[0],
      most: band[1],
    }),
    ...(outcome === "pass"
      ? {}
      : { hint: message("proof.season.fix-between", { from: band[0] - closes, to: band[1] - opens }) }),
    ...comparison,
    working: {
      formula: "g_w = g − b·r_w; g_d = g' + b·r_d",
      inputs: [
        input("g", { meaning: "least-gap", value: gaps[0], unit: "mm", basis: "derived" }),
        input("g'", { meaning: "most-gap", value: gaps[1], unit: "mm", basis: "derived" }),
        input("b", { meaning: "board-width", value: width, unit: "mm", basis: "given" }),
        input("u_0", {
          meaning: "moisture-at-fixing",
          value: seasonal.fixingPercent,
          unit: "%",
          basis: "given",
        }),
        input("u_w", {
          meaning: "moisture-wettest",
          value: seasonal.wettestPercent,
          unit: "%",
          basis: seasonal.basis,
        }),
        input("u_d", {
          meaning: "moisture-driest",
          value: seasonal.driestPercent,
          unit: "%",
          basis: seasonal.basis,
        }),
        input("r_w", {
          meaning: "growth-wettest",
          value: -seasonal.wettestMm,
          unit: "1",
          basis: seasonal.basis,
        }),
        input("r_d", {
          meaning: "shrinkage-driest",
          value: seasonal.driestMm,
          unit: "1",
          basis: seasonal.basis,
        }),
      ],
      substituted: `${written(gaps[0])} ${signed(closes)} = ${written(wettest)}; ${written(gaps[1])} ${signed(opens)} = ${written(driest)}`,
    },
    source: SOURCE,
    figures: seasonal.figures,
  });
}

function signed(value: number): string {
  return `${value < 0 ? "−" : "+"} ${written(Math.abs(value), 2)}`;
}

/**
 * What the work uses up and no piece is made of: blades, bits, tape, sealer for cut ends. No price of the project covers them.
 * How long a blade or a bit lasts is common practice, from memory; whoever has better figures counts from the metres and screws
 * told beside it.
 */
import type { CutPlan } from "../cutting/facade/plan.ts";
import type { CutNode } from "../cutting/model.ts";
import type { Project } from "../project/schema/project.ts";
import type { Facade } from "../setout/facade.ts";
import { message } from "../text/message.ts";
import type { OrderLine, ScrewCount } from "./model.ts";

/** Metres that a blade saws: cement and stone blunt it, wood hardly does. */
const BLADE_METRES = { sheets: 300, wood: 1500 } as const;
/** Screws that a bit turns. */
const BIT_SCREWS = 500;
/** Spare of what comes by the metre, as in the order. */
const SPARE = 0.05;
const MM_PER_M = 1000;
const DUST = 1e-9;

export function consumableLines(
  project: Project,
  facade: Facade,
  { plan, screws }: { readonly plan: CutPlan | undefined; readonly screws: readonly ScrewCount[] },
): OrderLine[] {
  return [
    ...(plan ? bladeLines(plan) : []),
    ...bitLines(project, screws),
    ...tapeLines(facade),
    ...sealerLines(project, facade),
  ];
}

function bladeLines(plan: CutPlan): OrderLine[] {
  const sheets = plan.sheets.flatMap(({ result }) => result.plan.sheets.map(({ tree }) => sawn(tree)));
  const metres = { sheets: sumOf(sheets) / MM_PER_M, wood: woodSawn(plan) / MM_PER_M };
  return (["sheets", "wood"] as const).flatMap((kind) =>
    metres[kind] > 0
      ? [
          {
            item: message(`schedule.order.blade-${kind}`, { metres: metres[kind], each: BLADE_METRES[kind] }),
            unit: "piece" as const,
            needed: metres[kind] / BLADE_METRES[kind],
            ordered: Math.ceil(metres[kind] / BLADE_METRES[kind] - DUST),
          },
        ]
      : [],
  );
}

/** Length of all cuts of a sheet, mm; a cut runs right through its region. */
function sawn(node: CutNode): number {
  const own = node.cut === undefined ? 0 : node.cut.along === "y" ? node.height : node.width;
  return own + sumOf((node.children ?? []).map(sawn));
}

/** Each piece is cut at both ends across its bar, each strip along both edges of its board, mm. */
function woodSawn({ lengths, boards, rips }: CutPlan): number {
  const across = [...lengths, ...boards.bought].flatMap(({ width, result }) =>
    result.plan.bars.map(({ pieces }) => 2 * pieces.length * width),
  );
  const strips = new Map(rips?.result.strips.map((strip) => [strip.id, strip]));
  const pile = (rips?.result.lengths.plan.bars ?? []).map(({ stockId, pieces }) => {
    const { length = 0, width = 0 } = strips.get(stockId) ?? {};
    return 2 * length + 2 * pieces.length * width;
  });
  return sumOf([...across, ...pile]);
}

/** Screws of one driver share its bits; of a screw whose driver the stock does not tell, the bit is its own. */
function bitLines({ stock }: Project, screws: readonly ScrewCount[]): OrderLine[] {
  const counts = new Map<string, { screw: string; driver: string | undefined; count: number }>();
  for (const { screw, count } of screws) {
    const { driver } = stock.screws.find(({ id }) => id === screw) ?? {};
    const key = driver === undefined ? `screw ${screw}` : `driver ${driver}`;
    counts.set(key, { screw, driver, count: (counts.get(key)?.count ?? 0) + count });
  }
  return [...counts.values()].map(({ screw, driver, count }) => ({
    item:
      driver === undefined
        ? message("schedule.order.bit-of-screw", { screw, count, each: BIT_SCREWS })
        : message("schedule.order.bit", { driver, count, each: BIT_SCREWS }),
    unit: "piece",
    needed: count / BIT_SCREWS,
    ordered: Math.ceil(count / BIT_SCREWS - DUST),
  }));
}

/** Along every strip of membrane, and round every opening of the faces that have any. */
function tapeLines({ faces }: Facade): OrderLine[] {
  const lengths = faces.flatMap(({ pieces, openings }) => {
    const strips = pieces.filter(({ kind, profile }) => kind === "membrane" && !profile);
    if (strips.length === 0) return [];
    const round = openings.map(({ region: { x, y } }) => 2 * (x[1] - x[0] + y[1] - y[0]));
    return [...strips.map(({ cut }) => cut.length), ...round];
  });
  return byTheMetre("schedule.order.tape", sumOf(lengths));
}

/** Both ends of boards and all edges of sheets that the project has sealed as they are cut. */
function sealerLines({ claddings }: Project, { faces }: Facade): OrderLine[] {
  const sealed = new Set(
    claddings
      .filter((one) => (one.kind === "boards" ? one.cutEnds : one.cutEdges) === "sealed")
      .map(({ id }) => id),
  );
  const edges = faces.flatMap(({ zones, pieces }) => {
    const ofZone = new Map(zones.map(({ id, cladding }) => [id, cladding]));
    return pieces.flatMap(({ kind, cladding, zone, cut }) => {
      if (!sealed.has(cladding ?? ofZone.get(zone ?? "") ?? "")) return [];
      if (kind === "board") return [2 * cut.width];
      return kind === "sheet" ? [2 * (cut.width + cut.length)] : [];
    });
  });
  return byTheMetre("schedule.order.sealer", sumOf(edges));
}

function byTheMetre(key: string, length: number): OrderLine[] {
  const metres = length / MM_PER_M;
  return metres > 0
    ? [{ item: message(key), unit: "m", needed: metres, ordered: Math.ceil(metres * (1 + SPARE) - DUST) }]
    : [];
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

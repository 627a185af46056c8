/** What the steps of the saw ask of table, fence and those who lift, against what the project says there is. */
import { type Finding, finding } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import { type Message, message } from "../../text/message.ts";
import { numberedCuts } from "../cut-order.ts";
import type { CutBar, LengthStock } from "../model.ts";
import { crosscutSteps, replayCrosscuts } from "../verify/crosscuts.ts";
import { replayRips, ripSteps } from "../verify/rip-steps.ts";
import { type BeyondReach, beyondReach, type SawLimit, type SawStep } from "../verify/saw-reach.ts";
import { sheetSteps } from "../verify/saw-steps.ts";
import type { CutPlan, LengthPart, PilePart, SheetPart } from "./plan.ts";
import { marksOf } from "./spoiled.ts";

const MM_PER_M = 1000;

/** Softwood as wet as it gets about floats, so it is no heavier than water (common practice). */
const WET_WOOD_KG_M3 = 1000;

const UNITS: Readonly<Record<SawLimit, "mm" | "kg">> = { table: "mm", fence: "mm", lift: "kg" };

/** One sheet, bar or board with its steps. */
interface Sawn {
  readonly name: Message;
  readonly steps: readonly SawStep[];
  readonly marks: readonly string[];
}

/** C005: each limit that the project gives of its saw, over all stock; nothing is said of limits that it does not give. */
export function sawFindings(project: Project, { sheets, lengths, boards, rips }: CutPlan): Finding[] {
  const { saw } = project.stock;
  const limits = (["table", "fence", "lift"] as const).filter((limit) => saw[limit] !== undefined);
  const sawn = [
    ...sheets.flatMap((part) => sawnSheets(project, part)).map(numbered),
    ...[...lengths, ...boards.bought].flatMap(sawnBars),
    ...(rips ? [...sawnBoards(rips), ...sawnStrips(rips)] : []),
  ];
  if (sawn.length === 0) return [];
  return limits.map((limit) =>
    reachFinding(
      limit,
      sawn.flatMap(({ name, steps, marks }) =>
        beyondReach(steps, { [limit]: saw[limit] }).map((one) => ({ ...one, name, marks })),
      ),
    ),
  );
}

function sawnSheets(project: Project, part: SheetPart): Omit<Sawn, "name">[] {
  const { kerf } = project.stock.saw;
  const kgPerM2 = weightOf(project, part);
  return part.result.plan.sheets.map(({ tree, placements }) => ({
    steps: sheetSteps(numberedCuts(tree), { kerf, kgPerM2 }),
    marks: marksOf(placements),
  }));
}

/** Sheets are numbered through the whole building. */
function numbered(sheet: Omit<Sawn, "name">, index: number): Sawn {
  return { ...sheet, name: message("schedule.saw.of.sheet", { number: index + 1 }) };
}

function sawnBars({ request, result, width, thickness }: LengthPart): Sawn[] {
  const stocks = new Map(request.stock.map((one) => [one.id, one]));
  return result.plan.bars.flatMap((bar) => {
    const stock = stocks.get(bar.stockId);
    const name = message("schedule.saw.of.length", { stock: bar.stockId, number: bar.index + 1 });
    return stock ? [sawnBar(bar, { ...request, stock, width, thickness, name })] : [];
  });
}

function sawnStrips({ request, result }: PilePart): Sawn[] {
  const strips = new Map(result.strips.map((one) => [one.id, one]));
  return result.lengths.plan.bars.flatMap((bar) => {
    const stock = strips.get(bar.stockId);
    const { width = 0, thickness = 0 } = stock ?? {};
    const name = message("schedule.saw.of.strip", { strip: bar.stockId });
    return stock ? [sawnBar(bar, { ...request, stock, width, thickness, name })] : [];
  });
}

function sawnBar(
  bar: CutBar,
  of: {
    readonly stock: LengthStock;
    readonly width: number;
    readonly thickness: number;
    readonly name: Message;
    readonly kerf: number;
    readonly endTrim?: number;
  },
): Sawn {
  const { stock, width, thickness, name, kerf, endTrim = 0 } = of;
  const { cuts } = replayCrosscuts({ bar, stock, kerf, endTrim, where: "" });
  const steps = crosscutSteps(cuts, { width, thickness, kgPerM3: WET_WOOD_KG_M3 });
  return { name, steps, marks: marksOf(bar.pieces) };
}

function sawnBoards({ request, result }: PilePart): Sawn[] {
  const { kerf, straighten = 0 } = request;
  const boards = new Map(request.boards.map((one) => [one.id, one]));
  const marks = new Map<string, string[]>();
  for (const { stockId, pieces } of result.lengths.plan.bars) {
    const { board = "" } = result.strips.find(({ id }) => id === stockId) ?? {};
    marks.set(board, [...(marks.get(board) ?? []), ...marksOf(pieces)]);
  }
  return result.rips.boards.flatMap((ripped) => {
    const board = boards.get(ripped.boardId);
    if (!board) return [];
    const { length, thickness } = board;
    const { cuts } = replayRips({ ripped, board, kerf, straighten, where: "" });
    return [
      {
        name: message("schedule.saw.of.board", { board: board.id }),
        steps: ripSteps(cuts, { length, thickness, kgPerM3: WET_WOOD_KG_M3 }),
        marks: marks.get(board.id) ?? [],
      },
    ];
  });
}

interface Beyond extends BeyondReach {
  readonly name: Message;
  readonly marks: readonly string[];
}

function reachFinding(limit: SawLimit, beyond: readonly Beyond[]): Finding {
  const path = `/stock/saw/${limit}`;
  const [first, ...others] = beyond;
  if (first === undefined) {
    return finding({
      code: "C005",
      outcome: "pass",
      where: { path },
      says: message(`schedule.saw.within.${limit}`, {}),
    });
  }
  const worst = others.reduce((most, one) => (one.asks > most.asks ? one : most), first);
  return finding({
    code: "C005",
    outcome: "fail",
    where: { path, marks: [...new Set(beyond.flatMap(({ marks }) => marks))] },
    says: message(`schedule.saw.beyond.${limit}`, {
      count: beyond.length,
      of: worst.name,
      cut: worst.cut,
      asks: worst.asks,
      has: worst.has,
    }),
    hint: message(`schedule.saw.beyond.${limit}.hint`),
    demand: worst.asks,
    limit: worst.has,
    unit: UNITS[limit],
    ratio: worst.asks / worst.has,
  });
}

/** Kilograms a square metre, the most of its claddings. */
function weightOf(project: Project, { claddings, thickness }: SheetPart): number {
  const densities = project.claddings.flatMap((one) =>
    one.kind === "sheets" && claddings.includes(one.id) ? [one.dataSheet.densityKgM3] : [],
  );
  return (Math.max(0, ...densities) * thickness) / MM_PER_M;
}

/** The order: what is bought, with spare, in the units that it is sold in, priced where the project gives a price. */
import { gathered } from "../cutting/facade/pieces.ts";
import type { CutPlan, LengthPart } from "../cutting/facade/plan.ts";
import type { Project } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import { gapMm } from "../units/rounding.ts";
import type { Order, OrderLine, Takeoff } from "./model.ts";
import { counted } from "./schedules.ts";

/**
 * Kept over from the same batch, for repairs and mistakes. Common practice: 2 to 5 %, the small share for what is dear
 * and cut to a plan, the large one for screws and what comes by the metre.
 */
const SPARE = { sawn: 0.03, small: 0.05 } as const;

/** Screws are sold in packs of so many; prices in the project are for one screw. */
const SCREWS_A_PACK = 100;

const MM_PER_M = 1000;
/** Sums of metres carry a little dust, which must not round a whole metre up to the next. */
const DUST = 1e-9;

export function orderOf(
  project: Project,
  {
    plan,
    quantities,
    consumables,
  }: {
    readonly plan: CutPlan | undefined;
    readonly quantities: Omit<Takeoff, "order">;
    readonly consumables: readonly OrderLine[];
  },
): Order {
  const lines = [
    ...(plan ? [...sheetLines(project, plan), ...lengthLines(project, plan), ...toFindLines(plan)] : []),
    ...screwLines(project, quantities),
    ...smallLines(quantities),
  ];
  return {
    currency: project.stock.currency,
    lines,
    consumables,
    sum: hundredths(lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0)),
    withoutPrice: lines.filter(({ amount }) => amount === undefined).length,
  };
}

/** Money to hundredths. */
function hundredths(amount: number): number {
  return Math.round(amount * 100 + DUST) / 100;
}

function priced(line: Omit<OrderLine, "amount" | "unitPrice">, unitPrice: number | undefined): OrderLine {
  return unitPrice === undefined
    ? line
    : { ...line, unitPrice, amount: hundredths(line.ordered * unitPrice) };
}

/** A stock's use in a plan, and whether more of it can be had. */
interface Used {
  readonly id: string;
  readonly size: number;
  readonly count: number;
  readonly left: number;
}

/** Spare goes to the largest size in use: it gives any piece. Where no more can be had, to the next. */
function spareFor(used: readonly Used[]): (id: string) => number {
  const total = used.reduce((sum, { count }) => sum + count, 0);
  const spare = Math.ceil(total * SPARE.sawn - DUST);
  const from = [...used].filter(({ left }) => left >= spare).sort((a, b) => b.size - a.size)[0];
  return (id) => (id === from?.id ? spare : 0);
}

/** What was spoiled was bought besides, with the first material that is cut from its stock. */
function sheetLines({ stock }: Project, { sheets, spoiled }: CutPlan): OrderLine[] {
  const lost = new Map(
    counted((spoiled?.stock ?? []).flatMap((one) => (one.kind === "sheet" ? [one.stock] : []))),
  );
  return sheets.flatMap(({ request, result, material, thickness }) => {
    const counts = new Map(counted(result.plan.sheets.map(({ stockId }) => stockId)));
    const used = request.stock.flatMap(({ id, width, height, count }): Used[] => {
      const taken = counts.get(id) ?? 0;
      const left = count === undefined ? Number.POSITIVE_INFINITY : count - taken;
      const bought = taken + (lost.get(id) ?? 0);
      lost.delete(id);
      return bought > 0 ? [{ id, size: width * height, count: bought, left }] : [];
    });
    const spare = spareFor(used);
    return used.flatMap(({ id, count }): OrderLine[] => {
      const sheet = stock.sheets.find((one) => one.id === id);
      if (!sheet) return [];
      const { width, height, price } = sheet;
      const item = message("schedule.order.sheet", { material, thickness, width, height });
      return [priced({ item, id, unit: "sheet", needed: count, ordered: count + spare(id) }, price)];
    });
  });
}

function lengthLines(project: Project, { lengths, boards, spoiled }: CutPlan): OrderLine[] {
  const lostOf = (id: string): number[] =>
    (spoiled?.stock ?? []).flatMap((one) => (one.kind === "length" && one.stock === id ? [one.length] : []));
  const parts = [...lengths, ...boards.bought];
  const known = gathered(
    parts.filter(({ stock }) => stock !== undefined),
    ({ stock }) => stock ?? "",
  );
  return [
    ...[...known].flatMap(([id, group]) => sectionLines(project, id, { parts: group, lost: lostOf(id) })),
    ...parts.filter(({ stock }) => stock === undefined).flatMap(sectionToFind),
  ];
}

/** Battens and backing of one section are bought together. */
function sectionLines(
  { stock }: Project,
  id: string,
  { parts, lost }: { readonly parts: readonly LengthPart[]; readonly lost: readonly number[] },
): OrderLine[] {
  const section =
    stock.battens.find((one) => one.id === id) ?? (stock.boards ?? []).find((one) => one.id === id);
  if (!section) return [];
  const lengthOf = new Map(parts.flatMap(({ request }) => request.stock.map((bar) => [bar.id, bar.length])));
  const bars = parts.flatMap(({ result }) =>
    result.plan.bars.map(({ stockId }) => lengthOf.get(stockId) ?? 0),
  );
  const used = counted([...bars, ...lost])
    .sort(([a], [b]) => a - b)
    .map(
      ([length, count]): Used => ({
        id: String(length),
        size: length,
        count,
        left: Number.POSITIVE_INFINITY,
      }),
    );
  const spare = spareFor(used);
  const { thickness, width, pricePerM } = section;
  const kind = parts.some(({ use }) => use === "boards") ? "board" : "batten";
  return used.map(({ id: key, size, count }) =>
    priced(
      {
        item: message(`schedule.order.${kind}`, { thickness, width, length: size }),
        id,
        unit: "length",
        needed: count,
        ordered: count + spare(key),
      },
      pricePerM === undefined ? undefined : (pricePerM * size) / MM_PER_M,
    ),
  );
}

/** Backing of a section that is not in stock: metres to buy, uncut. */
function sectionToFind({ request, material, thickness, width }: LengthPart): OrderLine[] {
  const lengths = request.demands.map(({ length }) => length);
  return lengths.length === 0
    ? []
    : [
        byTheMetre(
          "schedule.order.backing",
          { material, thickness, width, count: lengths.length, longest: longestToFind(lengths) },
          lengths,
        ),
      ];
}

function toFindLines({ boards }: CutPlan): OrderLine[] {
  return boards.toFind.map(({ species, width, thickness, pieces }) => {
    const lengths = pieces.map(({ length }) => length);
    return byTheMetre(
      "schedule.order.boards-to-find",
      { species, width, thickness, count: pieces.length, longest: longestToFind(lengths) },
      lengths,
    );
  });
}

/** A board or timber must be at least this long, so it is rounded up. */
function longestToFind(lengths: readonly number[]): number {
  return gapMm(Math.max(...lengths), { step: 0.5 });
}

function byTheMetre(
  key: string,
  values: Parameters<typeof message>[1],
  lengths: readonly number[],
): OrderLine {
  const metres = lengths.reduce((sum, length) => sum + length, 0) / MM_PER_M;
  return { item: message(key, values), unit: "m", needed: metres, ordered: wholeWith(metres, SPARE.sawn) };
}

/** Needed and spare, rounded up to whole units. */
function wholeWith(needed: number, spare: number): number {
  return Math.ceil(needed * (1 + spare) - DUST);
}

function screwLines({ stock }: Project, { screws }: Omit<Takeoff, "order">): OrderLine[] {
  return screws.flatMap(({ screw: id, count }): OrderLine[] => {
    const screw = stock.screws.find((one) => one.id === id);
    if (!screw) return [];
    const { diameter, length, price } = screw;
    const item = message("schedule.order.screw", { id, diameter, length, each: SCREWS_A_PACK });
    const ordered = Math.ceil((count * (1 + SPARE.small)) / SCREWS_A_PACK - DUST);
    const line = { item, id, unit: "pack", needed: count / SCREWS_A_PACK, ordered } as const;
    return [priced(line, price === undefined ? undefined : price * SCREWS_A_PACK)];
  });
}

/** What the project has no price for: packers, meshes, strips, layers and finish. */
function smallLines(quantities: Omit<Takeoff, "order">): OrderLine[] {
  const { packers, closures, flashings, gaskets, pans, sleeves, layers, finishes } = quantities;
  return [
    ...packers.map(
      ({ thickness, count }): OrderLine => ({
        item: message("schedule.order.packer", { thickness }),
        unit: "piece",
        needed: count,
        ordered: wholeWith(count, SPARE.small),
      }),
    ),
    ...closures.map(
      ({ material, width, metres }): OrderLine => ({
        item: message("schedule.order.closure", { material, width }),
        unit: "m",
        needed: metres,
        ordered: wholeWith(metres, SPARE.small),
      }),
    ),
    ...flashings.map(
      ({ width, thickness, metres }): OrderLine => ({
        item: message("schedule.order.flashing", { width, thickness }),
        unit: "m",
        needed: metres,
        ordered: wholeWith(metres, SPARE.small),
      }),
    ),
    ...gaskets.map(
      ({ material, width, thickness, metres }): OrderLine => ({
        item: message(`schedule.order.${material.replace(" ", "-")}`, { width, thickness }),
        unit: "m",
        needed: metres,
        ordered: wholeWith(metres, SPARE.small),
      }),
    ),
    ...pans.map(
      ({ width, metres }): OrderLine => ({
        item: message("schedule.order.sill-pan", { width }),
        unit: "m",
        needed: metres,
        ordered: wholeWith(metres, SPARE.small),
      }),
    ),
    ...sleeves.map(
      ({ material, diameter, length, count }): OrderLine => ({
        item: message(material === "sleeve" ? "schedule.order.sleeve" : "schedule.order.box", {
          diameter,
          length,
        }),
        unit: "piece",
        needed: count,
        ordered: count,
      }),
    ),
    ...layers.map(({ kind, material, thickness, areaM2, roll }): OrderLine => {
      const needed = roll?.areaM2 ?? areaM2;
      return {
        item: roll
          ? message("schedule.order.membrane-roll", { width: roll.width })
          : message(`schedule.order.${kind}`, { material: material ?? "", thickness }),
        unit: "m2",
        needed,
        ordered: wholeWith(needed, SPARE.small),
      };
    }),
    ...finishes.flatMap(({ finish, litres, areaM2, coats, dryingDays }): OrderLine[] =>
      litres === undefined || coats === undefined
        ? [
            {
              item: message("schedule.order.finish-unknown", { finish }),
              unit: "m2",
              needed: areaM2,
              ordered: Math.ceil(areaM2 - DUST),
            },
          ]
        : [
            {
              item: message("schedule.order.finish", { finish, areaM2, coats, days: dryingDays ?? 0 }),
              unit: "L",
              needed: litres.most,
              ordered: Math.ceil(litres.most - DUST),
            },
          ],
    ),
  ];
}

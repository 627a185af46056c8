/** P014: every end of the cavity is open to air and closed to animals, and lets enough air through. */
import { type Finding, finding } from "../findings/finding.ts";
import { overlaps } from "../geometry/interval.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import { rectsOverlap } from "../geometry/rect.ts";
import type { Vent } from "../setout/facade.ts";
import { type Message, message } from "../text/message.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { ruleName, rulesAsking } from "./rules-asking.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

export function cavityEnds(context: FaceContext): Finding[] {
  return context.zones.flatMap((view) => {
    if (view.pieces.length === 0) return [];
    const open = openEnds(view);
    return open.length > 0 ? [unclosed(view, open)] : airThrough(context, view);
  });
}

interface End {
  readonly position: Vent["position"];
  readonly opening?: string;
}

/** Ends without a vent that has a closure and lets air through. */
function openEnds(view: ZoneView): End[] {
  const region = polygonBounds(view.zone.region);
  const closed = view.vents.filter(({ closure, netCm2PerM }) => closure !== "" && netCm2PerM > 0);
  const has = (position: Vent["position"], x: readonly [number, number]): boolean =>
    closed.some((vent) => vent.position === position && overlaps(vent.x, x));
  const ends: End[] = (["base", "top"] as const)
    .filter((position) => !has(position, region.x))
    .map((position) => ({ position }));
  for (const opening of view.projectFace.openings) {
    if (!rectsOverlap(region, { x: opening.x, y: opening.y })) continue;
    const under = !opening.toBase && opening.y[0] > region.y[0];
    const over = opening.y[1] < region.y[1];
    if (under && !has("under opening", opening.x))
      ends.push({ position: "under opening", opening: opening.id });
    if (over && !has("over opening", opening.x)) ends.push({ position: "over opening", opening: opening.id });
  }
  return ends;
}

function unclosed(view: ZoneView, ends: readonly End[]): Finding {
  const [first] = ends;
  return finding({
    code: "P014",
    outcome: "fail",
    where: { ...view.where, ...(first?.opening ? { opening: first.opening } : {}) },
    says: message("proof.vents.open-end", {
      ends: ends.map(endName),
    }),
    hint: message("proof.vents.close"),
    source: { kind: "common practice" },
  });
}

function airThrough({ demands }: FaceContext, view: ZoneView): Finding[] {
  const least = greatest(view.vents, ({ netCm2PerM }) => -netCm2PerM);
  if (!least) return [];
  const demand = least.netCm2PerM;
  const asking = demands.ventArea.filter(({ value }) => !holds("at least", { demand, limit: value }));
  const most = greatest(asking.length > 0 ? asking : demands.ventArea, ({ value }) => value);
  const governing = asking.find(({ own }) => own) ?? most;
  if (!governing) return [];
  const enough = asking.length === 0;
  return [
    finding({
      code: "P014",
      outcome: enough ? "pass" : "attention",
      where: { at: [(least.x[0] + least.x[1]) / 2, least.y], ...view.where },
      says: message(enough ? "proof.vents.enough" : "proof.vents.disagree", {
        net: demand,
        most: governing.value,
        end: endName({ position: least.position, ...openingAt(view, least) }),
        rules: rulesAsking(asking, "cm2PerM"),
      }),
      ...(enough ? {} : { hint: message("proof.rules-disagree", { rule: ruleName(governing.id) }) }),
      ...compared("at least", { demand, limit: governing.value, unit: "cm²/m" }),
      working: {
        formula: "A_n ≥ A_min",
        inputs: [
          input("A_n", { meaning: "net-vent", value: demand, unit: "cm²/m", basis: "derived" }),
          input("A_min", {
            meaning: "least-vent",
            value: governing.value,
            unit: "cm²/m",
            basis: governing.basis,
          }),
        ],
        substituted: `${written(demand, 0)} ${enough ? "≥" : "<"} ${governing.value}`,
      },
      source: governing.source,
    }),
  ];
}

function endName({ position, opening }: End): Message {
  return message(`proof.vent-at.${position.replace(" ", "-")}`, { opening: opening ?? "" });
}

function openingAt(view: ZoneView, vent: Vent): Pick<End, "opening"> {
  if (vent.position === "base" || vent.position === "top") return {};
  const found = view.projectFace.openings.find(({ x }) => overlaps(x, vent.x));
  return found ? { opening: found.id } : {};
}

/** P031: flashings slope outward, go up behind the membrane, drip clear of the cladding, and keep the cladding off. */
import { type Finding, finding, type Source } from "../findings/finding.ts";
import { overlaps } from "../geometry/interval.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import { rectsOverlap } from "../geometry/rect.ts";
import type { Piece, ZonePlane } from "../setout/facade.ts";
import { type Message, message } from "../text/message.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

const CODE: Source = {
  kind: "document",
  document: "Ontario Building Code, O. Reg. 332/12, as the National Building Code of Canada",
  clause: "9.27.3.8, 9.20.13.12",
};
/** Slope in percent, and millimetres: the upstand behind the membrane, the drip before the cladding, under it at a sill. */
const LEAST = { slope: 6, upstand: 50, headDrip: 10, sillDrip: 25 } as const;
/** Cladding over a flashing, against water that climbs: US siding guides 6 mm, New Zealand 5 mm. */
const OVER_FLASHING_MM = 6;
const NEAR_MM = 100;

export function flashingWater({ zones }: FaceContext): Finding[] {
  return zones.flatMap((view) => {
    const bounds = polygonBounds(view.zone.region);
    const flashings = view.face.pieces.filter(({ kind }) => kind === "flashing");
    return view.face.openings.flatMap(({ id, kind, region }) => {
      const middle = (region.x[0] + region.x[1]) / 2;
      const inZone = middle >= bounds.x[0] && middle <= bounds.x[1];
      if (!view.plane || !inZone || !rectsOverlap(bounds, region)) return [];
      if (region.y[1] >= bounds.y[1] || (kind !== "window" && kind !== "door")) return [];
      const own = flashings.filter(({ outline }) => overlaps(polygonBounds(outline).x, region.x));
      const head = own.find(({ outline }) => lies(polygonBounds(outline).y[0] - region.y[1]));
      if (!head) return [missing(view, id)];
      const sill = own.find(({ outline }) => lies(region.y[0] - polygonBounds(outline).y[1]));
      return [
        shape(view, { opening: id, piece: head, plane: view.plane, least: LEAST.headDrip }),
        ...(sill
          ? [shape(view, { opening: id, piece: sill, plane: view.plane, least: LEAST.sillDrip })]
          : []),
        over(view, id, head),
      ];
    });
  });
}

/** Whether a flashing at this distance outside an opening's edge is the opening's own, and not another's in its line. */
function lies(offMm: number): boolean {
  return offMm >= 0 && offMm <= NEAR_MM;
}

function missing(view: ZoneView, opening: string): Finding {
  return finding({
    code: "P031",
    outcome: "attention",
    where: { opening, ...view.where },
    says: message("proof.flashing.none", { opening }),
    hint: message("proof.flashing.add"),
    source: CODE,
  });
}

interface Shaped {
  readonly opening: string;
  readonly piece: Piece;
  readonly plane: ZonePlane;
  readonly least: number;
}

interface Asked {
  readonly what: "slope" | "drip" | "upstand";
  readonly demand: number;
  readonly limit: number;
  readonly unit: "%" | "mm";
}

/** The worst of slope, drip and upstand stands for the flashing; all that fall short are named. */
function shape(view: ZoneView, { opening, piece, plane, least }: Shaped): Finding {
  const [top, back, front] = piece.profile ?? [];
  const run = front && back ? front[0] - back[0] : 0;
  const slope = front && back && run > 0 ? (100 * (back[1] - front[1])) / run : 0;
  const drip = front ? front[0] - plane.faceZ : 0;
  const asked: Asked[] = [
    { what: "slope", demand: slope, limit: LEAST.slope, unit: "%" },
    { what: "drip", demand: drip, limit: least, unit: "mm" },
  ];
  // A sill's back edge lies under the frame and has no upstand of its own.
  if (least === LEAST.headDrip)
    asked.push({
      what: "upstand",
      demand: top && back ? top[1] - back[1] : 0,
      limit: LEAST.upstand,
      unit: "mm",
    });
  const lacking = asked.filter((one) => !holds("at least", one));
  const sound = lacking.length === 0;
  const { what, demand, limit, unit } =
    greatest(asked, (one) => one.limit / Math.max(one.demand, 0.001)) ?? (asked[0] as Asked);
  return finding({
    code: "P031",
    outcome: sound ? "pass" : "fail",
    where: { opening, marks: [piece.mark], ...view.where },
    says: message(sound ? "proof.flashing.sheds" : "proof.flashing.lacks", {
      mark: piece.mark,
      slope,
      drip,
      lacking: lacking.map((one): Message => message(`proof.flashing.part-${one.what}`)),
    }),
    ...(sound
      ? {}
      : {
          hint: message("proof.flashing.bend", { slope: LEAST.slope, upstand: LEAST.upstand, drip: least }),
        }),
    ...compared("at least", { demand, limit, unit }),
    working: {
      formula: "x ≥ x_min",
      inputs: [
        {
          symbol: "x",
          meaning: message(`proof.flashing.part-${what}`),
          value: demand,
          unit,
          basis: "derived",
        },
        input("x_min", { meaning: "least-of-flashing", value: limit, unit, basis: "given" }),
      ],
      substituted: `${written(demand)} ${holds("at least", { demand, limit }) ? "≥" : "<"} ${limit}`,
    },
    source: CODE,
  });
}

/** How far the cladding over an opening keeps off its flashing. */
function over(view: ZoneView, opening: string, head: Piece): Finding {
  const flashing = polygonBounds(head.outline);
  const edges = view.pieces.flatMap(({ outline, mark }) => {
    const { x, y } = polygonBounds(outline);
    return overlaps(x, flashing.x) && y[0] >= flashing.y[0] ? [{ mark, off: y[0] - flashing.y[1] }] : [];
  });
  const lowest = edges.reduce<{ mark: string; off: number } | undefined>(
    (least, edge) => (least === undefined || edge.off < least.off ? edge : least),
    undefined,
  );
  const demand = lowest?.off ?? OVER_FLASHING_MM;
  const clear = holds("at least", { demand, limit: OVER_FLASHING_MM });
  return finding({
    code: "P031",
    outcome: clear ? "pass" : "attention",
    where: { opening, marks: [...(lowest ? [lowest.mark] : []), head.mark], ...view.where },
    says: message(clear ? "proof.flashing.clear" : "proof.flashing.close", {
      opening,
      off: demand,
      least: OVER_FLASHING_MM,
    }),
    ...(clear ? {} : { hint: message("proof.flashing.raise") }),
    ...compared("at least", { demand, limit: OVER_FLASHING_MM, unit: "mm" }),
    working: {
      formula: "c ≥ c_min",
      inputs: [
        input("c", { meaning: "over-flashing", value: demand, unit: "mm", basis: "derived" }),
        input("c_min", {
          meaning: "least-over-flashing",
          value: OVER_FLASHING_MM,
          unit: "mm",
          basis: "given",
        }),
      ],
      substituted: `${written(demand)} ${clear ? "≥" : "<"} ${OVER_FLASHING_MM}`,
    },
    source: { kind: "document", document: "US siding and trim guides, against water that climbs" },
  });
}

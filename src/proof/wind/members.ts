/**
 * The boards, sheets, rails and battens of a zone as beams under a pressure of one: boards and sheets as strips across their
 * supports, rails and battens by what those lay on them. Lengths and areas stand for forces until a pressure is put to them.
 */
import { type Bent, continuousBeam, type PointLoad } from "../../equations/beams/continuous-beam.ts";
import { type Interval, intervalLength } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import type { Fixing, Piece } from "../../setout/facade.ts";
import type { ZoneView } from "../context.ts";

export interface Support {
  /** Along the member (mm). */
  readonly at: number;
  readonly fixings: readonly Fixing[];
  /** What it lays there: of a strip of a board or sheet a length (mm), of a carrier an area (mm²). */
  readonly share: number;
}

export interface Member {
  readonly piece: Piece;
  readonly box: Rect;
  /** Which way it spans. */
  readonly along: "x" | "y";
  readonly supports: readonly Support[];
  /** Undefined where one support alone holds it. */
  readonly bent: Bent | undefined;
  /** The largest moment under a pressure of one: of a strip mm², of a carrier mm³. */
  readonly moment: number;
  /** What it gathers pressure from across its span (mm). */
  readonly gathers: number;
}

export interface Members {
  readonly skins: readonly Member[];
  readonly carriers: readonly Member[];
}

/** Screws nearer than this along a member hold it in one place (mm). */
const ONE_PLACE_MM = 25;

const across = (along: "x" | "y"): "x" | "y" => (along === "x" ? "y" : "x");

export function membersOf(view: ZoneView): Members {
  const rails = view.face.pieces.filter(({ kind, zone }) => kind === "rail" && zone === view.zone.id);
  const carriers = new Map([...rails, ...view.battens].map((piece) => [piece.mark, piece]));
  const beams = new Map<string, Bent | undefined>();
  const skins = view.pieces.map((piece) => skinOf(piece, { carriers, beams }));
  const lying = laidBy(skins);
  const hung = hungOn(skins, carriers);
  const on = (piece: Piece) => ({ laid: lying.get(piece.mark) ?? [], hung: hung.get(piece.mark) ?? 0 });
  const onRails = rails.map((piece) => carrierOf(piece, { ...on(piece), crossing: [] }));
  const crossing = laidBy(onRails);
  const battens = view.battens.map((piece) =>
    carrierOf(piece, { ...on(piece), crossing: crossing.get(piece.mark) ?? [] }),
  );
  return { skins, carriers: [...onRails, ...battens] };
}

/** What boards and sheets hang on each carrier by their screws (mm²), past its ends too. */
function hungOn(skins: readonly Member[], carriers: ReadonlyMap<string, Piece>): ReadonlyMap<string, number> {
  const boxes = new Map([...carriers].map(([mark, { outline }]) => [mark, polygonBounds(outline)]));
  const hung = new Map<string, number>();
  for (const skin of skins) {
    for (const { fixing, areaMm2 } of screwShares(skin)) {
      const box = boxes.get(fixing.into);
      if (box && inside(box, fixing)) hung.set(fixing.into, (hung.get(fixing.into) ?? 0) + areaMm2);
    }
  }
  return hung;
}

function inside({ x, y }: Rect, at: Fixing): boolean {
  return at.x >= x[0] && at.x <= x[1] && at.y >= y[0] && at.y <= y[1];
}

interface Lying {
  readonly carriers: ReadonlyMap<string, Piece>;
  /** Beams worked out already, by how their supports lie: courses are much alike. */
  readonly beams: Map<string, Bent | undefined>;
}

function skinOf(piece: Piece, { carriers, beams }: Lying): Member {
  const box = polygonBounds(piece.outline);
  const first = piece.fixings.find(({ into }) => carriers.has(into));
  const under = first && carriers.get(first.into);
  const along = under && isLevel(under) ? "y" : "x";
  const places = placesOf(piece.fixings, along);
  const [from, to] = box[along];
  const key = [to - from, ...places.map(({ at }) => at - from)].join(" ");
  if (!beams.has(key))
    beams.set(
      key,
      continuousBeam({
        supports: places.map(({ at }) => at - from),
        from: 0,
        to: to - from,
        load: 1,
      }),
    );
  const bent = beams.get(key);
  const alone = places[0];
  return {
    piece,
    box,
    along,
    supports: places.map((place, i) => ({ ...place, share: bent?.reactions[i] ?? to - from })),
    bent,
    moment: bent?.moment ?? (alone ? Math.max(alone.at - from, to - alone.at) ** 2 / 2 : 0),
    gathers: piece.kind === "board" ? intervalLength(box[across(along)]) : 0,
  };
}

/** What one member lays on another by one of its supports. */
interface Laid {
  readonly by: Member;
  readonly share: number;
  /** A screw of it there. */
  readonly screw: Fixing;
}

/** By the mark of what it is laid on. */
function laidBy(members: readonly Member[]): ReadonlyMap<string, readonly Laid[]> {
  const found = new Map<string, Laid[]>();
  for (const by of members) {
    for (const { fixings, share } of by.supports) {
      for (let i = 0; i < fixings.length; i++) {
        const screw = fixings[i] as Fixing;
        const mark = screw.into;
        // Once for each carrier that the screws of this place reach.
        if (fixings.findIndex(({ into }) => into === mark) < i) continue;
        const list = found.get(mark);
        if (list) list.push({ by, share, screw });
        else found.set(mark, [{ by, share, screw }]);
      }
    }
  }
  return found;
}

/** What a rail or batten carries: the strips that end on it side by side, and rails that cross it. */
function carrierOf(
  piece: Piece,
  {
    laid,
    hung,
    crossing,
  }: { readonly laid: readonly Laid[]; readonly hung: number; readonly crossing: readonly Laid[] },
): Member {
  const box = polygonBounds(piece.outline);
  const along = isLevel(piece) ? "x" : "y";
  const points = crossing.map(({ share, screw }): PointLoad => ({ at: screw[along], load: share }));
  const places = placesOf(piece.fixings, along);
  const [from, to] = box[along];
  // Where cladding reaches past its ends a short piece carries more than what lies over it.
  const gathers = Math.max(
    heaviest(
      laid.flatMap(({ by, share }) => (by.along === along ? [] : [{ stretch: by.box[along], share }])),
    ),
    hung / (to - from),
  );
  const bent = continuousBeam({
    supports: places.map(({ at }) => at),
    from,
    to,
    load: gathers,
    points: points.filter(({ at }) => at >= from && at <= to),
  });
  const whole = points.reduce((sum, { load }) => sum + load, gathers * (to - from));
  const alone = places[0];
  return {
    piece,
    box,
    along,
    supports: places.map((place, i) => ({ ...place, share: bent?.reactions[i] ?? whole })),
    bent,
    moment: bent?.moment ?? (alone ? (whole * Math.max(alone.at - from, to - alone.at)) / 2 : 0),
    gathers: points.length > 0 ? whole / (to - from) : gathers,
  };
}

function isLevel({ outline }: Piece): boolean {
  const { x, y } = polygonBounds(outline);
  return intervalLength(x) > intervalLength(y);
}

function placesOf(fixings: readonly Fixing[], along: "x" | "y"): { at: number; fixings: Fixing[] }[] {
  const places: { at: number; fixings: Fixing[] }[] = [];
  for (const fixing of risingAlong(fixings, along)) {
    const last = places.at(-1);
    if (last && fixing[along] - last.at < ONE_PLACE_MM) last.fixings.push(fixing);
    else places.push({ at: fixing[along], fixings: [fixing] });
  }
  return places;
}

/** Setting-out names most screws in this order already. */
function risingAlong(fixings: readonly Fixing[], along: "x" | "y"): readonly Fixing[] {
  for (let i = 1; i < fixings.length; i++)
    if ((fixings[i]?.[along] ?? 0) < (fixings[i - 1]?.[along] ?? 0))
      return [...fixings].sort((a, b) => a[along] - b[along]);
  return fixings;
}

/** The most that stretches lay side by side on one place. */
function heaviest(laid: readonly { readonly stretch: Interval; readonly share: number }[]): number {
  let most = 0;
  for (const { stretch: one } of laid) {
    // A sum is greatest where some stretch begins.
    let sum = 0;
    for (const { stretch, share } of laid) if (stretch[0] <= one[0] && stretch[1] > one[0]) sum += share;
    most = Math.max(most, sum);
  }
  return most;
}

export interface ScrewShare {
  readonly fixing: Fixing;
  /** What it holds of the pressure (mm²). */
  readonly areaMm2: number;
}

/** A strip's reaction, shared out among the screws of its line by the half gaps between them and to the edges. */
export function screwShares({ box, along, supports, piece }: Member): ScrewShare[] {
  const other = across(along);
  if (piece.kind !== "board" && piece.kind !== "sheet")
    return supports.flatMap(({ fixings, share }) =>
      fixings.map((fixing) => ({ fixing, areaMm2: share / fixings.length })),
    );
  return supports.flatMap(({ fixings, share }) => {
    const sorted = risingAlong(fixings, other);
    return sorted.map((fixing, i) => {
      const before = sorted[i - 1];
      const after = sorted[i + 1];
      const from = before ? (before[other] + fixing[other]) / 2 : box[other][0];
      const to = after ? (after[other] + fixing[other]) / 2 : box[other][1];
      return { fixing, areaMm2: share * (to - from) };
    });
  });
}

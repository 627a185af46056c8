/** What sizes a piece can have at all when it is cut again: no sliver, and no more than its stock gives. */
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import type { Project } from "../../project/schema/project.ts";
import { toGridSteps } from "../../units/length.ts";
import type { FacePiece } from "./face-pieces.ts";
import type { Unknowns } from "./unknowns.ts";

/** Between two edges of a piece there is no less (mm), common practice: a narrower tongue breaks. */
const NARROWEST_MM = 20;

interface Sized {
  readonly project: Project;
  readonly pieces: readonly FacePiece[];
}

export function sizes(
  { project, pieces }: Sized,
  { index, unknowns, of }: { readonly index: number; readonly unknowns: Unknowns; readonly of: number },
): void {
  const piece = pieces[index] as FacePiece;
  const edges = [...unknowns.edgesOf(index)].sort(([a], [b]) => a - b);
  edges.slice(1).forEach(([at, edge], i) => {
    const [before, from] = edges[i] as (typeof edges)[number];
    unknowns.between(from, edge, { least: toGridSteps(Math.min(at - before, NARROWEST_MM)) }, { of });
  });
  const [first, last] = [edges[0], edges.at(-1)];
  if (!first || !last || first === last) return;
  const size = last[0] - first[0];
  const { least, most } = sizeLimits(project, piece)[unknowns.axis];
  unknowns.between(
    first[1],
    last[1],
    { least: toGridSteps(Math.min(size, least)), most: toGridSteps(Math.max(size, most)) },
    { of },
  );
}

interface Limits {
  readonly least: number;
  readonly most: number;
}

/** Along x and y (mm). */
function sizeLimits(
  project: Project,
  { piece, cladding }: Pick<FacePiece, "piece" | "cladding">,
): Readonly<Record<"x" | "y", Limits>> {
  const box = polygonBounds(piece.outline);
  const now = { x: box.x[1] - box.x[0], y: box.y[1] - box.y[0] };
  const floor = project.limits.sliver.floor.value;
  if (cladding?.kind === "boards") {
    const along = { least: NARROWEST_MM, most: cladding.maxPieceLength };
    const across = { least: floor * Math.min(...cladding.widths), most: Math.max(...cladding.widths) };
    return piece.grain === "y" ? { x: across, y: along } : { x: along, y: across };
  }
  const stock = sheetFor(project, cladding?.kind === "sheets" ? cladding.stock : [], now);
  const [x, y] = stock ?? [now.x, now.y];
  return { x: { least: floor * Math.min(x, y), most: x }, y: { least: floor * Math.min(x, y), most: y } };
}

/** The largest usable sheet that a piece comes out of, as it stands there (mm). */
function sheetFor(
  { stock }: Project,
  ids: readonly string[],
  { x, y }: Readonly<Record<"x" | "y", number>>,
): readonly [number, number] | undefined {
  const trim = 2 * stock.saw.sheetTrim;
  return stock.sheets
    .filter(({ id }) => ids.includes(id))
    .flatMap(({ width, height }): (readonly [number, number])[] => [
      [width - trim, height - trim],
      [height - trim, width - trim],
    ])
    .filter(([w, h]) => w >= x && h >= y)
    .sort((a, b) => b[0] * b[1] - a[0] * a[1])[0];
}

export interface FromStock {
  /** Id of the stock; absent where none gives it. */
  readonly stock?: string;
  readonly price?: number;
}

/** The cheapest sheet or bought board that a piece of this size comes out of; of the pile nothing is said here. */
export function stockFor(
  project: Project,
  { cladding, piece }: Pick<FacePiece, "cladding" | "piece">,
  { x, y }: Rect,
): FromStock {
  const { stock } = project;
  const [across, up] = [x[1] - x[0], y[1] - y[0]];
  if (cladding?.kind === "sheets") {
    const trim = 2 * stock.saw.sheetTrim;
    const fits = stock.sheets
      .filter(({ id }) => cladding.stock.includes(id))
      .filter(({ width, height }) => {
        const [w, h] = [width - trim, height - trim];
        return (w >= across && h >= up) || (h >= across && w >= up);
      })
      .sort(
        (a, b) =>
          (a.price ?? 0) - (b.price ?? 0) ||
          a.width * a.height - b.width * b.height ||
          (a.id < b.id ? -1 : 1),
      );
    const best = fits[0];
    return best ? { stock: best.id, ...(best.price !== undefined && { price: best.price }) } : {};
  }
  if (cladding?.kind !== "boards") return {};
  const [length, width] = piece.grain === "y" ? [up, across] : [across, up];
  const fits = (stock.boards ?? []).filter(
    (one) =>
      one.species === cladding.species &&
      one.thickness >= cladding.thickness &&
      one.width >= width &&
      Math.max(...one.lengths) >= length,
  );
  const best = fits.sort((a, b) => a.width - b.width || (a.id < b.id ? -1 : 1))[0];
  if (!best) return {};
  return {
    stock: best.id,
    ...(best.pricePerM !== undefined && { price: (best.pricePerM * length) / 1000 }),
  };
}

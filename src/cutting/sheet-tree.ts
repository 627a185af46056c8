import { fromGridSteps } from "../units/length.ts";
import type { CutNode, CutSheet, Rectangle, SheetDemand, SheetPlacement, SheetStock } from "./model.ts";
import type { Region, Sheet } from "./sheet-nodes.ts";

/** Leftovers are kept from this on, mm, where a request does not say. */
export const usualOffcut = 200;

/**
 * A sheet back in millimetres, with the kerf taken out of every cut. Of the regions side by side the largest comes first and
 * the leftover last, so that equal sizes are cut at one setting of the saw and what is left over lies together; the smallest first where
 * a cut would else lie further from both edges than the saw reaches.
 */
export function drawSheet(drawing: {
  sheet: Sheet;
  stock: SheetStock;
  index: number;
  /** The next piece of a type. */
  next: (type: number) => SheetDemand | undefined;
  /** Grid steps in one unit of the tree. */
  steps: number;
  /** In grid steps, as is the trim. */
  kerf: number;
  trim: number;
  keepOffcutFrom: number;
  /** Furthest that a cut can be set off the nearer edge, in grid steps. */
  reach: number;
}): CutSheet {
  const { sheet, stock, index, next, steps, kerf, trim, keepOffcutFrom, reach } = drawing;
  const placements: SheetPlacement[] = [];
  const offcuts: Rectangle[] = [];

  /** A region is grown by one kerf; what is no wider than that went under the blade. */
  const boxOf = (x: number, y: number, width: number, height: number): Rectangle | undefined =>
    width * steps <= kerf || height * steps <= kerf
      ? undefined
      : {
          x: fromGridSteps(x * steps + trim),
          y: fromGridSteps(y * steps + trim),
          width: fromGridSteps(width * steps - kerf),
          height: fromGridSteps(height * steps - kerf),
        };

  const draw = (region: Region, x: number, y: number): CutNode | undefined => {
    const box = boxOf(x, y, region.width, region.height);
    if (box === undefined) return undefined;
    if (region.piece >= 0) {
      const piece = next(region.piece)?.id ?? "";
      placements.push({ demandId: piece, ...box, turned: region.turned });
      return { ...box, piece };
    }
    if (region.axis !== undefined) return drawRow(region, ordered(region, (reach + kerf) / steps), x, y);
    if (Math.min(box.width, box.height) < keepOffcutFrom) return box;
    offcuts.push(box);
    return { ...box, offcut: true };
  };

  /** Regions side by side: the first is cut off, then the others from what is left. */
  const drawRow = (row: Region, parts: readonly Region[], x: number, y: number): CutNode | undefined => {
    const [first, ...others] = parts;
    if (first === undefined) return undefined;
    if (others.length === 0) return draw(first, x, y);
    const across = row.axis === "x";
    const sizes = parts.reduce((sum, { width, height }) => sum + (across ? width : height), 0);
    const box = across ? boxOf(x, y, sizes, row.height) : boxOf(x, y, row.width, sizes);
    if (box === undefined) return undefined;
    const size = across ? first.width : first.height;
    const blade = fromGridSteps(((across ? x : y) + size) * steps - kerf + trim);
    const children = [
      draw(first, x, y),
      across ? drawRow(row, others, x + size, y) : drawRow(row, others, x, y + size),
    ];
    return {
      ...box,
      cut: { along: across ? "y" : "x", at: blade },
      children: children.filter((child) => child !== undefined),
    };
  };

  const tree = draw(sheet.root, 0, 0) ?? { x: 0, y: 0, width: 0, height: 0 };
  return { stockId: stock.id, index, tree, placements, offcuts };
}

function ordered(row: Region, reach: number): Region[] {
  const size = (one: Region) => (row.axis === "x" ? one.width : one.height);
  const usual = [...row.parts].sort(
    (a, b) => Number(a.isLeftover) - Number(b.isLeftover) || size(b) - size(a) || b.piece - a.piece,
  );
  let rest = usual.reduce((sum, one) => sum + size(one), 0);
  const isWithin = usual.slice(0, -1).every((one) => {
    rest -= size(one);
    return Math.min(size(one), rest) <= reach;
  });
  // No cut of the row can lie nearer to an edge than where the smallest part left comes off first.
  return isWithin ? usual : usual.sort((a, b) => size(a) - size(b));
}

import { fromGridSteps } from "../units/length.ts";
import type { PackedSheet, Region } from "./guillotine.ts";
import type { CutNode, CutSheet, Rectangle, SheetDemand, SheetPlacement, SheetStock } from "./model.ts";

/** A packed sheet, back in millimetres, with the kerf taken out of every cut. `kerf`, `trim` in steps. */
export function drawSheet(sheet: {
  packed: PackedSheet;
  stock: SheetStock;
  index: number;
  demands: readonly SheetDemand[];
  kerf: number;
  trim: number;
  keepOffcutFrom: number;
}): CutSheet {
  const placements: SheetPlacement[] = [];
  const offcuts: Rectangle[] = [];

  const draw = (region: Region): CutNode | undefined => {
    // A region is grown by one kerf; what is no wider than that went under the blade.
    if (region.width <= sheet.kerf || region.height <= sheet.kerf) return undefined;
    const box = {
      x: fromGridSteps(region.x + sheet.trim),
      y: fromGridSteps(region.y + sheet.trim),
      width: fromGridSteps(region.width - sheet.kerf),
      height: fromGridSteps(region.height - sheet.kerf),
    };
    if (region.item !== undefined) {
      const piece = sheet.demands[region.item.demand]?.id ?? "";
      placements.push({ demandId: piece, ...box, turned: region.turned ?? false });
      return { ...box, piece };
    }
    const [first, second] = region.children ?? [];
    if (region.cut === undefined || first === undefined || second === undefined) {
      if (Math.min(box.width, box.height) < sheet.keepOffcutFrom) return box;
      offcuts.push(box);
      return { ...box, offcut: true };
    }
    const blade = region.cut === "y" ? second.x - sheet.kerf : second.y - sheet.kerf;
    const children = [draw(first), draw(second)].filter((child) => child !== undefined);
    return { ...box, cut: { along: region.cut, at: fromGridSteps(blade + sheet.trim) }, children };
  };

  const tree = draw(sheet.packed.root) ?? { x: 0, y: 0, width: 0, height: 0 };
  return { stockId: sheet.stock.id, index: sheet.index, tree, placements, offcuts };
}

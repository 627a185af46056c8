/** Sheet pieces asked of the project's sheets: one request for each material, thickness and choice of sheets. */
import type { Project, SheetCladding } from "../../project/schema/project.ts";
import type { Piece } from "../../setout/facade.ts";
import type { SheetDemand, SheetSolver, SheetStock } from "../model.ts";
import { countOf, sheetSettings } from "../settings.ts";
import type { SawnPiece } from "./pieces.ts";
import { gathered, isCladding } from "./pieces.ts";
import type { SheetPart } from "./plan.ts";

interface SheetPiece {
  readonly piece: Piece;
  readonly cladding: SheetCladding;
}

/** How many improving steps one material's sheets may take. */
const BUDGET = 600;

export function sheetParts(project: Project, sawn: readonly SawnPiece[], solve: SheetSolver): SheetPart[] {
  const pieces = sawn.flatMap(({ piece, cladding }): SheetPiece[] =>
    isCladding(piece) && cladding?.kind === "sheets" ? [{ piece, cladding }] : [],
  );
  const groups = gathered(pieces, ({ cladding: { material, thickness, stock } }) =>
    JSON.stringify([material, thickness, [...stock].sort()]),
  );
  // Sheets of which there are only so many are shared out in order.
  const used = new Map<string, number>();
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    const stock = sheetStock(project, first.cladding.stock, used);
    const request = {
      stock,
      demands: group.map(({ piece }) => demandOf(piece)),
      kerf: project.stock.saw.kerf,
      ...(project.stock.saw.fence === undefined ? {} : { reach: project.stock.saw.fence }),
      budget: BUDGET,
    };
    const result = solve(request);
    for (const { stockId } of result.plan.sheets) used.set(stockId, (used.get(stockId) ?? 0) + 1);
    const part: SheetPart = {
      claddings: [...new Set(group.map(({ cladding }) => cladding.id))],
      material: first.cladding.material,
      thickness: first.cladding.thickness,
      request,
      result,
      costIn: stock.every(({ cost }) => cost !== undefined) ? "money" : "m2",
      settings: countOf(result.plan.sheets.map(sheetSettings)),
    };
    return [part];
  });
}

function sheetStock(
  project: Project,
  ids: readonly string[],
  used: ReadonlyMap<string, number>,
): SheetStock[] {
  const chosen = project.stock.sheets.filter(({ id }) => ids.includes(id));
  // A price on some sheets only compares with nothing: then area decides.
  const priced = chosen.every(({ price }) => price !== undefined);
  return chosen.map(({ id, width, height, price, count }) => ({
    id,
    width,
    height,
    trim: project.stock.saw.sheetTrim,
    ...(priced && price !== undefined ? { cost: price } : {}),
    ...(count === undefined ? {} : { count: Math.max(0, count - (used.get(id) ?? 0)) }),
  }));
}

/** The box that is sawn first. A piece's length runs with its grain, as does a sheet's height. */
function demandOf({ mark, cut, grain }: Piece): SheetDemand {
  return { id: mark, width: cut.width, height: cut.length, mayTurn: grain === undefined };
}

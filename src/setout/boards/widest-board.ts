/** The widest board that a cladding can be sawn from. */
import type { BoardCladding, Project } from "../../project/schema/project.ts";

/** Of the stock, and of the pile less its straightened edges and wane (mm); undefined where neither has any of the wood. */
export function widestBoard(
  { stock, pile }: Pick<Project, "stock" | "pile">,
  { species, thickness, lots }: BoardCladding,
): number | undefined {
  const mine = (pile?.lots ?? []).filter((lot) => (lots ? lots.includes(lot.id) : lot.species === species));
  const ids = mine.map(({ id }) => id);
  const widths = [
    ...(stock.boards ?? []).filter((one) => one.species === species && one.thickness >= thickness),
    ...(pile?.boards ?? [])
      .filter((one) => ids.includes(one.lot) && one.thickness >= thickness)
      .map(({ width, wane }) => ({ width: width - (wane?.width ?? 0) - 2 * stock.saw.boardEdgeTrim })),
  ].map(({ width }) => width);
  return widths.length > 0 ? Math.max(...widths) : undefined;
}

/** What a sheet of labels takes of its paper. */
import { snap } from "../units/length.ts";
import { PAPER_SIZES } from "../units/paper-sizes.ts";
import type { LabelSheet } from "./schema/sheets.ts";

/** How far the last column reaches past the paper's right edge and the last row past its lower one (mm); 0 where it does not. */
export function pastPaper(sheet: LabelSheet): { readonly right: number; readonly below: number } {
  const { left, top, columns, rows, gapX, gapY } = sheet;
  const paper = PAPER_SIZES[sheet.paper];
  return {
    right: Math.max(0, snap(left + columns * sheet.width + (columns - 1) * gapX - paper.width)),
    below: Math.max(0, snap(top + rows * sheet.height + (rows - 1) * gapY - paper.height)),
  };
}

/** The cuts of a sheet in the order in which they are made. */
import type { CutNode, Rectangle } from "./model.ts";

/** The part of a sheet that a cut goes through: on which side of an earlier cut it lies. */
export interface CutPart {
  readonly cut: number;
  readonly side: "left" | "right" | "below" | "above";
}

/** A cut right through a region of a sheet; `from` and `to` in the sheet's frame, mm. */
export interface NumberedCut {
  readonly number: number;
  /** Undefined for the whole sheet. */
  readonly part?: CutPart;
  /** What the region measures and where it lies in the sheet's frame, mm. */
  readonly region: Rectangle;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

/** The cuts of a sheet, numbered as they are made: a region is parted before what lies in it. */
export function numberedCuts(tree: CutNode): NumberedCut[] {
  const cuts: NumberedCut[] = [];
  const part = (node: CutNode, of?: CutPart): void => {
    const { cut, x, y, width, height, children = [] } = node;
    if (!cut) {
      for (const child of children) part(child, of);
      return;
    }
    const upright = cut.along === "y";
    const number = cuts.length + 1;
    cuts.push({
      number,
      ...(of && { part: of }),
      region: { x, y, width, height },
      from: upright ? [cut.at, y] : [x, cut.at],
      to: upright ? [cut.at, y + height] : [x + width, cut.at],
    });
    for (const child of children) {
      const beyond = (upright ? child.x : child.y) >= cut.at;
      const side = upright ? (beyond ? "right" : "left") : beyond ? "above" : "below";
      part(child, { cut: number, side });
    }
  };
  part(tree);
  return cuts;
}

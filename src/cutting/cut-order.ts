/**
 * The cuts of a sheet in the order in which they are made: as far as it can be, all of one setting of the saw before the next. A
 * setting is the measure from the left or lower edge of a part to the blade; it changes where a cut has another than the one before.
 */
import { toGridSteps } from "../units/length.ts";
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

/** A part in hand that is still to be cut. */
interface InHand {
  readonly node: CutNode;
  readonly setting: number;
  readonly part?: CutPart;
}

/** The cuts of a sheet, numbered as they are made: a region is parted before what lies in it. */
export function numberedCuts(tree: CutNode): NumberedCut[] {
  const still = new Map<number, number>();
  const cuts: NumberedCut[] = [];
  const hand: InHand[] = [];
  count(tree, still);
  take(tree, undefined, hand);
  let setting: number | undefined;
  while (hand.length > 0) {
    const at = nextOf(hand, setting, still);
    const [one] = hand.splice(at, 1) as [InHand];
    setting = one.setting;
    still.set(setting, (still.get(setting) ?? 0) - 1);
    const number = cuts.length + 1;
    cuts.push(numbered(one, number));
    for (const child of one.node.children ?? [])
      take(child, { cut: number, side: sideOf(one.node, child) }, hand);
  }
  return cuts;
}

/**
 * A cut at the setting that the saw has; else at one of which no cut waits behind another, so that the saw need not come back to it;
 * else at the one of which most can be made.
 */
function nextOf(
  hand: readonly InHand[],
  setting: number | undefined,
  still: ReadonlyMap<number, number>,
): number {
  const same = hand.findIndex((one) => one.setting === setting);
  if (same >= 0) return same;
  const ready = new Map<number, number>();
  for (const one of hand) ready.set(one.setting, (ready.get(one.setting) ?? 0) + 1);
  const done = hand.findIndex((one) => ready.get(one.setting) === still.get(one.setting));
  if (done >= 0) return done;
  const most = Math.max(...ready.values());
  return hand.findIndex((one) => ready.get(one.setting) === most);
}

/** What a part is still to be cut into comes into hand; what is not cut is done with. */
function take(node: CutNode, part: CutPart | undefined, hand: InHand[]): void {
  if (node.cut) hand.push({ node, setting: settingOf(node, node.cut), ...(part && { part }) });
  else for (const child of node.children ?? []) take(child, part, hand);
}

function count(node: CutNode, still: Map<number, number>): void {
  if (node.cut) {
    const setting = settingOf(node, node.cut);
    still.set(setting, (still.get(setting) ?? 0) + 1);
  }
  for (const child of node.children ?? []) count(child, still);
}

/** In grid steps. */
function settingOf({ x, y }: CutNode, { along, at }: NonNullable<CutNode["cut"]>): number {
  return toGridSteps(at - (along === "y" ? x : y));
}

function sideOf({ cut }: CutNode, child: CutNode): CutPart["side"] {
  const upright = cut?.along === "y";
  const beyond = (upright ? child.x : child.y) >= (cut?.at ?? 0);
  return upright ? (beyond ? "right" : "left") : beyond ? "above" : "below";
}

function numbered({ node, part }: InHand, number: number): NumberedCut {
  const { cut, x, y, width, height } = node;
  const at = cut?.at ?? 0;
  const upright = cut?.along === "y";
  return {
    number,
    ...(part && { part }),
    region: { x, y, width, height },
    from: upright ? [at, y] : [x, at],
    to: upright ? [at, y + height] : [x + width, at],
  };
}

import type { CutNode, CutSheet, Rectangle } from "../model.ts";
import type { CutProblem } from "./problem.ts";
import { atMost, same } from "./problem.ts";

export type TreeCode =
  | "tree-root"
  | "tree-cut"
  | "tree-children"
  | "tree-leaf"
  | "tree-piece"
  | "tree-offcut"
  | "too-many-stages"
  | "first-cuts-apart";

export interface TreeCheck {
  readonly sheet: CutSheet;
  readonly where: string;
  /** The sheet less its trim. */
  readonly usable: Rectangle;
  readonly kerf: number;
  readonly stages: number;
  /** Between cuts of the first turn. */
  readonly furthestFirstCuts: number;
}

/** The cuts are cuts of a saw, and what they free is the placements and offcuts listed. */
export function checkTree(check: TreeCheck): CutProblem<TreeCode>[] {
  const problems: CutProblem<TreeCode>[] = [];
  const report = (code: TreeCode, where: string, parameters: CutProblem<TreeCode>["parameters"] = {}) => {
    problems.push({ code, where, parameters });
  };
  const pieces: CutNode[] = [];
  const offcuts: CutNode[] = [];

  const walk = (node: CutNode, where: string, turns: number, direction: "x" | "y" | undefined): void => {
    const roles = [node.cut, node.piece, node.offcut].filter((role) => role !== undefined).length;
    if (roles > 1) report("tree-leaf", where);
    if (node.piece !== undefined) pieces.push(node);
    if (node.offcut === true) offcuts.push(node);
    const children = node.children ?? [];
    if (node.cut === undefined) {
      if (children.length > 0) report("tree-children", where);
      return;
    }
    const now = turns + (node.cut.along === direction ? 0 : 1);
    if (now > check.stages) report("too-many-stages", where, { turns: now, allowed: check.stages });
    const expected = partsOf(node, node.cut, check.kerf);
    if (expected === undefined) {
      report("tree-cut", where, { at: node.cut.at });
      return;
    }
    const right =
      expected.length === children.length &&
      expected.every((box, index) => sameBox(box, children[index] ?? node));
    if (!right) report("tree-children", where);
    const along = node.cut.along;
    children.forEach((child, index) => {
      walk(child, `${where}/children/${index}`, now, along);
    });
  };

  const where = `${check.where}/tree`;
  if (!sameBox(check.sheet.tree, check.usable)) report("tree-root", where);
  walk(check.sheet.tree, where, 0, undefined);

  firstParts(check.sheet.tree, check.sheet.tree.cut?.along).forEach((part) => {
    const size = check.sheet.tree.cut?.along === "y" ? part.width : part.height;
    if (holdsPiece(part) && !atMost(size, check.furthestFirstCuts))
      report("first-cuts-apart", where, { size });
  });

  const open = [...check.sheet.placements];
  for (const node of pieces) {
    const found = open.findIndex((one) => one.demandId === node.piece && sameBox(one, node));
    if (found < 0) report("tree-piece", where, { piece: node.piece ?? "" });
    else open.splice(found, 1);
  }
  for (const one of open) report("tree-piece", where, { piece: one.demandId });
  const listed = [...check.sheet.offcuts];
  for (const node of offcuts) {
    const found = listed.findIndex((one) => sameBox(one, node));
    if (found < 0) report("tree-offcut", where, { x: node.x, y: node.y });
    else listed.splice(found, 1);
  }
  for (const one of listed) report("tree-offcut", where, { x: one.x, y: one.y });
  return problems;
}

/** What the cuts of the first turn leave, side by side; nothing where the sheet is not cut. */
function firstParts(node: CutNode, along: "x" | "y" | undefined): CutNode[] {
  if (along === undefined) return [];
  return (node.children ?? []).flatMap((child) =>
    child.cut?.along === along ? firstParts(child, along) : [child],
  );
}

function holdsPiece(node: CutNode): boolean {
  return node.piece !== undefined || (node.children ?? []).some(holdsPiece);
}

function partsOf(
  node: Rectangle,
  cut: { along: "x" | "y"; at: number },
  kerf: number,
): Rectangle[] | undefined {
  const across = cut.along === "y";
  const start = across ? node.x : node.y;
  const end = across ? node.x + node.width : node.y + node.height;
  if (!(cut.at > start && cut.at < end) || same(cut.at, start) || same(cut.at, end)) return undefined;
  const part = (from: number, to: number): Rectangle =>
    across
      ? { x: from, y: node.y, width: to - from, height: node.height }
      : { x: node.x, y: from, width: node.width, height: to - from };
  const behind = cut.at + kerf;
  return atMost(end, behind) ? [part(start, cut.at)] : [part(start, cut.at), part(behind, end)];
}

function sameBox(a: Rectangle, b: Rectangle): boolean {
  return same(a.x, b.x) && same(a.y, b.y) && same(a.width, b.width) && same(a.height, b.height);
}

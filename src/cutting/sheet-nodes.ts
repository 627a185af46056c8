/**
 * Sheets as trees of straight cuts right through, made to be changed: a piece goes into a leftover, a region becomes a
 * leftover again. The order of the regions that one row of parallel cuts leaves is of no matter, so each row keeps at most
 * one leftover. Sizes are whole steps, pieces grown by the kerf and sheets by the kerf less both trims.
 *
 * The tree and its changes are those of Gardeyn & Wauters, European Journal of Operational Research (2022), "A goal-driven
 * ruin and recreate heuristic for the 2D variable-sized bin packing problem with guillotine constraints".
 */

/** A sheet size to cut from. */
export interface Panel {
  readonly stock: number;
  readonly width: number;
  readonly height: number;
  readonly cost: number;
  readonly turnable: boolean;
}

/** Pieces of one size, by their places in the request. */
export interface PieceType {
  readonly width: number;
  readonly height: number;
  readonly turnable: boolean;
  readonly demands: readonly number[];
}

/** The axis along which regions lie side by side. */
export type Axis = "x" | "y";

/** A region: it holds a piece, is parted into regions side by side, or is left over. */
export class Region {
  width: number;
  height: number;
  parent: Region | undefined;
  /** How often the saw turned before the region is free. */
  readonly level: number;
  /** Place of the piece's type; -1 where the region holds no piece. */
  piece = -1;
  turned = false;
  axis: Axis | undefined;
  parts: Region[] = [];
  /** Place on its sheet's list of leftovers, as far as it was noted last. */
  place = -1;

  constructor(width: number, height: number, parent?: Region) {
    this.width = width;
    this.height = height;
    this.parent = parent;
    this.level = parent === undefined ? 0 : parent.level + 1;
  }

  get isLeftover(): boolean {
    return this.piece < 0 && this.axis === undefined;
  }
}

export class Sheet {
  readonly panel: Panel;
  readonly root: Region;
  readonly leftovers: Region[];
  /** The step of a search that made this copy, and so may change it. */
  readonly owner: number;
  /** What its leftovers are worth together; below nought while that is not reckoned. */
  worth = -1;

  constructor(panel: Panel, owner: number, copyOf?: Sheet) {
    this.panel = panel;
    this.owner = owner;
    if (copyOf === undefined) {
      this.root = new Region(panel.width, panel.height);
      this.leftovers = [this.root];
    } else {
      const { leftovers } = copyOf;
      for (let place = 0; place < leftovers.length; place++) (leftovers[place] as Region).place = place;
      // In the same order, so that a leftover's place in the list names it in every copy.
      this.leftovers = leftovers.slice();
      this.root = copied(copyOf.root, undefined, this.leftovers);
    }
  }
}

/** Copies of leftovers take the places that are noted for these. */
function copied(region: Region, parent: Region | undefined, leftovers: Region[]): Region {
  const copy = new Region(region.width, region.height, parent);
  copy.piece = region.piece;
  copy.turned = region.turned;
  copy.axis = region.axis;
  if (region.axis !== undefined) {
    for (const part of region.parts) copy.parts.push(copied(part, copy, leftovers));
  } else if (region.piece < 0) leftovers[region.place] = copy;
  return copy;
}

/** How a piece would lie in a leftover, and along which axis the first cut parts it off. */
export interface Way {
  readonly piece: number;
  readonly turned: boolean;
  readonly width: number;
  readonly height: number;
  readonly first: Axis;
}

/** Lays a piece into the lower left corner of a leftover of the sheet; what remains of it stays leftover. */
export function lay(sheet: Sheet, at: number, way: Way): void {
  let region = sheet.leftovers[at];
  if (region === undefined) return;
  sheet.leftovers.splice(at, 1);
  for (const axis of [way.first, way.first === "x" ? "y" : "x"] as const) {
    region = partOff(sheet, region, axis, axis === "x" ? way.width : way.height);
  }
  region.piece = way.piece;
  region.turned = way.turned;
}

/** Parts a region of the given size off a leftover that is on no list; the rest goes on the list. */
export function partOff(sheet: Sheet, region: Region, axis: Axis, size: number): Region {
  const whole = axis === "x" ? region.width : region.height;
  if (whole === size) return region;
  const row = region.parent?.axis === axis ? region.parent : region;
  const width = axis === "x" ? size : region.width;
  const height = axis === "x" ? region.height : size;
  const part = new Region(width, height, row);
  let rest = region;
  if (row === region) {
    rest = new Region(region.width, region.height, row);
    region.axis = axis;
    region.parts = [part, rest];
  } else row.parts.push(part);
  if (axis === "x") rest.width = whole - size;
  else rest.height = whole - size;
  sheet.leftovers.push(rest);
  return part;
}

/** Turns a region back into leftover, joined to the leftover beside it and to its row where nothing else is left there. */
export function clear(sheet: Sheet, cleared: Region, found: (piece: number) => void): void {
  empty(sheet, cleared, found);
  let region = cleared;
  for (let row = region.parent; row !== undefined; row = region.parent) {
    const beside = row.parts.find((one) => one !== region && one.isLeftover);
    if (beside !== undefined) {
      row.parts.splice(row.parts.indexOf(beside), 1);
      sheet.leftovers.splice(sheet.leftovers.indexOf(beside), 1);
      if (row.axis === "x") region.width += beside.width;
      else region.height += beside.height;
    }
    if (row.parts.length > 1) break;
    row.axis = undefined;
    row.parts = [];
    region = row;
  }
  sheet.leftovers.push(region);
}

function empty(sheet: Sheet, region: Region, found: (piece: number) => void): void {
  if (region.piece >= 0) found(region.piece);
  else if (region.axis === undefined) sheet.leftovers.splice(sheet.leftovers.indexOf(region), 1);
  else for (const part of region.parts) empty(sheet, part, found);
  region.piece = -1;
  region.turned = false;
  region.axis = undefined;
  region.parts = [];
}

/** The sheet's pieces on a panel as wide or as high, where what then falls away was left over; undefined where they don't go. */
export function onPanel(sheet: Sheet, panel: Panel, owner: number): Sheet | undefined {
  const { axis, parts } = sheet.root;
  const spare = { x: sheet.panel.width - panel.width, y: sheet.panel.height - panel.height };
  if (axis === undefined || spare[axis] <= 0 || spare[axis === "x" ? "y" : "x"] !== 0) return undefined;
  const place = parts.findIndex((part) => part.isLeftover);
  const leftover = parts[place];
  if (leftover === undefined || (axis === "x" ? leftover.width : leftover.height) <= spare[axis])
    return undefined;
  const copy = new Sheet(panel, owner, sheet);
  for (const region of [copy.root, copy.root.parts[place]]) {
    if (region === undefined) continue;
    region.width -= axis === "x" ? spare.x : 0;
    region.height -= axis === "y" ? spare.y : 0;
  }
  return copy;
}

/** The sheet's pieces on a larger panel; what it has more along the axis is leftover, right across. */
export function enlarged(sheet: Sheet, panel: Panel, axis: Axis, owner: number): Sheet {
  const whole = new Sheet(panel, owner);
  whole.leftovers.length = 0;
  const part = partOff(whole, whole.root, axis, axis === "x" ? sheet.panel.width : sheet.panel.height);
  const { root } = sheet;
  const { leftovers } = sheet;
  for (let place = 0; place < leftovers.length; place++) (leftovers[place] as Region).place = place;
  const copies = leftovers.slice();
  part.piece = root.piece;
  part.turned = root.turned;
  if (root.axis === axis) {
    // Its row becomes the larger sheet's own.
    const row = whole.root;
    row.parts.splice(row.parts.indexOf(part), 1, ...root.parts.map((one) => copied(one, row, copies)));
  } else {
    part.axis = root.axis;
    part.parts = root.parts.map((one) => copied(one, part, copies));
  }
  whole.leftovers.push(...copies);
  joinLeftovers(whole);
  return whole;
}

/** Joins leftovers that lie in one row, as a layout made from elsewhere may have them. */
export function joinLeftovers(sheet: Sheet): void {
  for (const region of [...sheet.leftovers]) {
    const row = region.parent;
    const beside = row?.parts.find((one) => one !== region && one.isLeftover);
    if (row === undefined || beside === undefined) continue;
    if (row.axis === "x") beside.width += region.width;
    else beside.height += region.height;
    row.parts.splice(row.parts.indexOf(region), 1);
    sheet.leftovers.splice(sheet.leftovers.indexOf(region), 1);
  }
}

/** The regions of a sheet that hold pieces or are parted, the whole sheet apart where it is parted. */
export function filledRegions(region: Region, into: Region[]): Region[] {
  for (const part of region.parts) {
    if (part.isLeftover) continue;
    into.push(part);
    if (part.axis !== undefined) filledRegions(part, into);
  }
  return into;
}

/** How often the saw has turned once a piece is free that is cut from a leftover in this way. */
export function turnsToFree(region: Region, way: Way): number {
  const cutX = region.width > way.width;
  const cutY = region.height > way.height;
  const last = region.parent?.axis;
  if (!cutX && !cutY) return region.level;
  if (cutX !== cutY) return region.level + (last === (cutX ? "x" : "y") ? 0 : 1);
  return region.level + (last === way.first ? 1 : 2);
}

export interface SheetJob {
  readonly types: readonly PieceType[];
  readonly panels: readonly Panel[];
  /** Sheets there are of each panel, by the panel's place. */
  readonly available: readonly number[];
  /** The saw turns at most this often. */
  readonly stages: number;
  /** Regions that cuts of the first turn leave are no larger along their row. */
  readonly firstCuts: number;
}

/** Sheets with the pieces laid so far, and how many of each type wait. */
export interface Layout {
  readonly sheets: readonly Sheet[];
  readonly waiting: readonly number[];
}

export function costOf(sheets: readonly Sheet[]): number {
  let cost = 0;
  for (const { panel } of sheets) cost += panel.cost;
  return cost;
}

/** Do cuts of the first turn lie near enough to each other where a piece is cut from a leftover in this way? */
export function keepsFirstCuts({ width, height, parent }: Region, way: Way, most: number): boolean {
  if (most === Number.POSITIVE_INFINITY || parent?.parent !== undefined) return true;
  const cutX = width > way.width;
  const cutY = height > way.height;
  const first = cutX && cutY ? way.first : cutX ? "x" : cutY ? "y" : undefined;
  const row = parent?.axis ?? first;
  const cut = row === "x" ? way.width : way.height;
  const uncut = row === "x" ? width : height;
  return row === undefined || (row === first ? cut : uncut) <= most;
}

/** Can the piece be cut from the panel when nothing else is? */
export function fitsAlone(
  type: Pick<PieceType, "width" | "height" | "turnable">,
  panel: Panel,
  { stages, firstCuts }: Pick<SheetJob, "stages" | "firstCuts">,
): boolean {
  const fits = (width: number, height: number) => {
    const cutX = width < panel.width;
    const cutY = height < panel.height;
    const near = (!cutX && !cutY) || (cutX && width <= firstCuts) || (cutY && height <= firstCuts);
    return (
      width <= panel.width && height <= panel.height && (cutX ? 1 : 0) + (cutY ? 1 : 0) <= stages && near
    );
  };
  return fits(type.width, type.height) || (type.turnable && panel.turnable && fits(type.height, type.width));
}

/** Area of what lies on a sheet. */
export function areaOn({ leftovers, panel }: Sheet): number {
  return leftovers.reduce((area, { width, height }) => area - width * height, panel.width * panel.height);
}

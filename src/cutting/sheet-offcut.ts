/**
 * At one cost, what is left over is worth most in one piece: one sheet is taken shorter or narrower, by halves as far as all pieces
 * still find a place, and what it was made less by is an offcut right across.
 */
import type { Axis, Layout, Panel, Region, Sheet, SheetJob } from "./sheet-nodes.ts";
import { enlarged, onPanel } from "./sheet-nodes.ts";
import { LayoutSearch } from "./sheet-ruin.ts";

/** Halvings along each axis. */
const HALVINGS = 5;

interface Wish {
  readonly job: SheetJob;
  readonly layout: Layout;
  /** Steps of ruin and recreate that may be made. */
  readonly steps: number;
  readonly random: () => number;
}

/** A layout on the same sheets with a larger leftover than any before, or the layout itself. Gives steps on the way. */
export function* largestOffcut(wish: Wish): Generator<number, Layout> {
  let best = wish.layout;
  let used = 0;
  for (const axis of ["y", "x"] as const) {
    const emptiest = [...best.sheets].sort((a, b) => spareOf(b, axis) - spareOf(a, axis))[0];
    if (emptiest === undefined) return best;
    const { panel } = emptiest;
    const side = axis === "x" ? panel.width : panel.height;
    const across = axis === "x" ? panel.height : panel.width;
    const free = best.sheets.reduce(
      (sum, { leftovers }) => sum + leftovers.reduce((a, one) => a + areaOf(one), 0),
      0,
    );
    let least = spareOf(emptiest, axis);
    let most = Math.min(side - 1, Math.floor(free / across));
    for (let halving = 0; halving < HALVINGS && least < most; halving++) {
      const spare = Math.ceil((least + most) / 2);
      const run = shortened(wish, best, { panel, axis, spare });
      let next = run.next();
      for (; !next.done; next = run.next()) yield used + next.value;
      used += next.value.steps;
      if (next.value.layout === undefined) most = spare - 1;
      else least = spare;
      if (next.value.layout !== undefined && largestOf(next.value.layout) > largestOf(best)) {
        best = next.value.layout;
      }
    }
  }
  return best;
}

function* shortened(
  { job, steps, random }: Wish,
  layout: Layout,
  { panel, axis, spare }: { panel: Panel; axis: Axis; spare: number },
): Generator<number, { readonly layout?: Layout; readonly steps: number }> {
  const short: Panel = {
    ...panel,
    width: panel.width - (axis === "x" ? spare : 0),
    height: panel.height - (axis === "y" ? spare : 0),
  };
  const own = layout.sheets.map((sheet) => sheet.panel);
  const panels = [...new Set(own), short];
  const available = panels.map((one) =>
    one === short ? 1 : own.filter((other) => other === one).length - (one === panel ? 1 : 0),
  );
  // The sheet with most to spare is the one to start from; where it can't be made less, its pieces are laid anew.
  const given = layout.sheets
    .filter((sheet) => sheet.panel === panel)
    .sort((a, b) => spareOf(b, axis) - spareOf(a, axis))[0];
  if (given === undefined) return { steps: 0 };
  const waiting = [...layout.waiting];
  const less = onPanel(given, short, given.owner);
  if (less === undefined) countPieces(given.root, waiting);
  const sheets = layout.sheets.filter((sheet) => sheet !== given).concat(less ?? []);
  const trial = new LayoutSearch({ ...job, panels, available }, random, { sheets, waiting });
  const run = trial.pursue({
    limit: Number.POSITIVE_INFINITY,
    steps: Math.ceil(steps / (2 * HALVINGS)),
    history: 15,
    stagnation: 600,
    patient: false,
  });
  let next = run.next();
  for (; !next.done; next = run.next()) yield next.value;
  if (!next.value.reached) return { steps: next.value.steps };
  const found = trial.layout();
  return {
    steps: next.value.steps,
    layout: {
      ...found,
      sheets: found.sheets.map((sheet) =>
        sheet.panel === short ? enlarged(sheet, panel, axis, sheet.owner) : sheet,
      ),
    },
  };
}

function countPieces(region: Region, waiting: number[]): void {
  if (region.piece >= 0) waiting[region.piece] = (waiting[region.piece] ?? 0) + 1;
  for (const part of region.parts) countPieces(part, waiting);
}

/** What a sheet has left over right across it, along an axis. */
function spareOf({ root }: Sheet, axis: Axis): number {
  if (root.axis !== axis) return 0;
  return root.parts.reduce(
    (sum, one) => sum + (one.isLeftover ? (axis === "x" ? one.width : one.height) : 0),
    0,
  );
}

function areaOf({ width, height }: Region): number {
  return width * height;
}

function largestOf({ sheets }: Layout): number {
  return sheets.reduce(
    (most, { leftovers }) => leftovers.reduce((a, one) => Math.max(a, areaOf(one)), most),
    0,
  );
}

import type { CountChoice } from "./counts.ts";
import type { GridLine, GridRod, GridSegment } from "./grid-rod.ts";

/** What `edgeAt` needs of a choice of counts. */
export interface Spacing {
  readonly spare: number;
  readonly gaps: number;
}

/**
 * Where a board edge falls, in whole grid steps: the start of the segment, the timber before, and so many gaps, rounded to the grid
 * as a whole. Widths are whole steps, so the two edges of a board are always its width apart, and the last gap ends on its line.
 */
export function edgeAt(
  segment: GridSegment,
  spacing: Spacing,
  before: { readonly timber: number; readonly gaps: number },
): number {
  const opened = spacing.gaps === 0 ? 0 : Math.round((before.gaps * spacing.spare) / spacing.gaps);
  return segment.from + before.timber + opened;
}

/** A place in a row where an edge meets secondary lines: the boards used up to there, and how many lines it meets. */
export interface Meeting {
  readonly used: readonly number[];
  readonly lines: number;
}

/** Every place where a row with these counts, in whatever order, could meet a secondary line. */
export function meetingsOf(rod: GridRod, segment: GridSegment, choice: CountChoice): Meeting[] {
  const found: { used: readonly number[]; lines: number }[] = [];
  for (const line of linesWithin(rod, segment)) {
    forEachMeeting({ rod, segment, choice, line }, (used) => {
      const known = found.find((meeting) => meeting.used.every((count, width) => count === used[width]));
      if (known === undefined) found.push({ used: [...used], lines: 1 });
      else known.lines += 1;
    });
  }
  return found;
}

/** The secondary lines that an edge inside the segment could meet at all. */
function linesWithin(rod: GridRod, segment: GridSegment): GridLine[] {
  return rod.lines.filter((line) => {
    const [least, greatest] = reachOf(line);
    return least <= segment.to && greatest >= segment.from;
  });
}

/** Where an edge must lie to meet the line, both ends included. */
function reachOf(line: GridLine): readonly [least: number, greatest: number] {
  return line.edge === "end-of-board"
    ? [line.at - line.tolerance, line.at]
    : [line.at, line.at + line.tolerance];
}

function forEachMeeting(
  at: {
    readonly rod: GridRod;
    readonly segment: GridSegment;
    readonly choice: CountChoice;
    readonly line: GridLine;
  },
  visit: (used: readonly number[]) => void,
): void {
  const { rod, segment, choice, line } = at;
  const { counts } = choice;
  const [least, greatest] = reachOf(line);
  const byEnd = line.edge === "end-of-board";
  // Gaps before the edge, less the boards used: an end has its own board's gap after it, a start has it before.
  const gapsBeside = (segment.gapAtStart ? 1 : 0) - (byEnd ? 1 : 0);
  const gap = choice.gaps === 0 ? 0 : choice.gap;
  const used = counts.map(() => 0);
  const last = counts.length - 1;
  const pitch = (rod.widths[last] ?? 0) + gap;
  const visitIfMet = (timber: number, boards: number): void => {
    if (byEnd ? boards === 0 : boards === choice.boards) return;
    const edge = edgeAt(segment, choice, { timber, gaps: boards + gapsBeside });
    if (edge >= least && edge <= greatest) visit(used);
  };
  const choose = (width: number, timber: number, boards: number): void => {
    if (width < last) {
      for (let count = 0; count <= (counts[width] ?? 0); count += 1) {
        used[width] = count;
        choose(width + 1, timber + count * (rod.widths[width] ?? 0), boards + count);
      }
      return;
    }
    // How many boards of the last width bring the edge near the line; a step of margin covers the rounding of edges.
    const before = segment.from + timber + (boards + gapsBeside) * gap;
    const fewest = Math.max(0, Math.ceil((least - 1 - before) / pitch));
    const most = Math.min(counts[last] ?? 0, Math.floor((greatest + 1 - before) / pitch));
    for (let count = fewest; count <= most; count += 1) {
      used[last] = count;
      visitIfMet(timber + count * (rod.widths[last] ?? 0), boards + count);
    }
    used[last] = 0;
  };
  choose(0, 0, 0);
}

/**
 * The most lines that one row can meet, the look rule left aside: the heaviest chain of meetings in which each uses no fewer boards of any
 * width than the one before. Tolerances are below the narrowest width, so no row can meet one line twice.
 */
export function mostLinesMeetable(meetings: readonly Meeting[]): number {
  const total = (used: readonly number[]): number => used.reduce((sum, count) => sum + count, 0);
  const inOrder = [...meetings].sort((one, other) => total(one.used) - total(other.used));
  const most: number[] = [];
  inOrder.forEach((meeting, place) => {
    let before = 0;
    for (let earlier = 0; earlier < place; earlier += 1) {
      const used = inOrder[earlier]?.used ?? [];
      if (used.every((count, width) => count <= (meeting.used[width] ?? 0)))
        before = Math.max(before, most[earlier] ?? 0);
    }
    most.push(before + meeting.lines);
  });
  return Math.max(0, ...most);
}

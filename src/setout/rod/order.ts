import type { CountChoice } from "./counts.ts";
import { barredSteps, meetsDucts } from "./duct-strips.ts";
import { type GridRod, touchingLimit } from "./grid-rod.ts";
import { type Lattice, latticeOf, nodeOf } from "./lattice.ts";
import { meetingsOf } from "./meetings.ts";
import { LONGEST_PATTERN, type PatternStates, patternStates } from "./pattern.ts";

/** The boards in order, as width numbers per segment. */
export interface BoardOrder {
  readonly segments: readonly (readonly number[])[];
  readonly linesMet: number;
  readonly repeats: number;
}

/** Lines met weigh more than any number of repeats a row of boards can have. */
const LINE_WORTH = 1 << 16;
const FORBIDDEN = -(1 << 30);
const NOT_WORKED = FORBIDDEN - 1;

/** Above this many cells the search watches for patterns of two boards only, to stay quick and small. */
const MOST_CELLS = 250_000;

interface Stage {
  readonly lattice: Lattice;
  readonly hits: Int16Array;
  readonly adjoins: boolean;
  /** Steps that would leave a sliver beside a duct. */
  readonly barred: Uint8Array | undefined;
  readonly worth: Int32Array;
}

/** Pattern states are costly to set up and serve every order of one rod; keep the returned function. */
export function orderer(rod: GridRod): (choices: readonly CountChoice[]) => BoardOrder | undefined {
  const known = new Map<number, PatternStates>();
  const statesFor = (longest: number): PatternStates => {
    const states =
      known.get(longest) ??
      patternStates({ widths: rod.widths.length, maxTouching: touchingLimit(rod), longest });
    known.set(longest, states);
    return states;
  };
  return (choices) => {
    const nodes = choices.reduce(
      (sum, { counts }) => sum + counts.reduce((size, count) => size * (count + 1), 1),
      0,
    );
    const full = statesFor(LONGEST_PATTERN);
    return orderBoards(rod, choices, nodes * full.count > MOST_CELLS ? statesFor(LONGEST_PATTERN - 1) : full);
  };
}

/**
 * The calmest order of the boards: most secondary lines met, then fewest repeats, then the widest board first wherever all
 * that leaves a choice. `undefined` where no order keeps the look rule. Exact, by dynamic programming over the boards used
 * and the last few laid.
 */
function orderBoards(
  rod: GridRod,
  choices: readonly CountChoice[],
  states: PatternStates,
): BoardOrder | undefined {
  const stages = choices.flatMap((choice, index): Stage[] => {
    const segment = rod.segments[index];
    if (segment === undefined) return [];
    const lattice = latticeOf(choice);
    const worth = new Int32Array(lattice.size * states.count).fill(NOT_WORKED);
    const hits = new Int16Array(lattice.size);
    for (const meeting of meetingsOf(rod, segment, choice))
      hits[nodeOf(lattice, meeting.used)] = meeting.lines;
    const barred = meetsDucts(rod, segment) ? barredSteps(rod, segment, choice) : undefined;
    return [{ lattice, hits, adjoins: segment.adjoins, barred, worth }];
  });
  const widths = rod.widths.length;
  const widestFirst = rod.widths
    .map((_, width) => width)
    .sort((a, b) => (rod.widths[b] ?? 0) - (rod.widths[a] ?? 0));

  const worthOf = (index: number, node: number, state: number): number => {
    const stage = stages[index];
    if (stage === undefined) return 0;
    const place = node * states.count + state;
    const known = stage.worth[place] ?? NOT_WORKED;
    if (known !== NOT_WORKED) return known;
    let best = FORBIDDEN;
    if (node === stage.lattice.size - 1) best = worthOf(index + 1, 0, stages[index + 1]?.adjoins ? state : 0);
    else {
      for (let width = 0; width < widths; width += 1) {
        const worth = worthOfLaying({ index, node, state, width });
        if (worth > best) best = worth;
      }
    }
    if (best !== FORBIDDEN) best += (stage.hits[node] ?? 0) * LINE_WORTH;
    stage.worth[place] = best;
    return best;
  };
  const worthOfLaying = (at: { index: number; node: number; state: number; width: number }): number => {
    const step = at.state * widths + at.width;
    const stage = stages[at.index];
    const place = at.node * widths + at.width;
    const onward = stage?.lattice.onward[place] ?? -1;
    const after = states.next[step] ?? -1;
    if (onward < 0 || after < 0 || stage?.barred?.[place] === 1) return FORBIDDEN;
    const worth = worthOf(at.index, onward, after);
    return worth === FORBIDDEN ? FORBIDDEN : worth - (states.repeats[step] ?? 0);
  };

  const total = worthOf(0, 0, 0);
  if (total === FORBIDDEN) return undefined;
  let state = 0;
  const segments = stages.map((stage, index) => {
    if (!stage.adjoins) state = 0;
    const row: number[] = [];
    for (let node = 0; node < stage.lattice.size - 1; ) {
      const wanted = worthOf(index, node, state) - (stage.hits[node] ?? 0) * LINE_WORTH;
      const width =
        widestFirst.find((candidate) => worthOfLaying({ index, node, state, width: candidate }) === wanted) ??
        0;
      row.push(width);
      node += stage.lattice.strides[width] ?? 1;
      state = states.next[state * widths + width] ?? 0;
    }
    return row;
  });
  const linesMet = Math.ceil(total / LINE_WORTH);
  return { segments, linesMet, repeats: linesMet * LINE_WORTH - total };
}

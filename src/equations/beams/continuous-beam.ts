/**
 * A beam over any number of supports at unlike distances, past the outermost of which it may reach: forces and sag under an even
 * load and single ones. By slope and deflection: the turns of the beam over its supports are the unknowns, one equation for each
 * support, each touching its neighbours alone. Supports do not give. Loads and reactions share one sense; a support that must
 * hold the beam against that sense has a negative reaction.
 */

export interface PointLoad {
  readonly at: number;
  readonly load: number;
}

export interface Beam {
  /** Places of the supports along the beam, ascending (mm); two at least. */
  readonly supports: readonly number[];
  readonly from: number;
  readonly to: number;
  /** Even load from end to end (N/mm). */
  readonly load: number;
  readonly points?: readonly PointLoad[];
}

export interface Bent {
  /** At each support (N). */
  readonly reactions: readonly number[];
  /** Over each support, positive where the side that the load comes from is pressed (N·mm). */
  readonly overSupports: readonly number[];
  /** The largest of either sign (N·mm). */
  readonly moment: number;
  /** The largest sag of either sense, times the beam's stiffness (N·mm³), and where it is: in span i, or past the first (−1) or last. */
  readonly sag: { readonly stiff: number; readonly at: number; readonly span: number };
}

/** One stretch between neighbouring supports, seen from its left end. */
interface Span {
  readonly left: number;
  readonly length: number;
  readonly points: readonly PointLoad[];
}

/** Undefined where fewer than two supports hold it. */
export function continuousBeam(beam: Beam): Bent | undefined {
  const { supports, load, from, to } = beam;
  if (supports.length < 2) return undefined;
  const [first, last] = [supports[0] as number, supports.at(-1) as number];
  const points = beam.points ?? [];
  const spans = supports.slice(1).map((right, i): Span => {
    const left = supports[i] as number;
    const own = points.filter(({ at }) => at > left && at < right);
    return { left, length: right - left, points: own.map((point) => ({ ...point, at: point.at - left })) };
  });
  const before = points
    .filter(({ at }) => at < first)
    .map(({ at, load: p }) => ({ at: first - at, load: p }));
  const beyond = points.filter(({ at }) => at > last).map(({ at, load: p }) => ({ at: at - last, load: p }));
  const [leftArm, rightArm] = [first - from, to - last];
  const ends = [armMoment(leftArm, load, before), armMoment(rightArm, load, beyond)] as const;
  const turns = turnsOver(spans, load, ends);
  const over = momentsOver(spans, load, { turns, ends });
  const onSupports = points.filter(({ at }) => supports.includes(at));
  const reactions = supports.map((at) =>
    onSupports.reduce((sum, point) => (point.at === at ? sum + point.load : sum), 0),
  );
  spans.forEach((span, i) => {
    const [left, right] = endForces(span, load, [over[i] as number, over[i + 1] as number]);
    reactions[i] = (reactions[i] as number) + left;
    reactions[i + 1] = (reactions[i + 1] as number) + right;
  });
  const armLoad = (arm: number, hung: readonly PointLoad[]) =>
    hung.reduce((sum, point) => sum + point.load, load * arm);
  reactions[0] = (reactions[0] as number) + armLoad(leftArm, before);
  reactions[spans.length] = (reactions[spans.length] as number) + armLoad(rightArm, beyond);

  let moment = Math.max(...over.map(Math.abs));
  let sag = { stiff: 0, at: first, span: 0 };
  const note = (stiff: number, at: number, span: number): void => {
    if (Math.abs(stiff) > Math.abs(sag.stiff)) sag = { stiff, at, span };
  };
  spans.forEach((span, i) => {
    const found = withinSpan(span, load, [over[i] as number, over[i + 1] as number]);
    moment = Math.max(moment, found.moment);
    note(found.stiff, span.left + found.at, i);
  });
  // The left arm turns with the first support, the other way round.
  note(armSag(leftArm, load, { turn: -(turns[0] as number), hung: before }), from, -1);
  note(armSag(rightArm, load, { turn: turns.at(-1) as number, hung: beyond }), to, spans.length);
  return { reactions, overSupports: over, moment, sag };
}

/** Over the support that an arm is held by; less than nothing, as the arm's load bends it over. */
function armMoment(arm: number, load: number, hung: readonly PointLoad[]): number {
  return hung.reduce((sum, point) => sum - point.load * point.at, (-load * arm ** 2) / 2);
}

/** Moments at the ends of a span whose ends cannot turn, each as it hogs. */
function fixedEnds({ length, points }: Span, load: number): readonly [number, number] {
  const even = (-load * length ** 2) / 12;
  return points.reduce(
    ([left, right], { at, load: p }) => {
      const rest = length - at;
      return [left - (p * at * rest ** 2) / length ** 2, right - (p * at ** 2 * rest) / length ** 2] as const;
    },
    [even, even] as const,
  );
}

/** Turns over the supports, times stiffness: downward to the right is positive. */
function turnsOver(spans: readonly Span[], load: number, ends: readonly [number, number]): number[] {
  const count = spans.length + 1;
  const diagonal = new Array<number>(count).fill(0);
  const given = new Array<number>(count).fill(0);
  spans.forEach((span, i) => {
    const stiff = 4 / span.length;
    const [left, right] = fixedEnds(span, load);
    diagonal[i] = (diagonal[i] as number) + stiff;
    diagonal[i + 1] = (diagonal[i + 1] as number) + stiff;
    given[i] = (given[i] as number) - left;
    given[i + 1] = (given[i + 1] as number) + right;
  });
  given[0] = (given[0] as number) + ends[0];
  given[count - 1] = (given[count - 1] as number) - ends[1];
  // Neighbours touch by half the stiffness: solved from the left and back.
  for (let i = 1; i < count; i++) {
    const beside = 2 / (spans[i - 1] as Span).length;
    const share = beside / (diagonal[i - 1] as number);
    diagonal[i] = (diagonal[i] as number) - share * beside;
    given[i] = (given[i] as number) - share * (given[i - 1] as number);
  }
  const turns = new Array<number>(count).fill(0);
  for (let i = count - 1; i >= 0; i--) {
    const right = i < count - 1 ? (2 / (spans[i] as Span).length) * (turns[i + 1] as number) : 0;
    turns[i] = ((given[i] as number) - right) / (diagonal[i] as number);
  }
  return turns;
}

function momentsOver(
  spans: readonly Span[],
  load: number,
  { turns, ends }: { readonly turns: readonly number[]; readonly ends: readonly [number, number] },
): number[] {
  const over = spans.map((span, i) => {
    const [left] = fixedEnds(span, load);
    return left + (4 * (turns[i] as number) + 2 * (turns[i + 1] as number)) / span.length;
  });
  over[0] = ends[0];
  return [...over, ends[1]];
}

/** What a span lays on its left and on its right support. */
function endForces(
  { length, points }: Span,
  load: number,
  [left, right]: readonly [number, number],
): [number, number] {
  const total = points.reduce((sum, point) => sum + point.load, load * length);
  const turned = points.reduce((sum, { at, load: p }) => sum + p * (length - at), (load * length ** 2) / 2);
  const atLeft = (turned + right - left) / length;
  return [atLeft, total - atLeft];
}

/** The largest moment and sag between two supports: stretch by stretch between single loads. */
function withinSpan(
  span: Span,
  load: number,
  ends: readonly [number, number],
): { moment: number; stiff: number; at: number } {
  const { length, points } = span;
  const sorted = [...points].sort((a, b) => a.at - b.at);
  const [force] = endForces(span, load, ends);
  // Sag from moment m(x) = ends[0] + force·x − load·x²/2 − Σ p·(x − at): twice integrated, nothing at both ends.
  const bent = (x: number): number =>
    sorted.reduce(
      (sum, { at, load: p }) => (x > at ? sum - p * (x - at) : sum),
      ends[0] + force * x - (load * x ** 2) / 2,
    );
  const slopeFree = (x: number): number =>
    sorted.reduce(
      (sum, { at, load: p }) => (x > at ? sum + (p * (x - at) ** 2) / 2 : sum),
      -(ends[0] * x) - (force * x ** 2) / 2 + (load * x ** 3) / 6,
    );
  const sagFree = (x: number): number =>
    sorted.reduce(
      (sum, { at, load: p }) => (x > at ? sum + (p * (x - at) ** 3) / 6 : sum),
      (-ends[0] * x ** 2) / 2 - (force * x ** 3) / 6 + (load * x ** 4) / 24,
    );
  const turn = -sagFree(length) / length;
  const marks = [0, ...sorted.map(({ at }) => at), length];
  let moment = 0;
  let deepest = { stiff: 0, at: 0 };
  for (let i = 1; i < marks.length; i++) {
    const [from, to] = [marks[i - 1] as number, marks[i] as number];
    const laid = sorted.slice(0, i - 1).reduce((sum, point) => sum + point.load, 0);
    const level = load === 0 ? to : (force - laid) / load;
    const top = Math.min(Math.max(level, from), to);
    moment = Math.max(moment, Math.abs(bent(top)), Math.abs(bent(to)));
    for (const at of levels((x) => turn + slopeFree(x), from, to)) {
      const stiff = turn * at + sagFree(at);
      if (Math.abs(stiff) > Math.abs(deepest.stiff)) deepest = { stiff, at };
    }
  }
  return { moment, ...deepest };
}

/** The slope between two loads is a cubic, nought three times at most: so many steps part the noughts. */
const STEPS = 8;

/** Where the slope is nought from one place to another. */
function levels(slope: (x: number) => number, from: number, to: number): number[] {
  const found: number[] = [];
  let [left, value] = [from, slope(from)];
  for (let i = 1; i <= STEPS; i++) {
    const right = from + ((to - from) * i) / STEPS;
    const next = slope(right);
    if (value === 0) found.push(left);
    if (value * next < 0) found.push(nought(slope, [left, right]));
    [left, value] = [right, next];
  }
  return found;
}

/** Halvings to a billionth of a step: at a level place the sag errs by the square of that. */
const HALVINGS = 30;

function nought(slope: (x: number) => number, [from, to]: readonly [number, number]): number {
  let [low, high] = [from, to];
  const falling = slope(low) > 0;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (slope(middle) > 0 === falling) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Sag at the tip of an arm, times stiffness. */
function armSag(
  arm: number,
  load: number,
  { turn, hung }: { readonly turn: number; readonly hung: readonly PointLoad[] },
): number {
  return hung.reduce(
    (sum, { at, load: p }) => sum + (p * at ** 2 * (3 * arm - at)) / 6,
    turn * arm + (load * arm ** 4) / 8,
  );
}

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
  const { spans, before, beyond, over: onSupports } = shared(supports, beam.points ?? []);
  const [leftArm, rightArm] = [first - from, to - last];
  const ends = [armMoment(leftArm, load, before), armMoment(rightArm, load, beyond)] as const;
  const turns = turnsOver(spans, load, ends);
  const over = momentsOver(spans, load, { turns, ends });
  const reactions = onSupports;
  let moment = 0;
  for (const one of over) moment = Math.max(moment, Math.abs(one));
  let sag = { stiff: 0, at: first, span: 0 };
  const note = (stiff: number, at: number, span: number): void => {
    if (Math.abs(stiff) > Math.abs(sag.stiff)) sag = { stiff, at, span };
  };
  for (let i = 0; i < spans.length; i++) {
    const span = spans[i] as Span;
    const [hogLeft, hogRight] = [over[i] as number, over[i + 1] as number];
    const [left, right] = endForces(span, load, hogLeft, hogRight);
    reactions[i] = (reactions[i] as number) + left;
    reactions[i + 1] = (reactions[i + 1] as number) + right;
    const found = withinSpan(span, load, hogLeft, left);
    moment = Math.max(moment, found.moment);
    note(found.stiff, span.left + found.at, i);
  }
  const armLoad = (arm: number, hung: readonly PointLoad[]) =>
    hung.reduce((sum, point) => sum + point.load, load * arm);
  reactions[0] = (reactions[0] as number) + armLoad(leftArm, before);
  reactions[spans.length] = (reactions[spans.length] as number) + armLoad(rightArm, beyond);
  // The left arm turns with the first support, the other way round.
  note(armSag(leftArm, load, { turn: -(turns[0] as number), hung: before }), from, -1);
  note(armSag(rightArm, load, { turn: turns.at(-1) as number, hung: beyond }), to, spans.length);
  return { reactions, overSupports: over, moment, sag };
}

const NO_POINTS: readonly PointLoad[] = [];

interface SharedOut {
  readonly spans: readonly Span[];
  /** Past the first support and past the last, as they stand off them. */
  readonly before: readonly PointLoad[];
  readonly beyond: readonly PointLoad[];
  /** Single loads right over each support. */
  readonly over: number[];
}

/** Single loads by where they stand; most beams have none. */
function shared(supports: readonly number[], points: readonly PointLoad[]): SharedOut {
  const [first, last] = [supports[0] as number, supports.at(-1) as number];
  const over = new Array<number>(supports.length).fill(0);
  const spans: Span[] = [];
  for (let i = 1; i < supports.length; i++) {
    const [left, right] = [supports[i - 1] as number, supports[i] as number];
    const own = points.filter(({ at }) => at > left && at < right);
    spans.push({
      left,
      length: right - left,
      points: own.length === 0 ? NO_POINTS : own.map(({ at, load }) => ({ at: at - left, load })),
    });
  }
  if (points.length === 0) return { spans, before: NO_POINTS, beyond: NO_POINTS, over };
  for (const { at, load } of points) {
    const i = supports.indexOf(at);
    if (i >= 0) over[i] = (over[i] as number) + load;
  }
  return {
    spans,
    before: points.filter(({ at }) => at < first).map(({ at, load }) => ({ at: first - at, load })),
    beyond: points.filter(({ at }) => at > last).map(({ at, load }) => ({ at: at - last, load })),
    over,
  };
}

/** Over the support that an arm is held by; less than nothing, as the arm's load bends it over. */
function armMoment(arm: number, load: number, hung: readonly PointLoad[]): number {
  return hung.reduce((sum, point) => sum - point.load * point.at, (-load * arm ** 2) / 2);
}

/** Moments at the ends of a span whose ends cannot turn, each as it hogs. */
function fixedEnds({ length, points }: Span, load: number): readonly [number, number] {
  const even = (-load * length ** 2) / 12;
  let [left, right] = [even, even];
  for (const { at, load: p } of points) {
    const rest = length - at;
    left -= (p * at * rest ** 2) / length ** 2;
    right -= (p * at ** 2 * rest) / length ** 2;
  }
  return [left, right];
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
function endForces({ length, points }: Span, load: number, left: number, right: number): [number, number] {
  let total = load * length;
  let turned = (load * length ** 2) / 2;
  for (const { at, load: p } of points) {
    total += p;
    turned += p * (length - at);
  }
  const atLeft = (turned + right - left) / length;
  return [atLeft, total - atLeft];
}

/**
 * The largest moment and sag between two supports: stretch by stretch between single loads. Of a stretch that begins at x0 the moment is
 * a parabola of x − x0, the slope a cubic, the sag of the fourth degree, carried on from stretch to stretch.
 */
function withinSpan(
  { length, points }: Span,
  load: number,
  hogLeft: number,
  force: number,
): { moment: number; stiff: number; at: number } {
  const sorted = points.length < 2 ? points : [...points].sort((a, b) => a.at - b.at);
  // Sag from moment m(x) = hogLeft + force·x − load·x²/2 − Σ p·(x − at): twice integrated, nothing at both ends.
  let sagFree = (-hogLeft * length ** 2) / 2 - (force * length ** 3) / 6 + (load * length ** 4) / 24;
  for (const { at, load: p } of sorted) sagFree += (p * (length - at) ** 3) / 6;
  let moment = 0;
  let deepest = 0;
  let deepestAt = 0;
  const start: Stretch = { moment: hogLeft, shear: force, load, slope: -sagFree / length, sag: 0 };
  let stretch = start;
  let from = 0;
  for (let i = 0; i <= sorted.length; i++) {
    const point = sorted[i];
    const run = (point?.at ?? length) - from;
    const level = load === 0 ? run : stretch.shear / load;
    const top = Math.min(Math.max(level, 0), run);
    moment = Math.max(moment, Math.abs(momentAt(stretch, top)), Math.abs(momentAt(stretch, run)));
    for (const at of levels(stretch, run)) {
      const sag = sagAt(stretch, at);
      if (Math.abs(sag) > Math.abs(deepest)) {
        deepest = sag;
        deepestAt = from + at;
      }
    }
    if (!point) break;
    stretch = {
      moment: momentAt(stretch, run),
      shear: stretch.shear - load * run - point.load,
      load,
      slope: slopeAt(stretch, run),
      sag: sagAt(stretch, run),
    };
    from = point.at;
  }
  return { moment, stiff: deepest, at: deepestAt };
}

/** A stretch between single loads, by what holds at its left end; slope and sag times stiffness. */
interface Stretch {
  readonly moment: number;
  readonly shear: number;
  readonly load: number;
  readonly slope: number;
  readonly sag: number;
}

const momentAt = ({ moment, shear, load }: Stretch, x: number): number =>
  moment + x * (shear - (load * x) / 2);

const slopeAt = ({ moment, shear, load, slope }: Stretch, x: number): number =>
  slope - x * (moment + x * (shear / 2 - (load * x) / 6));

const sagAt = ({ moment, shear, load, slope, sag }: Stretch, x: number): number =>
  sag + x * (slope - x * (moment / 2 + x * (shear / 6 - (load * x) / 24)));

/** The slope between two loads is a cubic, nought three times at most: so many steps part the noughts. */
const STEPS = 8;

/** Where the slope is nought along a stretch. */
function levels(stretch: Stretch, run: number): number[] {
  const found: number[] = [];
  let left = 0;
  let value = stretch.slope;
  for (let i = 1; i <= STEPS; i++) {
    const right = (run * i) / STEPS;
    const next = slopeAt(stretch, right);
    if (value === 0) found.push(left);
    if (value * next < 0) found.push(nought(stretch, left, right, value > 0));
    left = right;
    value = next;
  }
  return found;
}

/** To a billionth of the bracket: at a level place the sag errs by the square of that. */
const CLOSE = 1e-9;
const MOST_STEPS = 60;

/** Newton’s steps, as the slope’s own slope is the moment; where one leaves the bracket, it is halved. */
function nought(stretch: Stretch, from: number, to: number, falling: boolean): number {
  let low = from;
  let high = to;
  let x = (from + to) / 2;
  for (let i = 0; i < MOST_STEPS; i++) {
    const slope = slopeAt(stretch, x);
    if (slope > 0 === falling) low = x;
    else high = x;
    const stepped = x + slope / momentAt(stretch, x);
    const next = stepped > low && stepped < high ? stepped : (low + high) / 2;
    if (Math.abs(next - x) <= CLOSE * (to - from)) return next;
    x = next;
  }
  return x;
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

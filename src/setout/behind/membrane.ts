/**
 * The membrane as strips off the roll: laid level from the base up, the upper over the lower, a strip longer than the roll
 * lapped upright, and round each corner at its right end onto the neighbour by the upright lap. Openings are cut out.
 * Laps are the project's own (`laps` of the membrane's layer), which proof compares with the published least.
 */
import { type Finding, finding } from "../../findings/finding.ts";
import { type Interval, intervalLength } from "../../geometry/interval.ts";
import { counterClockwise, type Polygon, polygonBounds, rectInsidePolygon } from "../../geometry/polygon.ts";
import { commonRect, type Rect, rectArea, rectOutline, rectsOverlap } from "../../geometry/rect.ts";
import { regionArea } from "../../geometry/region.ts";
import { faceCode } from "../../project/lookup.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { faceLength, MEETS_WITHIN_MM } from "../corners.ts";
import type { Piece, PieceKind } from "../facade.ts";
import { reachedOutline } from "../ground-plan.ts";
import { letter } from "../marks.ts";
import { buildUpOf } from "../resolve.ts";
import { bandWithin, stripWithin } from "./strip-shape.ts";
import { holesOf, looseFrom, massOfArea, reachAt, type Wall } from "./wall.ts";

/** Common roll of a wall membrane; data sheets differ, and the layer's `roll` takes theirs. */
export const USUAL_ROLL = { width: 1500, length: 50_000 } as const;
/** Common practice: wall membranes that stand light weigh 0.15 to 0.3 kg/m². */
const KG_PER_M2 = 0.2;
/** Lie on the membrane, and come off before a strip does. */
const ON_MEMBRANE: ReadonlySet<PieceKind> = new Set(["batten", "packer", "closure"]);

interface Roll {
  readonly z: number;
  readonly thickness: number;
  readonly level: number;
  readonly upright: number;
  readonly width: number;
  readonly length: number;
  readonly given: boolean;
}

/** A stretch of wall that one membrane covers. */
interface Stretch {
  readonly roll: Roll;
  readonly zone: string;
  readonly region: Rect;
  /** Part of the marks where a face has several. */
  readonly prefix: string;
  /** How much further it runs past its right end, onto what lies there. */
  readonly onward: number;
}

export function membraneStrips(wall: Wall): {
  readonly pieces: readonly Piece[];
  readonly findings: readonly Finding[];
} {
  const pieces: Piece[] = [];
  const findings: Finding[] = [];
  const before = wall.laid
    .filter(({ kind }) => ON_MEMBRANE.has(kind))
    .map(({ mark, outline }) => ({ mark, box: polygonBounds(outline) }));
  for (const stretch of stretchesOf(wall)) {
    const { roll } = stretch;
    if (roll.level >= roll.width || roll.upright >= roll.length) {
      findings.push(tooNarrow(wall, stretch));
      continue;
    }
    const outline = outlineAt(wall, roll.z);
    const strips = strippedStretch(wall, stretch, { before, outline });
    pieces.push(...strips);
    findings.push(told(wall, stretch, { strips, net: netArea(wall, outline, stretch.region) }));
  }
  return { pieces, findings };
}

/** One stretch where all zones' membranes lie in one plane, else one a zone. */
function stretchesOf(wall: Wall): Stretch[] {
  const rolls = wall.grounds.map((ground) => ({ ground, roll: rollOf(wall, ground.zone.id) }));
  const known = rolls.flatMap(({ ground, roll }) => (roll ? [{ ground, roll }] : []));
  const [first] = known;
  if (!first) return [];
  const alike = known.length === rolls.length && known.every(({ roll }) => sameRoll(roll, first.roll));
  const parts = alike ? [known] : known.map((one) => [one]);
  return parts.map((part): Stretch => {
    const { roll } = part[0] as (typeof known)[number];
    const x = span(part.map(({ ground }) => ground.bounds.x));
    const y = span(part.map(({ ground }) => ground.bounds.y));
    const reach = reachAt(wall, roll.z);
    const atRight = x[1] === span(wall.grounds.map(({ bounds }) => bounds.x))[1];
    const atLeft = x[0] === span(wall.grounds.map(({ bounds }) => bounds.x))[0];
    const from = atLeft && x[0] <= Math.max(0, wall.ends.left.x) ? reach[0] : x[0];
    const reachesEnd = atRight && x[1] >= Math.min(faceLength(wall.face), wall.ends.right.x);
    const zone = part[0]?.ground.zone.id ?? "";
    return {
      roll,
      zone,
      region: { x: [from, reachesEnd ? reach[1] : x[1]], y },
      prefix: alike ? "" : String(wall.face.zones.findIndex(({ id }) => id === zone) + 1),
      onward: !atRight || (reachesEnd && wall.ends.right.kind !== "free") ? roll.upright : 0,
    };
  });
}

function span(intervals: readonly Interval[]): Interval {
  return [Math.min(...intervals.map(([from]) => from)), Math.max(...intervals.map(([, to]) => to))];
}

function rollOf({ project, planes, grounds }: Wall, zone: string): Roll | undefined {
  const ground = grounds.find((one) => one.zone.id === zone);
  const place = planes.find((one) => one.zone === zone)?.layers.find(({ kind }) => kind === "membrane");
  const layer = ground && buildUpOf(project, ground.zone).layers.find(({ kind }) => kind === "membrane");
  if (!place || layer?.kind !== "membrane" || !layer.laps) return undefined;
  return {
    z: place.z[1],
    thickness: layer.thickness,
    ...layer.laps,
    ...(layer.roll ?? USUAL_ROLL),
    given: layer.roll !== undefined,
  };
}

function sameRoll(a: Roll, b: Roll): boolean {
  return (
    a.z === b.z &&
    a.level === b.level &&
    a.upright === b.upright &&
    a.width === b.width &&
    a.length === b.length
  );
}

interface Before {
  readonly mark: string;
  readonly box: Rect;
}

function strippedStretch(
  wall: Wall,
  stretch: Stretch,
  { before, outline }: { readonly before: readonly Before[]; readonly outline: Polygon },
): Piece[] {
  const { roll, region, prefix } = stretch;
  const { face } = wall;
  const openings = holesOf(face);
  const pieces: Piece[] = [];
  levels(region.y, roll).forEach((y, row) => {
    const parts = columns(region.x, roll, stretch.onward).flatMap((x, i, all) => {
      const last = i === all.length - 1;
      const cuts = openings.filter((one) => rectsOverlap(one, { x, y }));
      return stripWithin(outline, { x, y }, cuts).map((part) => ({ part, last, to: x[1] }));
    });
    parts.forEach(({ part, last, to }, i) => {
      const box = polygonBounds(part.outline);
      const onward = last && box.x[1] === to ? stretch.onward : 0;
      const length = snap(intervalLength(box.x) + onward);
      const width = snap(intervalLength(box.y));
      const suffix = parts.length > 1 ? letter(i) : "";
      pieces.push(
        looseFrom({
          mark: `${faceCode(face)}${prefix}-M${row + 1}${suffix}`,
          kind: "membrane",
          face: face.id,
          zone: stretch.zone,
          outline: part.outline,
          holes: part.holes,
          z: [roll.z, roll.z],
          material: "membrane",
          cut: { length, width, thickness: roll.thickness },
          massKg: massOfArea(length, width, KG_PER_M2),
          why: { rule: message(`setout.why.membrane.${onward > 0 ? "corner" : "strip"}`, { ...laps(roll) }) },
          removeBefore: before.filter((one) => rectsOverlap(one.box, box)).map(({ mark }) => mark),
        }),
      );
    });
  });
  return pieces;
}

/** The face's outline as far as the membrane goes round its corners. */
function outlineAt(wall: Wall, z: number): Polygon {
  const { ends, face } = wall;
  const [left, right] = reachAt(wall, z);
  const length = faceLength(face);
  const corners = counterClockwise(face.outline as Polygon);
  const box = polygonBounds(corners);
  const square = corners.length === 4 && corners.every(([x, y]) => box.x.includes(x) && box.y.includes(y));
  if (square && Math.abs(box.x[0]) <= MEETS_WITHIN_MM && Math.abs(box.x[1] - length) <= MEETS_WITHIN_MM)
    return rectOutline({ x: [left, right], y: box.y });
  return reachedOutline(face, length, {
    left: { ...ends.left, x: left },
    right: { ...ends.right, x: right },
  });
}

function laps({ level, upright }: Roll): { readonly level: number; readonly upright: number } {
  return { level, upright };
}

/** Heights of the strips from the base up; the last is cut along to what is left. */
function levels([bottom, top]: Interval, { width, level }: Roll): Interval[] {
  const rows: Interval[] = [];
  let from = bottom;
  for (;;) {
    const to = Math.min(snap(from + width), top);
    rows.push([from, to]);
    if (to >= top) return rows;
    from = snap(to - level);
  }
}

/** Lengths of one strip where the roll is shorter than the wall, alike and lapped upright. */
function columns([from, to]: Interval, { length, upright }: Roll, onward: number): Interval[] {
  const whole = to - from + onward;
  const count = Math.max(1, Math.ceil((whole - upright) / (length - upright) - 1e-9));
  const each = (whole + (count - 1) * upright) / count;
  return Array.from({ length: count }, (_, i): Interval => {
    const start = from + i * (each - upright);
    return [snap(start), i === count - 1 ? to : Math.min(to, snap(start + each))];
  });
}

function told(
  wall: Wall,
  stretch: Stretch,
  { strips, net }: { readonly strips: readonly Piece[]; readonly net: number },
): Finding {
  const { roll } = stretch;
  const order = strips.reduce((sum, { cut }) => sum + cut.length * roll.width, 0);
  const share = net > 0 ? Math.round((order / net) * 1000) / 1000 : 0;
  return finding({
    code: "S020",
    outcome: "pass",
    where: { face: wall.face.id, zone: stretch.zone, marks: strips.map(({ mark }) => mark) },
    says: message("setout.membrane", {
      strips: strips.length,
      width: roll.width,
      order: order / 1e6,
      net: net / 1e6,
    }),
    working: {
      formula: "A = Σ l · b",
      inputs: [
        {
          symbol: "b",
          meaning: message("setout.membrane.roll-width"),
          value: roll.width,
          unit: "mm",
          basis: roll.given ? "given" : "typical",
        },
        {
          symbol: "A/A_n",
          meaning: message("setout.membrane.share"),
          value: share,
          unit: "",
          basis: "derived",
        },
      ],
      substituted: `${strips.map(({ cut }) => Math.round(cut.length)).join(" + ")}`,
    },
    source: { kind: "common practice" },
  });
}

/** The stretch less its openings (mm²). */
function netArea({ face }: Wall, outline: Polygon, region: Rect): number {
  const whole = rectInsidePolygon(region, outline)
    ? rectArea(region)
    : bandWithin(outline, region).reduce((sum, part) => sum + regionArea(part), 0);
  return holesOf(face).reduce((sum, opening) => {
    const shared = commonRect(opening, region);
    return sum - (shared ? rectArea(shared) : 0);
  }, whole);
}

function tooNarrow(wall: Wall, { roll, zone }: Stretch): Finding {
  return finding({
    code: "S020",
    outcome: "fail",
    where: { face: wall.face.id, zone },
    says: message("setout.membrane.narrow", { width: roll.width, length: roll.length, ...laps(roll) }),
    hint: message("setout.membrane.narrow.hint"),
    demand: roll.level,
    limit: roll.width,
    unit: "mm",
    source: { kind: "common practice" },
  });
}

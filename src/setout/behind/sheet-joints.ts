/**
 * What closes the level joints of sheets from behind: a strip or a profile in every bay between battens, which carry the
 * joint themselves. Rain that is driven into an open level joint runs in over the lower sheet's edge.
 */
import { type Finding, finding } from "../../findings/finding.ts";
import {
  common,
  type Interval,
  intervalLength,
  overlaps,
  subtractIntervals,
} from "../../geometry/interval.ts";
import { type Polygon, polygonBounds } from "../../geometry/polygon.ts";
import { type Rect, rectOutline, rectsOverlap } from "../../geometry/rect.ts";
import { intersect } from "../../geometry/region.ts";
import type { SheetCladding } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { Joint, Piece } from "../facade.ts";
import { freeUpright } from "../ground-plan.ts";
import { letter, markOf } from "../marks.ts";
import { claddingOf } from "../resolve.ts";
import { type Ground, looseFrom, massOfArea, type Wall } from "./wall.ts";

/** How far a strip reaches behind the sheets over and under the joint, and how thick it is (common practice). */
const COVER_MM = 20;
const THICKNESS_MM = 1;
/** Closures at open ends lie this close to the edge. */
const CLOSURE_MM = 1;
/** Rubber near 1.2, folded aluminium near 2.7 kg/m² a millimetre. */
const KG_PER_M2 = { "backing strip": 1.2, "drip profile": 2.7 } as const;

type Behind = keyof typeof KG_PER_M2;

export function sheetJointStrips(
  wall: Wall,
  joints: readonly Joint[],
): { readonly pieces: readonly Piece[]; readonly findings: readonly Finding[] } {
  const pieces: Piece[] = [];
  const findings: Finding[] = [];
  for (const ground of wall.grounds) {
    const cladding = claddingOf(wall.project, ground.zone);
    const plane = wall.planes.find(({ zone }) => zone === ground.zone.id);
    const level = joints.filter(
      ({ kind, along, zone }) => kind === "sheet joint" && along === "x" && zone === ground.zone.id,
    );
    if (cladding.kind !== "sheets" || !plane || level.length === 0) continue;
    const behind = cladding.levelJoint?.behind ?? "backing strip";
    const own = behind === "open" ? [] : stripsOf(wall, { ground, plane }, { cladding, behind, level });
    pieces.push(...own);
    findings.push(told(wall, ground, { cladding, level, own }));
  }
  return { pieces, findings };
}

interface Asked {
  readonly cladding: SheetCladding;
  readonly behind: Behind;
  readonly level: readonly Joint[];
}

function stripsOf(wall: Wall, { ground, plane }: Ground, { cladding, behind, level }: Asked): Piece[] {
  const { cover = COVER_MM, thickness = THICKNESS_MM } = cladding.levelJoint ?? {};
  const battens = wall.laid
    .filter(({ kind, zone }) => kind === "batten" && zone === ground.zone.id)
    .map(({ mark, outline }) => ({ mark, box: polygonBounds(outline) }));
  const sheets = wall.laid
    .filter(({ kind, zone }) => kind === "sheet" && zone === ground.zone.id)
    .map(({ mark, outline }) => ({ mark, box: polygonBounds(outline) }));
  const closures = wall.laid
    .filter(({ kind, zone }) => kind === "closure" && zone === ground.zone.id)
    .map(({ outline }) => ({ outline, box: polygonBounds(outline) }));
  const placed: Rect[] = [];
  return level.flatMap(({ region }, row) => {
    const joint = polygonBounds(region);
    const covered: Interval = [joint.y[0] - cover, joint.y[1] + cover];
    const near = battens.flatMap(({ box }) => (overlaps(box.y, covered) ? [box] : []));
    // A batten that ends beside a duct just over or under the joint carries none of it: a short strip passes its end.
    const ended = near.filter(({ y }) => !overlaps(y, joint.y));
    return baysOf(wall, joint, { battens: near, ended }).flatMap((x, bay): Piece[] => {
      const free = freeUpright(ground, x).find((one) => overlaps(one, joint.y));
      const reach =
        free &&
        common(
          [snap(free[0] + CLOSURE_MM), snap(free[1] - CLOSURE_MM)],
          [snap(joint.y[0] - cover), snap(joint.y[1] + cover)],
        );
      const clear = reach && clearOf(closures, [...placed, ...ended], { x, y: reach });
      if (!clear) return [];
      placed.push({ x, y: clear });
      const length = snap(intervalLength(x));
      const wide = snap(intervalLength(clear));
      const box: Rect = { x, y: clear };
      return [
        looseFrom({
          mark: markOf({
            face: ground.face,
            zone: ground.zone.id,
            kind: "gasket",
            number: `h${row + 1}${letter(bay)}`,
          }),
          kind: "gasket",
          face: ground.face.id,
          zone: ground.zone.id,
          outline: rectOutline(box),
          z: [snap(plane.backZ - thickness), plane.backZ],
          material: behind,
          cut: { length, width: wide, thickness },
          massKg: massOfArea(length, wide, KG_PER_M2[behind] * thickness),
          why: { rule: message(`setout.why.level-joint.${behind === "backing strip" ? "strip" : "drip"}`) },
          removeBefore: sheets
            .filter(
              ({ box: { x: sx, y: sy } }) =>
                overlaps(sx, box.x) && overlaps(sy, box.y) && sy[0] >= joint.y[1],
            )
            .map(({ mark }) => mark),
        }),
      ];
    });
  });
}

interface Mesh {
  readonly outline: Polygon;
  readonly box: Rect;
}

/** What of a strip's height is free of battens' ends and of strips close by; nothing where a mesh stands in it. */
function clearOf(closures: readonly Mesh[], placed: readonly Rect[], box: Rect): Interval | undefined {
  const taken = placed.filter((other) => rectsOverlap(other, box)).map(({ y }) => y);
  const [y] = subtractIntervals(box.y, taken).sort((a, b) => intervalLength(b) - intervalLength(a));
  const meshed = closures.some(
    ({ outline, box: mesh }) =>
      y && rectsOverlap(mesh, { x: box.x, y }) && intersect(outline, rectOutline({ x: box.x, y })).length > 0,
  );
  return meshed ? undefined : y;
}

/**
 * Stretches of a joint between two battens and past those that end beside it, clear of ducts; what is past the last
 * batten lies on no cavity worth closing.
 */
function baysOf(
  { rounds }: Wall,
  joint: Rect,
  { battens, ended }: { readonly battens: readonly Rect[]; readonly ended: readonly Rect[] },
): Interval[] {
  const ducts = rounds
    .filter(({ bounds }) => overlaps(bounds.y, [joint.y[0] - COVER_MM, joint.y[1] + COVER_MM]))
    .map(({ bounds }) => bounds.x);
  const between = subtractIntervals(
    joint.x,
    battens.map(({ x }) => x),
  ).filter((bay) => battens.some(({ x }) => x[1] === bay[0]) && battens.some(({ x }) => x[0] === bay[1]));
  // Another batten may run on over the joint where one ends beside it.
  const crossing = battens.filter((box) => !ended.includes(box)).map(({ x }) => x);
  const past = ended.flatMap(({ x }): Interval[] => {
    const shared = common(x, joint.x);
    return shared ? subtractIntervals(shared, crossing) : [];
  });
  return [...between, ...past].flatMap((bay) => subtractIntervals(bay, ducts));
}

function told(
  { face, project }: Wall,
  { zone }: Ground["ground"],
  at: { readonly cladding: SheetCladding; readonly level: readonly Joint[]; readonly own: readonly Piece[] },
): Finding {
  const { cladding, level, own } = at;
  const asked = cladding.levelJoint?.behind;
  const metres = level.reduce((sum, { region }) => sum + intervalLength(polygonBounds(region).x), 0) / 1000;
  const values = { joints: level.length, metres, pieces: own.length };
  const path = `/claddings/${project.claddings.indexOf(cladding)}`;
  const open = asked === "open";
  return finding({
    code: "S022",
    outcome: open ? "attention" : "pass",
    where: {
      path,
      face: face.id,
      zone: zone.id,
      ...(own.length > 0 && { marks: own.map(({ mark }) => mark) }),
    },
    says: message(
      open ? "setout.level-joint.open" : asked ? "setout.level-joint.closed" : "setout.level-joint.typical",
      values,
    ),
    ...(open && { hint: message("setout.level-joint.open.hint") }),
    ...(!asked && { hint: message("setout.level-joint.enter") }),
    working: {
      formula: "b = g + 2c",
      inputs: [
        {
          symbol: "c",
          meaning: message("setout.level-joint.cover"),
          value: cladding.levelJoint?.cover ?? COVER_MM,
          unit: "mm",
          basis: cladding.levelJoint?.cover === undefined ? "typical" : "given",
        },
      ],
      substituted: `${cladding.joint} + 2 · ${cladding.levelJoint?.cover ?? COVER_MM}`,
    },
    source: { kind: "common practice" },
  });
}

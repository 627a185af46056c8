/** Lays out one face: its timber, lines, zones, clearances and the joints between zones. */
import type { Demands } from "../codes/demands.ts";
import { type Finding, finding } from "../findings/finding.ts";
import { faceFrame } from "../geometry/frame.ts";
import type { Interval } from "../geometry/interval.ts";
import { counterClockwise, type Polygon, polygonBounds } from "../geometry/polygon.ts";
import { commonRect, type Rect, rectOutline, rectsOverlap } from "../geometry/rect.ts";
import { subtract } from "../geometry/region.ts";
import { faceCode } from "../project/lookup.ts";
import type { Face, Project } from "../project/schema/project.ts";
import { type Message, message } from "../text/message.ts";
import { snap } from "../units/length.ts";
import { behindCladding } from "./behind/index.ts";
import { throughBucks } from "./behind/through-bucks.ts";
import type { Wall } from "./behind/wall.ts";
import type { FaceEnds } from "./corners.ts";
import { jointsOf } from "./draft.ts";
import type { Clearance, Facade, FaceLayout, Joint, RodResult, Solid } from "./facade.ts";
import { flashingsOf } from "./flashings.ts";
import type { KeepOut, RoundKeepOut, ZoneGround } from "./ground-plan.ts";
import { laidRecord, movesOf } from "./laid/record.ts";
import { controlLines } from "./lines.ts";
import { planeOf } from "./planes.ts";
import { withReturns } from "./reveals/index.ts";
import { solidsOf } from "./solids.ts";
import { layZone } from "./zone-layout.ts";

/** A face made ready: its reach, what to keep clear, its zones. */
export interface Prepared {
  readonly face: Face;
  readonly ends: FaceEnds;
  readonly outline: Polygon;
  readonly keepOuts: readonly KeepOut[];
  readonly rounds: readonly RoundKeepOut[];
  readonly grounds: readonly ZoneGround[];
  /** What its cladding was set out on before it was laid again. */
  readonly setOutOn?: Pick<Prepared, "keepOuts" | "grounds">;
}

export type Rods = readonly {
  readonly rod: RodResult;
  readonly primary: ReadonlySet<number>;
  /** The next best rod and what it would cost. */
  readonly runnerUp?: Message;
}[];

export interface LaidFace {
  readonly layout: FaceLayout;
  readonly findings: readonly Finding[];
}

export function layFace(
  project: Project,
  demands: Demands,
  planes: Facade["planes"],
  { face, ends, outline, keepOuts, rounds, grounds, setOutOn }: Prepared,
  rods: Rods,
): LaidFace {
  const solids: Solid[] = solidsOf(project, face);
  const primary =
    rods.find(({ rod }) => rod.zones.some((zone) => zone.face === face.id))?.primary ?? new Set<number>();
  const lines = controlLines({ face, outline, keepOuts, grounds, primary });
  const first = setOutOn ?? { keepOuts, grounds };
  const level = (setOutOn ? controlLines({ face, outline, ...setOutOn, primary }) : lines)
    .filter(({ direction }) => direction === "horizontal")
    .map(({ at }) => at);
  const moves = movesOf(laidRecord(project, face.id));
  const results = first.grounds.map((ground) =>
    layZone({
      project,
      demands,
      ground,
      path: `/faces/${project.faces.indexOf(face)}/zones/${face.zones.indexOf(ground.zone)}`,
      plane: planeOf(planes, face.id, ground.zone.id),
      ends,
      ...rodOf(rods, ground),
      lines: level,
      ...(setOutOn && { relaid: { moves, keepOuts } }),
      solids,
    }),
  );
  const flashings = flashingsOf({ face, ends, keepOuts, grounds }, planes);
  const laid = [...results.flatMap(({ pieces }) => pieces), ...flashings.pieces];
  const vents = results.flatMap((result) => result.vents);
  const wall: Wall = {
    project,
    face,
    path: `/faces/${project.faces.indexOf(face)}`,
    ends,
    grounds,
    planes: planes.filter((plane) => plane.face === face.id),
    rounds,
    laid,
  };
  const behind = behindCladding(wall, { joints: results.flatMap(({ joints }) => joints), vents, solids });
  const told = throughBucks(laid, behind.pieces);
  const returns = withReturns({ ...wall, laid: told.laid }, { demands, solids, behind: told.behind });
  const layout: FaceLayout = {
    id: face.id,
    code: faceCode(face),
    frame: faceFrame(face.plan),
    azimuthDeg: face.azimuthDeg,
    meets: { left: ends.left.kind, right: ends.right.kind },
    outline,
    ground: face.ground,
    openings: face.openings.map(({ id, kind, x, y }) => ({ id, kind, region: { x, y } })),
    zones: grounds.map(({ zone, region }) => ({
      id: zone.id,
      cladding: zone.cladding,
      buildUp: zone.buildUp,
      region,
    })),
    clearances: clearancesOf(outline, keepOuts, rounds),
    solids,
    pieces: returns.pieces,
    joints: [...results.flatMap(({ joints }) => joints), ...junctions(face, outline, grounds, keepOuts)],
    controlLines: lines,
    vents,
  };
  return {
    layout,
    findings: [
      ...results.flatMap(({ findings }) => findings),
      ...flashings.findings,
      ...behind.findings,
      ...returns.findings,
      ...notSetOut(project, face, outline, grounds),
    ],
  };
}

/** The rod that a zone's courses hang on, where it has one. */
function rodOf(
  rods: Rods,
  { face, zone }: ZoneGround,
): { readonly rod: RodResult | undefined; readonly runnerUp?: Message } {
  const found = rods.find(({ rod }) => rod.zones.some((one) => one.face === face.id && one.zone === zone.id));
  return { rod: found?.rod, ...(found?.runnerUp && { runnerUp: found.runnerUp }) };
}

/** The clear strips round openings, cut to the face and to each other, and the rings round ducts. */
function clearancesOf(
  outline: Polygon,
  keepOuts: readonly KeepOut[],
  rounds: readonly RoundKeepOut[],
): Clearance[] {
  const openings = keepOuts.map(({ opening }) => rectOutline(opening));
  const taken: Polygon[] = [...openings];
  const strips = keepOuts.flatMap(({ of, opening, rect }): Clearance[] =>
    stripsRound(opening, rect).flatMap(({ kind, strip }) => {
      const inside = clipTo(outline, strip, taken);
      taken.push(rectOutline(strip));
      return inside.map((region) => ({ kind, of, region }));
    }),
  );
  return [
    ...strips,
    ...rounds.map(({ of, polygon }): Clearance => ({ kind: "penetration", of, region: polygon })),
  ];
}

function stripsRound(opening: Rect, rect: Rect): { kind: "jamb" | "head" | "sill"; strip: Rect }[] {
  const strips: { kind: "jamb" | "head" | "sill"; strip: Rect }[] = [
    { kind: "sill", strip: { x: rect.x, y: [rect.y[0], opening.y[0]] } },
    { kind: "jamb", strip: { x: [rect.x[0], opening.x[0]], y: opening.y } },
    { kind: "jamb", strip: { x: [opening.x[1], rect.x[1]], y: opening.y } },
    { kind: "head", strip: { x: rect.x, y: [opening.y[1], rect.y[1]] } },
  ];
  return strips.filter(({ strip }) => strip.x[1] > strip.x[0] && strip.y[1] > strip.y[0]);
}

function clipTo(outline: Polygon, strip: Rect, taken: readonly Polygon[]): Polygon[] {
  const near = taken.filter((other) => rectsOverlap(polygonBounds(other), strip));
  const box = polygonBounds(outline);
  const inBox = commonRect(strip, box);
  if (!inBox) return [];
  if (near.length === 0 && outline.length === 4) return [rectOutline(inBox)];
  const beyond = subtract(rectOutline(strip), near);
  return beyond.flatMap(({ outline: part }) =>
    subtract(part, outside(outline, strip)).map((region) => region.outline),
  );
}

/** What of a rectangle lies outside the outline, as clips. */
function outside(outline: Polygon, strip: Rect): Polygon[] {
  return subtract(rectOutline(strip), [counterClockwise(outline)]).map((region) => region.outline);
}

/** The joints between zones that stand side by side. */
function junctions(
  face: Face,
  outline: Polygon,
  grounds: readonly ZoneGround[],
  keepOuts: readonly KeepOut[],
): Joint[] {
  const sorted = [...grounds].sort((a, b) => a.bounds.x[0] - b.bounds.x[0]);
  return sorted.slice(1).flatMap((right, i): Joint[] => {
    const left = sorted[i] as ZoneGround;
    const x: Interval = [left.bounds.x[1], right.bounds.x[0]];
    if (x[1] <= x[0] || x[1] - x[0] > WIDEST_JUNCTION_MM) return [];
    const strip = rectOutline({ x, y: polygonBounds(outline).y });
    const parts = subtract(strip, [
      ...outside(outline, { x, y: polygonBounds(outline).y }),
      ...keepOuts.map(({ rect }) => rectOutline(rect)),
    ]);
    return jointsOf(parts, {
      kind: "junction",
      face: face.id,
      width: snap(x[1] - x[0]),
      along: "y",
      line: `${face.id} junction right ${left.zone.id}`,
    });
  });
}

/** A wider strip between zones is bare wall, not a joint. */
const WIDEST_JUNCTION_MM = 30;

/** Recesses and bare wall are named, so that nothing is missing without a word. */
function notSetOut(
  project: Project,
  face: Face,
  outline: Polygon,
  grounds: readonly ZoneGround[],
): Finding[] {
  const recesses = face.openings.filter(({ kind }) => kind === "recess");
  const path = `/faces/${project.faces.indexOf(face)}`;
  const findings = recesses.flatMap(({ id, linedBy = [], soffit, depth }) => {
    const [lined, hung] = [linedBy.length > 0, soffit !== undefined && depth !== undefined];
    if (lined && hung) return [];
    const open = lined ? "setout.recess.soffit" : hung ? "setout.recess.sides" : "setout.recess";
    return finding({
      code: "S015",
      outcome: "attention",
      where: {
        path: `${path}/openings/${face.openings.findIndex((one) => one.id === id)}`,
        face: face.id,
        opening: id,
      },
      says: message(open, { opening: id, face: face.id }),
      hint: message(hung ? "setout.recess.hint.sides" : "setout.recess.hint.soffit"),
    });
  });
  const bare = bareWidth(outline, grounds);
  if (bare > 0.5) {
    findings.push(
      finding({
        code: "S015",
        outcome: "attention",
        where: { path: `${path}/zones`, face: face.id },
        says: message("setout.bare", { face: face.id, width: bare }),
      }),
    );
  }
  return findings;
}

/** Width of the face that no zone covers and no junction explains (mm). */
function bareWidth(outline: Polygon, grounds: readonly ZoneGround[]): number {
  const { x } = polygonBounds(outline);
  const sorted = [...grounds].map(({ bounds }) => bounds.x).sort((a, b) => a[0] - b[0]);
  let reached = x[0];
  let bare = 0;
  for (const [from, to] of [...sorted, [x[1], x[1]] as const]) {
    if (from - reached > WIDEST_JUNCTION_MM || (reached === x[0] && from > reached)) bare += from - reached;
    reached = Math.max(reached, to);
  }
  return snap(bare);
}

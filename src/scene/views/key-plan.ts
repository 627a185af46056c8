/** The walls in plan, each with its name, the way it looks and the number of its elevation. Building frame: X to the right, Y up the paper. */
import type { Interval } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Facade, FaceLayout } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene, SceneText } from "../model.ts";
import { layerName } from "../roles.ts";
import { heading } from "./extent.ts";
import { fittingScale } from "./scales.ts";
import { NAME, TEXT } from "./style.ts";

export interface KeyPlanOptions {
  /** Sheet that shows a face: its number and name. */
  readonly sheetOf: (face: string) => { readonly number: number; readonly name: string } | undefined;
  /** What the paper leaves, mm. */
  readonly room: readonly [width: number, height: number];
}

const WALL_LAYER = layerName("STRUCT");
const WORDS = layerName("FRAME", "T");

/** From the cladding to the name of its face, mm on paper. */
const NAME_OFF = 9;
const STEM = 6;

export function keyPlan(facade: Pick<Facade, "faces" | "planes">, { sheetOf, room }: KeyPlanOptions): Scene {
  const walls = facade.faces.filter(({ frame }) => frame.level === undefined);
  const ends = walls.flatMap((face) => [along(face, 0, 0), along(face, lengthOf(face)[1], 0)]);
  const box = {
    x: [Math.min(...ends.map(([x]) => x)), Math.max(...ends.map(([x]) => x))] as const,
    y: [Math.min(...ends.map(([, y]) => y)), Math.max(...ends.map(([, y]) => y))] as const,
  };
  const scale = fittingScale(box, { room: [room[0] - 90, room[1] - 70] });
  const paper = 1 / scale;
  return makeScene({
    id: "key-plan",
    title: message("drawing.title.key-plan"),
    scale,
    items: [
      ...walls.flatMap((face) => wallItems(facade, face)),
      ...names(walls, { paper, sheetOf }),
      ...north(walls, [box.x[1] + 26 * paper, box.y[1]], paper),
    ],
  });
}

function lengthOf({ outline }: FaceLayout): Interval {
  return polygonBounds(outline).x;
}

/** A point of a face in plan. */
function along({ frame: { origin, along: a, outward: o } }: FaceLayout, x: number, z: number): Point {
  return [origin[0] + a[0] * x + o[0] * z, origin[1] + a[1] * x + o[1] * z];
}

/** The sheathing's outer face heavy, the cladding's before it, broken at openings. */
function wallItems(facade: Pick<Facade, "planes">, face: FaceLayout): Item[] {
  const line = ([from, to]: Interval, z: number, role: "cut" | "detail"): Item => ({
    kind: "line",
    layer: role === "cut" ? WALL_LAYER : layerName("BOARD"),
    of: face.id,
    from: along(face, from, z),
    to: along(face, to, z),
    line: role,
  });
  return [
    line(lengthOf(face), 0, "cut"),
    ...face.zones.map((zone): Item => {
      const plane = facade.planes.find((one) => one.face === face.id && one.zone === zone.id);
      return line(polygonBounds(zone.region).x, plane?.faceZ ?? 0, "detail");
    }),
    ...face.openings.map(
      ({ id, region }): Item => ({
        kind: "polygon",
        layer: layerName("OPENNG"),
        of: id,
        outline: [
          along(face, region.x[0], -120),
          along(face, region.x[1], -120),
          along(face, region.x[1], 60),
          along(face, region.x[0], 60),
        ],
        line: "detail",
        fill: "glass",
      }),
    ),
  ];
}

interface Label {
  readonly face: FaceLayout;
  readonly foot: Point;
  readonly text: SceneText;
}

/** Names stand in two columns beside the plan, in the order of their feet from below, so that none crosses another. */
function names(
  walls: readonly FaceLayout[],
  { paper, sheetOf }: { paper: number; sheetOf: KeyPlanOptions["sheetOf"] },
): Item[] {
  const labels = walls.map((face): Label => {
    const x = lengthOf(face);
    const sheet = sheetOf(face.id);
    const values = { face: heading(face.id), code: face.code, azimuth: face.azimuthDeg ?? 0 };
    return {
      face,
      foot: along(face, (x[0] + x[1]) / 2, STEM * paper),
      text: sheet
        ? message("drawing.key.face-sheet", { ...values, number: sheet.number })
        : message("drawing.key.face", values),
    };
  });
  const xs = labels.map(({ foot }) => foot[0]);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const middle = (left + right) / 2;
  return [false, true].flatMap((isRight) => {
    const own = labels
      .filter(({ foot }) => foot[0] > middle === isRight)
      .sort((a, b) => a.foot[1] - b.foot[1]);
    const edge = isRight ? right + NAME_OFF * paper : left - NAME_OFF * paper;
    let last = Number.NEGATIVE_INFINITY;
    return own.flatMap(({ face, foot, text }): Item[] => {
      const y = Math.max(foot[1], last + 7 * paper);
      last = y;
      const x = lengthOf(face);
      const sheet = sheetOf(face.id);
      return [
        {
          kind: "polyline",
          layer: WORDS,
          of: face.id,
          line: "leader",
          points: [along(face, (x[0] + x[1]) / 2, 0), foot, [edge, y]],
        },
        {
          kind: "text",
          layer: WORDS,
          of: face.id,
          at: [edge + (isRight ? 1 : -1) * paper, y],
          text,
          height: NAME,
          weight: "bold",
          anchor: isRight ? "start" : "end",
          baseline: "middle",
          ...(sheet && { link: sheet.name }),
        },
      ];
    });
  });
}

/** An arrow to the north, where a wall's azimuth tells where that is. */
function north(walls: readonly FaceLayout[], at: Point, paper: number): Item[] {
  const told = walls.find(({ azimuthDeg }) => azimuthDeg !== undefined);
  if (told?.azimuthDeg === undefined) return [];
  const [ox, oy] = told.frame.outward;
  // The outward direction lies the azimuth clockwise from north, seen from above.
  const turn = (told.azimuthDeg * Math.PI) / 180;
  const [nx, ny] = [ox * Math.cos(turn) - oy * Math.sin(turn), ox * Math.sin(turn) + oy * Math.cos(turn)];
  const half = 9 * paper;
  const tip: Point = [at[0] + nx * half, at[1] + ny * half];
  const side = (by: number): Point => [
    at[0] - nx * half * 0.6 - ny * by * paper,
    at[1] - ny * half * 0.6 + nx * by * paper,
  ];
  const layer = layerName("FRAME");
  return [
    { kind: "polygon", layer, outline: [tip, side(3), at], line: "visible", fill: "ink" },
    { kind: "polygon", layer, outline: [tip, at, side(-3)], line: "visible", fill: "paper" },
    {
      kind: "text",
      layer: WORDS,
      at: [tip[0] + nx * 3 * paper, tip[1] + ny * 3 * paper],
      text: message("drawing.key.north"),
      height: TEXT,
      anchor: "middle",
      baseline: "middle",
    },
  ];
}

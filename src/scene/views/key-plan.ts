/** The walls in plan, each with its name, the way it looks and the number of its elevation. Building frame: X to the right, Y up the paper. */
import type { Interval } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Facade, FaceLayout } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene, SceneText } from "../model.ts";
import { layerName } from "../roles.ts";
import { spread } from "../spread.ts";
import { heading } from "./extent.ts";
import { bubbleItems, bubbleRadius, MARK_LAYER, type Marked } from "./mark-bubble.ts";
import { fittingScale } from "./scales.ts";
import { NAME, TEXT } from "./style.ts";

export interface KeyPlanOptions {
  /** Sheet that shows a face: its number and name. */
  readonly sheetOf: (face: string) => { readonly number: number; readonly name: string } | undefined;
  /** Details of walls that are cut level, each round a place of its wall. */
  readonly details?: readonly PlanDetail[];
  /** Millimetres of paper for one of the model; the largest usual one that leaves some room for names unless told. */
  readonly scale?: number;
}

/** A detail cut level, where it stands on its wall. */
export interface PlanDetail extends Marked {
  /** Id of the face. */
  readonly face: string;
  /** Along the face, mm. */
  readonly at: number;
}

/** What an A3 sheet leaves for the walls themselves between their names and marks, mm on paper. */
const ROOM = [200, 120] as const;

const WALL_LAYER = layerName("STRUCT");
const WORDS = layerName("FRAME", "T");

/** From the cladding to the name of its face, mm on paper. */
const NAME_OFF = 9;
const STEM = 6;

/** Of a circle round a place: a detail shows about as much, mm; on paper no less than is seen. */
const RING = 300;
const LEAST_RING = 2;
/** From the walls, and the names beside them, to the rows of marks, and between marks, mm on paper. */
const ROW_OFF = 12;
const BETWEEN = 2;
const NORTH = 9;

export function keyPlan(facade: Pick<Facade, "faces" | "planes">, options: KeyPlanOptions): Scene {
  const { sheetOf, details = [] } = options;
  const walls = facade.faces.filter(({ frame }) => frame.level === undefined);
  const ends = walls.flatMap((face) => [along(face, 0, 0), along(face, lengthOf(face)[1], 0)]);
  const box = {
    x: [Math.min(...ends.map(([x]) => x)), Math.max(...ends.map(([x]) => x))] as const,
    y: [Math.min(...ends.map(([, y]) => y)), Math.max(...ends.map(([, y]) => y))] as const,
  };
  const scale = options.scale ?? fittingScale(box, { room: ROOM });
  const paper = 1 / scale;
  const named = names(walls, { paper, sheetOf });
  const reach = named.flatMap((item) => (item.kind === "text" ? [item.at[1]] : []));
  const rows: Interval = [
    Math.min(box.y[0], ...reach) - ROW_OFF * paper,
    Math.max(box.y[1], ...reach) + ROW_OFF * paper,
  ];
  const marks = detailItems(details, { walls, middle: (box.y[0] + box.y[1]) / 2, rows, paper });
  const right = Math.max(
    box.x[1],
    ...marks.flatMap((item) => (item.kind === "circle" ? [item.centre[0] + item.radius] : [])),
  );
  return makeScene({
    id: "key-plan",
    title: message("drawing.title.key-plan"),
    scale,
    items: [
      ...walls.flatMap((face) => wallItems(facade, face)),
      ...named,
      ...marks,
      ...north(walls, [right + 2 * NORTH * paper, rows[1] + NORTH * paper], paper),
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

/**
 * A ring round each place, led to its mark in a row over or under the plan, whichever is nearer, in the order in which they lie: no
 * leader crosses another of its row.
 */
function detailItems(
  details: readonly PlanDetail[],
  {
    walls,
    middle,
    rows,
    paper,
  }: { walls: readonly FaceLayout[]; middle: number; rows: Interval; paper: number },
): Item[] {
  const radius = bubbleRadius(details) * paper;
  const ring = Math.max(RING, LEAST_RING * paper);
  const placed = details.flatMap((detail) => {
    const face = walls.find(({ id }) => id === detail.face);
    return face ? [{ detail, spot: along(face, detail.at, 0) }] : [];
  });
  return [false, true].flatMap((isOver) => {
    const own = placed.filter(({ spot }) => spot[1] > middle === isOver);
    const places = spread(
      own.map(({ spot }) => spot[0]),
      { spacing: 2 * radius + BETWEEN * paper },
    );
    const [foot, out] = isOver ? [rows[1], 1] : [rows[0], -1];
    return own.flatMap(({ detail, spot: [x, y] }, i): Item[] => {
      const place = places[i] as number;
      const [dx, dy] = [place - x, foot - y];
      const reach = ring / Math.hypot(dx, dy);
      return [
        { kind: "circle", layer: MARK_LAYER, centre: [x, y], radius: ring, line: "detail" },
        {
          kind: "line",
          layer: MARK_LAYER,
          from: [x + dx * reach, y + dy * reach],
          to: [place, foot],
          line: "leader",
        },
        ...bubbleItems(detail, { centre: [place, foot + out * radius], radius, paper }),
      ];
    });
  });
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
  const half = NORTH * paper;
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

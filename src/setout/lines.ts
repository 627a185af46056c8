/** Control lines: what the openings, ends and edges of a face, and its own lines, ask of both claddings. */
import { type Polygon, polygonBounds } from "../geometry/polygon.ts";
import type { Face } from "../project/schema/project.ts";
import type { ControlLine } from "./facade.ts";
import type { KeepOut, ZoneGround } from "./ground-plan.ts";

interface Asked {
  readonly face: Face;
  readonly outline: Polygon;
  readonly keepOuts: readonly KeepOut[];
  readonly grounds: readonly ZoneGround[];
  /** Heights that end rod segments anywhere on the building, where this face has a rod. */
  readonly primary: ReadonlySet<number>;
}

/** A face's lines, level ones from the base up and then upright ones from the left. */
export function controlLines({ face, outline, keepOuts, grounds, primary }: Asked): ControlLine[] {
  const box = polygonBounds(outline);
  const level: ControlLine[] = [];
  const add = (kind: ControlLine["kind"], at: number, of?: string): void => {
    level.push({
      id: of ? `${face.id} ${kind} ${of}` : `${face.id} ${kind}`,
      face: face.id,
      direction: "horizontal",
      at,
      kind,
      ...(of && { of }),
      rank: primary.size === 0 || primary.has(at) ? "primary" : "secondary",
    });
  };
  add("base", box.y[0]);
  for (const { of, sillLine, headLine } of keepOuts) {
    if (sillLine !== undefined) add("sill", sillLine, of);
    add("head", headLine, of);
  }
  for (const { id, y } of face.lines ?? []) add("own", y, id);
  add("top", box.y[1]);
  const upright: ControlLine[] = [];
  const stand = (kind: ControlLine["kind"], at: number, of: string, side: "left" | "right"): void => {
    upright.push({
      id: `${face.id} ${kind} ${side} ${of}`,
      face: face.id,
      direction: "vertical",
      at,
      kind,
      of,
      rank: "primary",
    });
  };
  stand("corner", box.x[0], face.id, "left");
  stand("corner", box.x[1], face.id, "right");
  for (const { of, rect } of keepOuts) {
    stand("jamb", rect.x[0], of, "left");
    stand("jamb", rect.x[1], of, "right");
  }
  for (const { zone, bounds } of grounds) {
    if (bounds.x[0] > box.x[0]) stand("junction", bounds.x[0], zone.id, "left");
    if (bounds.x[1] < box.x[1]) stand("junction", bounds.x[1], zone.id, "right");
  }
  return [...level.sort((a, b) => a.at - b.at), ...upright.sort((a, b) => a.at - b.at)];
}

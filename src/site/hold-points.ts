/**
 * The hold points of a face: what must be seen before it is covered, and which step of the work each ends. Sheets and site pages
 * ask for the same.
 */
import type { Project } from "../project/schema/project.ts";
import type { Facade, FaceLayout } from "../setout/facade.ts";
import type { MethodStep } from "../takeoff/method.ts";
import { type Message, message } from "../text/message.ts";
import type { HOLD_POINTS } from "./journal/entry.ts";

export type HoldPoint = (typeof HOLD_POINTS)[number];

export interface HoldCheck {
  readonly point: HoldPoint;
  readonly check: Message;
  /** The figure that this face asks for. */
  readonly asked?: Message;
}

/** The hold point that a step ends with: the first lift of the cladding with that of the first bay. */
export function holdAfter({ step, lift }: Pick<MethodStep, "step" | "lift">): HoldPoint | undefined {
  switch (step) {
    case "membrane":
      return "H1";
    case "flashings":
      return "H2";
    case "timber":
      return "H3";
    case "closures":
      return "H4";
    case "cladding":
      return lift === 1 ? "H5" : undefined;
    case "trims":
      return undefined;
  }
}

/** What the hold points look at (common practice), with the figures that this face asks for. */
export function holdChecks(
  face: FaceLayout,
  { facade, project }: { readonly facade: Facade; readonly project: Project },
): HoldCheck[] {
  const of = (...kinds: readonly string[]) => face.pieces.filter(({ kind }) => kinds.includes(kind));
  const bites = (pieces: readonly FaceLayout["pieces"][number][]): number[] =>
    pieces.flatMap(({ fixings }) => fixings.map(({ bite }) => bite));
  const planes = facade.planes.filter((plane) => plane.face === face.id);
  const timber = bites(of("batten", "counter-batten", "rail", "backing"));
  const clad = bites(of("sheet", "board", "post"));
  const widths = face.joints
    .filter(({ kind }) => kind === "sheet joint" || kind === "course gap")
    .map(({ width }) => width);
  const least = (values: readonly number[], key: string): Message | undefined =>
    values.length === 0 ? undefined : message(key, { value: Math.min(...values) });
  const row = (point: HoldPoint, key: string, asked?: Message): HoldCheck => ({
    point,
    check: message(`drawing.check.${key}`),
    ...(asked && { asked }),
  });
  const weeks = project.site.weeksUncovered;
  return [
    row("H1", "laps"),
    row("H1", "holes", message("drawing.hold.count", { count: of("sleeve").length })),
    row("H1", "weeks", weeks === undefined ? undefined : message("drawing.hold.weeks", { weeks })),
    row("H2", "flashings", message("drawing.hold.count", { count: of("flashing").length })),
    row("H2", "dams"),
    row("H3", "plane", message("drawing.hold.plane")),
    row("H3", "screws", least(timber, "drawing.hold.bite")),
    row("H3", "misses"),
    row(
      "H4",
      "cavity",
      least(
        planes.map(({ cavity }) => cavity),
        "drawing.hold.cavity",
      ),
    ),
    row("H4", "mesh", message("drawing.hold.count", { count: of("closure").length })),
    row("H4", "fire"),
    row("H5", "first-bay", least(widths, "drawing.hold.joint")),
    row("H5", "points", least(clad, "drawing.hold.bite")),
    row("H6", "whole"),
    row("H6", "labels"),
  ];
}

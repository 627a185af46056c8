/** Checklists of the hold points of each face: what is looked at, what the drawings ask, and room to sign. */
import { type TableColumn, tableScenes } from "../../../scene/table.ts";
import { heading } from "../../../scene/views/extent.ts";
import type { FaceLayout } from "../../../setout/facade.ts";
import { type Message, message } from "../../../text/message.ts";
import type { Drawable, Drawing, KindFacts } from "../facts.ts";

interface CheckRow {
  readonly point: string;
  readonly check: Message;
  readonly asked?: Message;
}

export function holdPointSheets({ design, room }: KindFacts): Drawing[] {
  const type = message("drawing.document-type.hold-points");
  const blank = (key: string): TableColumn<CheckRow> => ({
    head: message(key),
    cell: () => undefined,
    wrap: 30,
  });
  return design.facade.faces.flatMap((face): Drawing[] => {
    const scenes = tableScenes({
      id: `hold-points-${face.id}`,
      title: message("drawing.title.hold-points", { face: heading(face.id) }),
      room,
      rows: checks(face, design),
      columns: [
        { head: "", cell: ({ point }) => point, bold: true },
        { head: message("drawing.column.check"), cell: ({ check }) => check, wrap: 130 },
        { head: message("drawing.column.asked"), cell: ({ asked }) => asked },
        { head: message("drawing.column.measured"), cell: () => message("drawing.hold.blank") },
        { head: message("drawing.column.seen"), cell: () => "tick box" },
        { ...blank("drawing.column.signed"), cell: () => message("drawing.hold.blank") },
      ],
    });
    return [{ name: `hold-points-${face.id}`, type, scenes, face: face.id }];
  });
}

/** What the hold points look at (common practice), with the figures that this face asks for. */
function checks(face: FaceLayout, { facade, project }: Drawable): CheckRow[] {
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
  const row = (point: string, key: string, asked?: Message): CheckRow => ({
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

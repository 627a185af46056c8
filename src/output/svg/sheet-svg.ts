/** A sheet as an SVG document at full size. */
import { drawList } from "../../scene/draw-list.ts";
import type { Sheet } from "../../scene/sheet.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import { layers } from "./marks.ts";
import { escapeXml } from "./markup.ts";
import { type SvgOptions, svgDocument } from "./scene-svg.ts";

export function renderSheetSvg(sheet: Sheet, { reader, theme }: SvgOptions): string {
  const { width, height, name } = sheet.size;
  const views = sheet.viewports.map(({ scene, at }) => {
    const marks = drawList(scene, reader);
    const { x, y } = scene.bounds;
    const to = [at[0], height - at[1]] as const;
    const body = layers(marks, { scale: scene.scale, from: [x[0], y[0]], to });
    return `<g data-view="${escapeXml(scene.id)}" aria-label="${escapeXml(say(scene.title, reader))}">\n${body}\n</g>`;
  });
  const frame = layers(drawList(sheet.frame, reader), { scale: 1, from: [0, 0], to: [0, height] });
  return svgDocument({
    id: sheet.id,
    width,
    height,
    title: say(sheet.title, reader),
    description: say(message("drawing.about-sheet", { paper: name }), reader),
    body: [...views, frame].join("\n"),
    language: reader.language,
    theme,
  });
}

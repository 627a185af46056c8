/** A scene as an SVG document in millimetres. Pure: the same scene and reader give the same text. */
import { drawList } from "../../scene/draw-list.ts";
import type { Scene } from "../../scene/model.ts";
import { message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import type { Theme } from "../palettes.ts";
import { layers } from "./marks.ts";
import { escapeXml, number } from "./markup.ts";
import { styleSheet } from "./themes.ts";

export interface SvgOptions {
  readonly reader: Reader;
  readonly theme: Theme;
}

/**
 * The document is as large as the scene's bounds at its scale (width and height in mm) and can be scaled by CSS. Every
 * element of a piece, opening or line carries `data-of`; lines, fills and inks are classes (`line-cut`, `fill-board`,
 * `ink-chalk`), and colours custom properties (`--drawing-board`).
 */
export function renderSceneSvg(scene: Scene, { reader, theme }: SvgOptions): string {
  const { bounds, scale } = scene;
  const width = (bounds.x[1] - bounds.x[0]) * scale;
  const height = (bounds.y[1] - bounds.y[0]) * scale;
  const placement = { scale, from: [bounds.x[0], bounds.y[1]] as const, to: [0, 0] as const };
  return svgDocument({
    id: scene.id,
    width,
    height,
    title: say(scene.title, reader),
    description: say(message("drawing.about-scale", { scale: 1 / scale }), reader),
    body: layers(drawList(scene, reader), placement),
    language: reader.language,
    theme,
  });
}

export function svgDocument({
  id,
  width,
  height,
  title,
  description,
  body,
  language,
  theme,
}: {
  id: string;
  width: number;
  height: number;
  title: string;
  description: string;
  body: string;
  language: string;
  theme: Theme;
}): string {
  const [w, h] = [number(width), number(height)];
  return `<svg xmlns="http://www.w3.org/2000/svg" id="${escapeXml(id)}" class="drawing drawing-${theme}" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}" role="img" lang="${language}" aria-label="${escapeXml(title)}">
<title>${escapeXml(title)}</title>
<desc>${escapeXml(description)}</desc>
<style>
${styleSheet(theme)}
</style>
<rect class="fill-paper" width="${w}" height="${h}"/>
${body}
</svg>
`;
}

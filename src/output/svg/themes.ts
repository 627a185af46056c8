/**
 * How drawings look as SVG. The page may set the custom properties itself (`--drawing-paper` …); a file that stands alone falls
 * back on the values of its palette.
 */
import { dashes, type InkRole, LINE_STYLES, LINE_WIDTHS, type LineRole } from "../../scene/roles.ts";
import { type ColourName, PALETTES, type Theme } from "../palettes.ts";

const FONT = `"Atkinson Hyperlegible Next","DejaVu Sans",Verdana,sans-serif`;

/** The name of a colour's custom property. */
function property(name: ColourName): string {
  return `--drawing-${name}`;
}

/**
 * The style sheet of a drawing. Each colour stands twice: plain for readers that know no custom properties, then as a
 * property with the plain value to fall back on. Rules are bound to the theme's class, so that drawings of several
 * themes may share a page.
 */
export function styleSheet(theme: Theme): string {
  const palette = PALETTES[theme];
  const colour = (what: "fill" | "stroke", name: ColourName): string =>
    `${what}:${palette[name]};${what}:var(${property(name)},${palette[name]})`;
  const rule = (name: string, body: string): string => `.drawing-${theme} .${name}{${body}}`;
  const inks: readonly InkRole[] = ["ink", "second", "chalk", "red", "on-board"];
  return [
    rule("line", "fill:none;stroke-linejoin:round;stroke-linecap:butt"),
    rule("text", `stroke:none;font-family:${FONT};font-variant-numeric:tabular-nums;white-space:pre`),
    rule("bold", "font-weight:600"),
    ...(Object.keys(palette) as ColourName[]).map((name) => rule(`fill-${name}`, colour("fill", name))),
    ...(Object.keys(LINE_STYLES) as LineRole[]).map((role) => {
      const style = LINE_STYLES[role];
      const pattern = dashes(style);
      const dash = pattern.length === 0 ? "" : `;stroke-dasharray:${pattern.map(short).join(" ")}`;
      return rule(
        `line-${role}`,
        `${colour("stroke", style.ink)};stroke-width:${LINE_WIDTHS[style.width]}${dash}`,
      );
    }),
    ...inks.map((name) => rule(`ink-${name}`, colour("fill", name))),
  ].join("\n");
}

function short(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

/**
 * The inks and lines of the renderer, given to the page as style sheets made in the program: the page's policy allows no
 * styles written into the markup, and one list of colours serves screen and paper.
 */
import { type ColourName, PALETTES, type Theme } from "../../output/palettes.ts";
import { styleSheet } from "../../output/svg/themes.ts";

/** The renderer's own sheet names every colour as `var(--drawing-<name>,#<value>)`. */
function inks(theme: Theme): string {
  const named = styleSheet(theme).matchAll(/var\((--drawing-[a-z-]+),(#[0-9a-f]{6})\)/g);
  return [...new Set([...named].map(([, name, value]) => `${name}:${value}`))].join(";");
}

/** Dots of a drawing in motion: round ends of lines without length. */
function dots(): string {
  const names = Object.keys(PALETTES.light) as ColourName[];
  return names
    .map((name) => `.dots-${name}{fill:none;stroke:var(--drawing-${name});stroke-linecap:round}`)
    .join("\n");
}

export function adoptInks(): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(`
:root{${inks("light")}}
@media (prefers-color-scheme:dark){:root:not([data-light="day"]){${inks("dark")}}}
:root[data-light="night"]{${inks("dark")}}
@media print{:root,:root[data-light]{${inks("print")}}}
${styleSheet("light")}
${dots()}`);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}

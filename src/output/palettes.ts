/** Inks and papers of drawings on a light screen, on a dark one and in print. */
import type { FillRole, InkRole } from "../scene/roles.ts";

export type Theme = "light" | "dark" | "print";

/** Names of the colours; each is the custom property `--drawing-<name>`. */
export type ColourName = FillRole | InkRole;

type Palette = Readonly<Record<ColourName, string>>;

/** `use-low` to `use-full`: how far wind uses a part, in chalk; `use-over`: it gives. All carry ink. */
const LIGHT: Palette = {
  paper: "#fbfaf5",
  ink: "#1d2a32",
  second: "#5d6b72",
  chalk: "#2b6ca3",
  red: "#c2402a",
  "on-board": "#fbfaf5",
  board: "#57504a",
  "board-alt": "#6a6158",
  sheet: "#d8dbd6",
  membrane: "#0f1214",
  timber: "#e6d9bd",
  batten: "#cdb88f",
  insulation: "#efe6d0",
  sheathing: "#d9c49a",
  glass: "#e8eef3",
  metal: "#8b969b",
  ground: "#d9d3c4",
  "use-low": "#eef0ea",
  "use-fair": "#d3dfe6",
  "use-near": "#a9c4d8",
  "use-full": "#78a3c6",
  "use-over": "#e7a99b",
};

/** The same sheet at night: materials darkened so that ink reads on them as it does by day. */
const DARK: Palette = {
  paper: "#14191c",
  ink: "#e9e6dc",
  second: "#98a4a8",
  chalk: "#7fb2dc",
  red: "#f0806a",
  "on-board": "#f4f1e8",
  board: "#57504a",
  "board-alt": "#6a6158",
  sheet: "#3c4549",
  membrane: "#07090a",
  timber: "#5f563f",
  batten: "#75653f",
  insulation: "#4a4536",
  sheathing: "#695a3a",
  glass: "#223038",
  metal: "#5b676d",
  ground: "#2a2d29",
  "use-low": "#1f2629",
  "use-fair": "#24353f",
  "use-near": "#2a4a60",
  "use-full": "#2f5f83",
  "use-over": "#8a3325",
};

/** White paper, little toner: boards pale enough to carry their marks in ink. */
const PRINT: Palette = {
  paper: "#ffffff",
  ink: "#000000",
  second: "#45494c",
  chalk: "#1f5a8f",
  red: "#b02a16",
  "on-board": "#000000",
  board: "#cbc5bd",
  "board-alt": "#dfdad3",
  sheet: "#f0f1ee",
  membrane: "#2b2f31",
  timber: "#f3ebd8",
  batten: "#e3d4b2",
  insulation: "#f8f3e6",
  sheathing: "#e9dcbf",
  glass: "#ffffff",
  metal: "#a9b0b4",
  ground: "#e8e4da",
  "use-low": "#ffffff",
  "use-fair": "#e2eaf0",
  "use-near": "#bcd0df",
  "use-full": "#93b4cf",
  "use-over": "#efb4a8",
};

export const PALETTES: Readonly<Record<Theme, Palette>> = { light: LIGHT, dark: DARK, print: PRINT };

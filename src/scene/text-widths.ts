/**
 * Advance widths for laying out text, in thousandths of the font size. Each is the greater of two open families, rounded
 * up to 20: Atkinson Hyperlegible Next 2 (regular and semi-bold) as the screen shows it, and DejaVu Sans 2.37 (regular
 * and bold), a usual fallback with every sign that drawings need. Source: the `hmtx` tables of their font files. What
 * fits by this table fits in either family.
 */
const REGULAR: readonly (readonly [width: number, characters: string])[] = [
  [280, "'ijlìíîï"],
  [320, " \u00a0,.·’‘"],
  [340, ":;|¦"],
  [360, "f"],
  [380, "-"],
  [400, "()/I[\\]tÌÍÎÏ"],
  [420, "!r¡²³¹"],
  [460, '"'],
  [480, "ªº"],
  [500, "*_`¨¯°´¸"],
  [520, "J–“”"],
  [540, "?sz§¿"],
  [560, "Lcç"],
  [580, "Fk"],
  [600, "vxyýÿλ"],
  [620, "PTYaeo«»ÝÞàáâãäåèéêëðòóôõöø⌀"],
  [640, "$123456789ESbdghnpqu{}¢£¤¥µ¶ÈÉÊËßñùúûüþΣ"],
  [660, "0K"],
  [700, "ABCRVXZÀÁÂÃÄÅÇ"],
  [740, "UÙÚÛÜ"],
  [760, "HNÑ"],
  [780, "&DGÐ▲◇"],
  [800, "OQÒÓÔÕÖØ"],
  [820, "w"],
  [840, "#+<=>^~¬±×÷≤≥→✓−"],
  [880, "M◌"],
  [960, "%■"],
  [980, "m¼½¾Æ⅛"],
  [1000, "@W©®æ—…"],
  [1040, "œ"],
  [1080, "Œ"],
];

const BOLD: readonly (readonly [width: number, characters: string])[] = [
  [320, "'"],
  [360, " \u00a0ijlìíîï"],
  [380, ",.|¦·’‘"],
  [400, ":;"],
  [420, "-IÌÍÎÏ"],
  [440, "/\\f²³¹"],
  [460, "!()[]¡"],
  [480, "t"],
  [500, "_`r¨¯°´¸"],
  [520, "–"],
  [540, '"*'],
  [560, "J§"],
  [580, "ªº"],
  [600, "?csz¿ç"],
  [620, "⌀"],
  [640, "L¤¶λ"],
  [660, "vxy«»ýÿ“”"],
  [680, "aekàáâãäåèéêë"],
  [700, "$0123456789EFTo¢£¥ÈÉÊËðòóôõöøΣ"],
  [720, "bdghnpqu{}ßñùúûüþ"],
  [740, "CPSYZµÇÝÞ"],
  [780, "ABKRVXÀÁÂÃÄÅ▲◇"],
  [820, "UÙÚÛÜ"],
  [840, "#+<=>DGHN^~¬±ÐÑ×÷≤≥→✓−"],
  [860, "OQÒÓÔÕÖØ"],
  [880, "&◌"],
  [940, "w"],
  [960, "■"],
  [1000, "@M©®—…"],
  [1020, "%"],
  [1040, "¼½¾⅛"],
  [1060, "mæ"],
  [1100, "Æœ"],
  [1120, "W"],
  [1180, "Œ"],
];

/** For a character that neither family has. */
const UNKNOWN = 1000;

/** Height of capitals over font size; between the two families (0.668 and 0.729, their `OS/2` tables). */
export const CAPITAL_HEIGHT = 0.7;

function byCharacter(table: typeof REGULAR): ReadonlyMap<string, number> {
  return new Map(table.flatMap(([width, characters]) => [...characters].map((one) => [one, width] as const)));
}

const WIDTHS = { regular: byCharacter(REGULAR), bold: byCharacter(BOLD) };

/**
 * Length of a text on paper (mm).
 * @param height height of capitals (mm)
 */
export function textWidth({
  text,
  height,
  weight,
}: {
  text: string;
  height: number;
  weight: "regular" | "bold";
}): number {
  const widths = WIDTHS[weight];
  let thousandths = 0;
  for (const character of text) thousandths += widths.get(character) ?? UNKNOWN;
  return (thousandths / 1000) * (height / CAPITAL_HEIGHT);
}

/** Breaks a text at its spaces into lines no longer than `width`; a longer word keeps its line to itself. */
export function wrapText({
  text,
  width,
  height,
  weight,
}: {
  text: string;
  width: number;
  height: number;
  weight: "regular" | "bold";
}): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && textWidth({ text: longer, height, weight }) <= width) {
      lines[lines.length - 1] = longer;
    } else lines.push(word);
  }
  return lines;
}

/** Texts of a drawing in a PDF, as real text in embedded fonts. */
import type PDFDocument from "pdfkit";
import type { TextShape } from "../../scene/shapes.ts";
import { CAPITAL_HEIGHT } from "../../scene/text-widths.ts";

/** Font files: the family that the screen shows, and one that has every sign that drawings need. */
export interface PdfFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
  readonly signs: Uint8Array;
  readonly boldSigns: Uint8Array;
}

type Weight = TextShape["weight"];

const SIGNS = { regular: "signs", bold: "boldSigns" } as const;

export interface TextWriter {
  /** Writes on the page at hand, in millimetres with y down, in the colour that is set. */
  write(mark: TextShape, at: readonly [x: number, y: number]): void;
  /** Lets go of the layouts of words that were written. */
  forget(): void;
}

export function textWriter(document: PDFDocument, fonts: PdfFonts): TextWriter {
  for (const [name, bytes] of Object.entries(fonts)) document.registerFont(name, bytes);
  const known = new Map<string, boolean>();
  const has = (weight: Weight, sign: string): boolean => {
    const key = `${weight} ${sign}`;
    const found =
      known.get(key) ?? document.font(weight)._font.font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0);
    known.set(key, found);
    return found;
  };
  /** Stretches of one font. */
  const runsOf = (text: string, weight: Weight): { font: keyof PdfFonts; text: string }[] => {
    const runs: { font: keyof PdfFonts; text: string }[] = [];
    for (const sign of text) {
      const font = has(weight, sign) ? weight : SIGNS[weight];
      const last = runs.at(-1);
      if (last?.font === font) last.text += sign;
      else runs.push({ font, text: sign });
    }
    return runs;
  };
  return {
    forget() {
      for (const name of Object.keys(fonts)) document.font(name)._font.layoutCache = Object.create(null);
    },
    write({ text, height, weight, anchor, angleDeg, link }, [x, y]) {
      document.fontSize(height / CAPITAL_HEIGHT);
      const runs = runsOf(text, weight).map((run) => ({
        ...run,
        width: document.font(run.font).widthOfString(run.text),
      }));
      const long = runs.reduce((sum, { width }) => sum + width, 0);
      let at = x - (anchor === "start" ? 0 : anchor === "middle" ? long / 2 : long);
      if (angleDeg !== 0) document.save().rotate(-angleDeg, { origin: [x, y] });
      if (link !== undefined) document.goTo(at, y - height * 1.4, long, height * 1.8, link);
      for (const run of runs) {
        document.font(run.font).text(run.text, at, y, { lineBreak: false, baseline: "alphabetic" });
        at += run.width;
      }
      if (angleDeg !== 0) document.restore();
    },
  };
}

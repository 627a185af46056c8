/** The part of pdfkit that output/pdf uses: its own types would bring Node's with them. */
declare module "pdfkit" {
  interface Reference {
    data: Record<string, unknown>;
    end(): void;
  }
  interface Page {
    /** All that the page leads to: its contents, what they use and its links. */
    readonly dictionary: Reference;
  }
  export default class PDFDocument {
    constructor(options: {
      autoFirstPage: boolean;
      compress: boolean;
      /** None: else one of the standard fonts is asked for. */
      font: null;
      info: Record<string, unknown>;
      lang: string;
      displayTitle: boolean;
      pdfVersion: "1.7";
    });
    readonly info: Record<string, unknown>;
    /** Writes the metadata stream, with the time of writing in it. */
    endMetadata: () => void;
    readonly outline: { addItem(title: string): unknown };
    readonly _root: Reference;
    /** The latest; those before it are written when it is added. */
    readonly page: Page | null;
    readonly _font: {
      readonly font: { hasGlyphForCodePoint(codePoint: number): boolean };
      /** Of every word that was laid out, for as long as the document is written. */
      layoutCache: object;
    };
    ref(data: Record<string, unknown>): Reference;
    registerFont(name: string, bytes: Uint8Array): this;
    font(name: string): this;
    fontSize(size: number): this;
    addPage(options: { size: [number, number]; margin: number }): this;
    save(): this;
    restore(): this;
    scale(by: number): this;
    rotate(angleDeg: number, options: { origin: [number, number] }): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    closePath(): this;
    circle(x: number, y: number, radius: number): this;
    /** Of SVG. */
    path(data: string): this;
    lineWidth(width: number): this;
    lineJoin(join: "round"): this;
    dash(length: number | readonly number[], options?: { space: number }): this;
    undash(): this;
    fillColor(colour: string): this;
    strokeColor(colour: string): this;
    fill(rule?: "even-odd"): this;
    stroke(): this;
    fillAndStroke(rule?: "even-odd"): this;
    /** A link to a named destination. */
    goTo(x: number, y: number, width: number, height: number, name: string): this;
    addNamedDestination(name: string, how: "Fit"): this;
    widthOfString(text: string): number;
    text(text: string, x: number, y: number, options: { lineBreak: false; baseline: "alphabetic" }): this;
    /** Takes each piece of the file as soon as it is written, the first while the document is made; null at its end. */
    push(chunk: Uint8Array | null): boolean;
    end(): void;
  }
}

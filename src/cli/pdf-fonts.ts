/** The font files that PDFs are written with, of the installed packages. */
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { PdfFonts } from "../output/pdf/text.ts";

const { resolve } = createRequire(import.meta.url);

export async function readPdfFonts(): Promise<PdfFonts> {
  const page = (weight: number): Promise<Uint8Array> =>
    readFile(
      resolve(
        `@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-${weight}-normal.woff`,
      ),
    );
  const signs = (name: string): Promise<Uint8Array> => readFile(resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
  const [regular, bold, plain, strong] = await Promise.all([
    page(400),
    page(600),
    signs("DejaVuSans"),
    signs("DejaVuSans-Bold"),
  ]);
  return { regular, bold, signs: plain, boldSigns: strong };
}

/** The fonts that PDFs are written with, for tests. */
import { readPdfFonts } from "../../src/cli/pdf-fonts.ts";

export const PDF_FONTS = await readPdfFonts();

/** Marks of a draw list on the page of a PDF, in millimetres of paper with y down. */
import type PDFDocument from "pdfkit";
import { dashes, LINE_STYLES, LINE_WIDTHS, type LineRole } from "../../scene/roles.ts";
import type { Mark, Paint } from "../../scene/shapes.ts";
import { PALETTES } from "../palettes.ts";
import { type Placement, placed, placedArc } from "../placement.ts";
import type { TextWriter } from "./text.ts";

const INKS = PALETTES.print;

export function paint(
  marks: readonly Mark[],
  { document, texts, placement }: { document: PDFDocument; texts: TextWriter; placement: Placement },
): void {
  for (const mark of marks) {
    switch (mark.shape) {
      case "path":
        for (const part of mark.parts) {
          part.forEach((point, i) => {
            const [x, y] = placed(point, placement);
            if (i === 0) document.moveTo(x, y);
            else document.lineTo(x, y);
          });
          if (mark.closed) document.closePath();
        }
        finish(document, mark, mark.closed && mark.parts.length > 1 ? "even-odd" : undefined);
        break;
      case "circle": {
        const [x, y] = placed(mark.centre, placement);
        document.circle(x, y, mark.radius * placement.scale);
        finish(document, mark);
        break;
      }
      case "arc": {
        const { from, to, radius, large, sweep } = placedArc(mark, placement);
        document.path(`M${from.join(" ")}A${radius} ${radius} 0 ${large} ${sweep} ${to.join(" ")}`);
        finish(document, mark);
        break;
      }
      case "text":
        document.fillColor(INKS[mark.ink]);
        texts.write(mark, placed(mark.at, placement));
    }
  }
}

function finish(document: PDFDocument, { line, fill }: Paint, rule?: "even-odd"): void {
  if (fill) document.fillColor(INKS[fill]);
  if (line) pen(document, line);
  if (fill && line) document.fillAndStroke(rule);
  else if (fill) document.fill(rule);
  else document.stroke();
}

function pen(document: PDFDocument, role: LineRole): void {
  const style = LINE_STYLES[role];
  const pattern = dashes(style);
  document.strokeColor(INKS[style.ink]).lineWidth(LINE_WIDTHS[style.width]);
  if (pattern.length > 0) document.dash(pattern);
  else document.undash();
}

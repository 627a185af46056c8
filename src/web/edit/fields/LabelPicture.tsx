import { pastPaper } from "../../../project/label-sheet.ts";
import type { LabelSheet } from "../../../project/schema/sheets.ts";
import { snap } from "../../../units/length.ts";
import { PAPER_SIZES } from "../../../units/paper-sizes.ts";
import { useWords } from "../../words.ts";

/** The paper with its labels, true to their measures; a label that reaches past it is drawn broken. */
export function LabelPicture({ sheet }: { sheet: LabelSheet }) {
  const { w } = useWords();
  const { columns, rows, width, height, left, top, gapX, gapY } = sheet;
  const paper = PAPER_SIZES[sheet.paper];
  const past = pastPaper(sheet);
  const at = Array.from({ length: columns * rows }, (_, i) => ({
    i,
    x: left + (i % columns) * (width + gapX),
    y: top + Math.floor(i / columns) * (height + gapY),
  }));
  return (
    <svg
      className="label-picture"
      viewBox={`-2 -2 ${paper.width + past.right + 4} ${paper.height + past.below + 4}`}
      preserveAspectRatio="xMinYMin"
      role="img"
      aria-label={w("page.labels.picture", { columns, rows, paper: paper.name })}
    >
      <rect className="label-paper" width={paper.width} height={paper.height} />
      {at.map(({ i, x, y }) => (
        <rect
          key={i}
          className={
            snap(x + width) > paper.width || snap(y + height) > paper.height ? "label-cut" : "label-whole"
          }
          {...{ x, y, width, height }}
        />
      ))}
    </svg>
  );
}

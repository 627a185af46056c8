/** Sheets of labels, one label a piece, on paper told by its measures. */
import type { LabelSheet } from "../../project/schema/sheets.ts";
import { type LabelFacts, labelItems } from "../../scene/views/label.ts";
import type { Piece } from "../../setout/facade.ts";
import { finishBatches } from "../../takeoff/finish-batches.ts";
import { pieceSum } from "../../takeoff/issue-state.ts";
import type { BattenLine, PieceLine } from "../../takeoff/model.ts";
import { type Message, message } from "../../text/message.ts";
import type { Reader } from "../../text/say.ts";
import { PAPER_SIZES } from "../../units/paper-sizes.ts";
import { mapped } from "../pieces.ts";
import { lengthCells } from "./cells.ts";
import type { DrawingFacts } from "./facts.ts";
import type { PrintPage } from "./rod-strips.ts";

/** Two columns of seven, as sold for A4 and letter paper (common practice). */
const USUAL: Readonly<Record<LabelSheet["paper"], LabelSheet>> = {
  A4: { paper: "A4", columns: 2, rows: 7, width: 99, height: 38, left: 4.5, top: 15.5, gapX: 3, gapY: 0 },
  letter: {
    paper: "letter",
    columns: 2,
    rows: 7,
    width: 101.6,
    height: 33.8,
    left: 4,
    top: 21,
    gapX: 4.7,
    gapY: 0,
  },
};

export function usualLabels({ units }: Pick<Reader, "units">): LabelSheet {
  return usualLabelsOn(units === "feet-inch" ? "letter" : "A4");
}

export function usualLabelsOn(paper: LabelSheet["paper"]): LabelSheet {
  return USUAL[paper];
}

/** Sheets of labels, counted before they are drawn. */
export interface LabelPages {
  readonly count: number;
  /** All that they are drawn from, as text. */
  drawnFrom(): Iterable<string>;
  /** Each is drawn when its turn comes: a building's labels are many, and their codes are large. */
  pages(): Generator<PrintPage>;
}

export function labelPages(facts: DrawingFacts): LabelPages {
  const sheet = facts.design.project.sheets?.labels ?? usualLabels(facts.reader);
  const labels = labelsOf(facts);
  const aPage = sheet.columns * sheet.rows;
  const count = Math.ceil(labels.count / aPage);
  return {
    count,
    *drawnFrom() {
      yield JSON.stringify(sheet);
      yield* mapped(labels.some(), (one) => JSON.stringify(one));
    },
    *pages() {
      for (let page = 0; page < count; page++) {
        const own = labels.some(page * aPage, (page + 1) * aPage);
        yield labelPage([...own], sheet, { page: page + 1, pages: count });
      }
    },
  };
}

function labelPage(
  labels: readonly LabelFacts[],
  sheet: LabelSheet,
  place: { readonly page: number; readonly pages: number },
): PrintPage {
  const { width, height } = PAPER_SIZES[sheet.paper];
  const id = `labels-${place.page}`;
  return {
    name: id,
    label: id,
    drawing: {
      id,
      title: message("drawing.title.labels", place),
      scale: 1,
      toScale: false,
      bounds: { x: [0, width], y: [0, height] },
      items: labels.flatMap((one, i) => {
        const [row, column] = [Math.floor(i / sheet.columns), i % sheet.columns];
        const x = sheet.left + column * (sheet.width + sheet.gapX);
        const y = height - sheet.top - row * (sheet.height + sheet.gapY);
        return labelItems(one, { at: [x, y], width: sheet.width, height: sheet.height });
      }),
    },
  };
}

interface Labels {
  readonly count: number;
  /** As `slice`, each made when its turn comes. */
  some(from?: number, to?: number): Iterable<LabelFacts>;
}

/** Cladding and what is bent for it, then battens, in the order of their schedules. */
export function labelsOf({ design: { facade, project }, takeoff, reader }: DrawingFacts): Labels {
  if (!takeoff) return { count: 0, some: () => [] };
  const pieces = new Map(facade.faces.flatMap((face) => face.pieces.map((piece) => [piece.mark, piece])));
  const batches = new Map(
    finishBatches(takeoff, facade).flatMap((batch) => batch.pieces.map(({ mark }) => [mark, batch.code])),
  );
  const revision = project.issued?.revisions.at(-1)?.revision ?? "0";
  const siteAddress = project.sheets?.siteAddress;
  const lines = [...takeoff.pieces, ...takeoff.battens].flatMap((line) => {
    const piece = pieces.get(line.mark);
    return piece ? [{ line, piece }] : [];
  });
  return {
    count: lines.length,
    some: (from, to) =>
      mapped(lines.slice(from, to), ({ line, piece }) => {
        const code = labelCode(piece, { revision, siteAddress });
        return labelOf(line, { piece, batch: batches.get(line.mark), code, reader });
      }),
  };
}

/**
 * What a label's code says: mark, revision and a sum over what is drawn of the piece; where phones reach the workbench, as an
 * address whose fragment, which no server hears of, opens the piece.
 */
export function labelCode(
  piece: Piece,
  { revision, siteAddress }: { readonly revision: string; readonly siteAddress: string | undefined },
): string {
  const parts = [piece.mark, revision, pieceSum(piece)];
  if (siteAddress === undefined) return parts.join(" ");
  return `${siteAddress.replace(/\/$/, "")}/site.html#piece/${parts.map(encodeURIComponent).join("/")}`;
}

function labelOf(
  line: PieceLine | BattenLine,
  { piece, batch, code, reader }: { piece: Piece; batch: string | undefined; code: string; reader: Reader },
): LabelFacts {
  const cells = lengthCells(reader);
  const lot = "lot" in line ? line.lot : undefined;
  const screws = new Map<string, number>();
  for (const { screw } of piece.fixings) screws.set(screw, (screws.get(screw) ?? 0) + 1);
  const removal = [...screws].map(([screw, count]) => `${count} × ${screw}`).join(", ");
  const lines: (Message | string)[] = [
    message("drawing.label.size", {
      length: cells.cut(line.length),
      width: cells.rip(line.width),
      thickness: cells.size(line.thickness),
    }),
    message("drawing.label.place", { kind: line.kind, face: line.face, mass: line.massKg }),
    ...(lot === undefined ? [] : [message("drawing.label.lot", { lot })]),
    ...(batch === undefined ? [] : [message("drawing.label.batch", { batch })]),
    ...(removal === "" ? [] : [message("drawing.label.screws", { screws: removal })]),
    message("drawing.label.face"),
  ];
  return { mark: line.mark, lines, code };
}

/** Which paper drawings go on, and the sheets that they become. */

import type { Project } from "../../project/schema/project.ts";
import type { Scene, SceneText } from "../../scene/model.ts";
import {
  arrange,
  CAPTION_ROOM,
  drawingArea,
  fittingPaper,
  makeSheet,
  type Sheet,
} from "../../scene/sheet.ts";
import type { TableRoom } from "../../scene/table.ts";
import { message } from "../../text/message.ts";
import type { Reader } from "../../text/say.ts";
import type { PaperName, PaperSize } from "../../units/paper-sizes.ts";
import { PAPER_SIZES } from "../../units/paper-sizes.ts";
import type { Drawing, DrawingPaper, DrawingPart, NumberedDrawing } from "./facts.ts";

const METRIC: readonly PaperName[] = ["A4", "A3", "A2", "A1", "A0"];
const NORTH_AMERICAN: readonly PaperName[] = ["letter", "tabloid", "17 × 22", "22 × 34", "24 × 36"];

type Waiver = NonNullable<Project["waivers"]>[number];

type Asked = Pick<Reader, "units"> & { readonly paper?: PaperName | undefined };

/** What sheets are printed on unless they are too large for it: as the project says, else A3 or what North America has for it. */
export function usualPaper({ units, paper }: Asked): PaperName {
  return paper ?? (units === "feet-inch" ? "tabloid" : "A3");
}

/** The usual paper, then larger ones of its series, then of the other. */
function papersFrom(asked: Asked): PaperName[] {
  const usual = usualPaper(asked);
  const own = NORTH_AMERICAN.includes(usual) ? NORTH_AMERICAN : METRIC;
  const series = own.slice(own.indexOf(usual));
  return own === METRIC ? series : [...series, "A1", "A0"];
}

/** What a caption leaves of the drawing area. */
export function tableRoom(asked: Asked): TableRoom {
  const { x, y } = drawingArea(PAPER_SIZES[usualPaper(asked)]);
  // A hair less than the area, so that rounding never pushes a table off its sheet.
  return { width: x[1] - x[0] - 0.01, height: y[1] - y[0] - CAPTION_ROOM - 0.01 };
}

/** Tried one after another; smaller than the last, screws and layers run together. */
const SMALLER: readonly number[] = [1 / 25, 1 / 50, 1 / 100];

/** What a view's figures and names take is only known when it is drawn: smaller where it then leaves the usual paper. */
export function fittingView(
  paper: PaperName,
  draw: (scale: { scale?: number }) => Scene | undefined,
): Scene | undefined {
  const first = draw({});
  if (!first || fittingPaper([first], [paper])) return first;
  const others = SMALLER.filter((scale) => scale < first.scale).map((scale) => draw({ scale }));
  return others.find((scene) => scene && fittingPaper([scene], [paper])) ?? first;
}

/** Tried one after another from the last scale up (ISO 5455, with 1 : 25, common practice). */
const LARGER: readonly number[] = [500, 200, 100, 50, 25, 20, 10, 5].map((times) => 1 / times);

/**
 * As `fittingView`, at the largest scale at which the view fits, and at which what stood beside it on the paper still does: how much
 * figures and names take beside a view is only known when it is drawn.
 */
export function largestView(
  paper: PaperName,
  draw: (scale: { scale?: number }) => Scene | undefined,
  beside: readonly Scene[] = [],
): Scene | undefined {
  const first = fittingView(paper, draw);
  if (!first) return undefined;
  const kept = fittingPaper([first, ...beside], [paper]) ? beside : [];
  let best = first;
  for (const scale of LARGER.filter((one) => one > first.scale)) {
    const larger = draw({ scale });
    if (!larger || !fittingPaper([larger, ...kept], [paper])) break;
    best = larger;
  }
  return best;
}

/** What does not stand together on the usual paper goes on as many sheets as it takes; what is too large by itself stays whole. */
export function* onUsualPaper(drawing: Drawing, asked: Asked): Generator<DrawingPart> {
  const papers = [drawing.paper ?? usualPaper(asked)];
  let scenes: Scene[] = [];
  let sheets = 0;
  const part = (): DrawingPart => {
    sheets += 1;
    const name = sheets === 1 ? drawing.name : `${drawing.name}-${sheets}`;
    return { ...drawing, name, scenes };
  };
  for (const scene of drawing.scenes) {
    if (scenes.length > 0 && !fittingPaper([...scenes, scene], papers)) {
      yield part();
      scenes = [];
    }
    scenes.push(scene);
  }
  if (scenes.length > 0) yield part();
}

/** The first paper that takes the drawing, from the usual one on; else the bare drawing. */
export interface OnPaper
  extends Asked,
    Pick<NumberedDrawing, "name" | "kind" | "type" | "scenes" | "number" | "title"> {
  readonly label: string;
  /** How many sheets the set has. */
  readonly of: number;
  readonly project: string;
  readonly revision: SceneText;
  readonly date: string;
  readonly waivers: readonly Waiver[];
}

/** Undefined where there is nothing to draw. */
export function onPaper(from: OnPaper): DrawingPaper | undefined {
  const { name, kind, title, label } = from;
  const drawing = sheetOf(from);
  return drawing && { name, kind, title, label, drawing };
}

function sheetOf({
  name,
  type,
  scenes,
  number,
  title,
  units,
  paper,
  label,
  of,
  project,
  revision,
  date,
  waivers,
}: OnPaper): Sheet | Scene | undefined {
  const size: PaperSize | undefined = fittingPaper(scenes, papersFrom({ units, paper }));
  const viewports = size && arrange(scenes, drawingArea(size));
  if (size === undefined || viewports === undefined) return scenes[0];
  return makeSheet({
    id: name,
    size,
    units,
    titleBlock: {
      owner: "",
      identification: label,
      project,
      title,
      documentType: type,
      creator: "",
      approvedBy: "",
      dateOfIssue: date,
      revision,
      sheet: { number, of },
    },
    viewports,
    cautions: [message("drawing.caution.codes"), message("drawing.caution.measure"), ...waiverTexts(waivers)],
  });
}

/** Someone answers for these: it is printed where the drawing is read. Many are counted, and stand in the findings. */
function waiverTexts(waivers: readonly Waiver[]): SceneText[] {
  if (waivers.length > 2) {
    const codes = [...new Set(waivers.map(({ code }) => code))];
    return [message("drawing.waivers", { count: waivers.length, codes })];
  }
  return waivers.map(({ code, where, who, when, why }) =>
    where === undefined
      ? message("drawing.waiver", { code, who, when, why })
      : message("drawing.waiver-at", { code, where, who, when, why }),
  );
}

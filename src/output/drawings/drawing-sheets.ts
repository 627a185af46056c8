/** The drawings of an issue: each view on a sheet with its frame, title block, cautions and waivers. */

import type { Finding } from "../../findings/finding.ts";
import { type Interval, intervalLength } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { ProofInput } from "../../proof/context.ts";
import type { Scene, SceneText } from "../../scene/model.ts";
import type { PaperName, PaperSize } from "../../scene/paper-sizes.ts";
import { arrange, drawingArea, fittingPaper, makeSheet, type Sheet } from "../../scene/sheet.ts";
import { battenElevation } from "../../scene/views/batten-elevation.ts";
import { developedElevation } from "../../scene/views/developed-elevation.ts";
import { faceExtent, heading } from "../../scene/views/extent.ts";
import { faceElevation } from "../../scene/views/face-elevation.ts";
import { verticalSection } from "../../scene/views/vertical-section.ts";
import type { Facade, FaceLayout, ZoneLayout } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import type { Reader } from "../../text/say.ts";
import { renderSceneSvg } from "../svg/scene-svg.ts";
import { renderSheetSvg } from "../svg/sheet-svg.ts";
import { lightSheets } from "./light-sheets.ts";

interface Drawing {
  readonly name: string;
  readonly type: Message;
  readonly scenes: readonly Scene[];
}

/** A design, as far as it is drawn. */
type Drawable = Pick<ProofInput, "project" | "facade" | "demands">;

export interface DrawingFacts {
  readonly plan?: unknown;
  readonly takeoff?: unknown;
  readonly design: Drawable;
  /** Everything found, cutting included; what has a place is shown there. */
  readonly findings: readonly Finding[];
  readonly reader: Reader;
}

/** A drawing on its paper, for any renderer. */
export interface DrawingPaper {
  /** Of its file, without what it ends in. */
  readonly name: string;
  readonly title: SceneText;
  /** Of the title block. */
  readonly label: string;
  /** A scene alone where it fits no paper. */
  readonly drawing: Sheet | Scene;
}

/** The same as an SVG document at full size. */
export interface DrawingSheet extends Pick<DrawingPaper, "name" | "title"> {
  readonly svg: string;
}

export function drawingSheets(facts: DrawingFacts): DrawingSheet[] {
  return drawingPapers(facts).map((paper) => drawingSheet(paper, facts.reader));
}

export function drawingSheet({ name, title, drawing }: DrawingPaper, reader: Reader): DrawingSheet {
  const options = { reader, theme: "print" } as const;
  return {
    name,
    title,
    svg: "viewports" in drawing ? renderSheetSvg(drawing, options) : renderSceneSvg(drawing, options),
  };
}

export function drawingPapers({ design, findings, reader }: DrawingFacts): DrawingPaper[] {
  const facade: Facade = { ...design.facade, findings };
  const all: Drawing[] = [
    {
      name: "developed-elevation",
      type: message("drawing.document-type.set-out"),
      scenes: developed(facade, { design, findings, reader }),
    },
    ...facade.faces.flatMap((face) => faceDrawings(facade, face, design)),
    ...lightSheets(design),
  ].flatMap((one) => onUsualPaper(one, reader));
  return all.flatMap((one, at): DrawingPaper[] => {
    const number = at + 1;
    const label = `${initials(design.project.title)}-${String(number).padStart(2, "0")}`;
    const drawing = onPaper(one, { design, reader, label, number, of: all.length });
    return drawing ? [{ name: one.name, title: one.scenes[0]?.title ?? one.name, label, drawing }] : [];
  });
}

/** The paper that a small firm prints on, in the series that goes with the reader's units. */
function usualPaper({ units }: Reader): readonly PaperName[] {
  return units === "feet-inch" ? ["letter", "tabloid"] : ["A4", "A3"];
}

/** What does not stand together on the usual paper goes on as many sheets as it takes; what is too large by itself stays whole. */
function onUsualPaper(drawing: Drawing, reader: Reader): Drawing[] {
  const papers = usualPaper(reader);
  const groups: Scene[][] = [];
  for (const scene of drawing.scenes) {
    const last = groups.at(-1);
    if (last && fittingPaper([...last, scene], papers)) last.push(scene);
    else groups.push([scene]);
  }
  return groups.map((scenes, at) => ({
    ...drawing,
    name: at === 0 ? drawing.name : `${drawing.name}-${at + 1}`,
    scenes,
  }));
}

/** Rows that the faces are parted into at most, so that they stand on the usual paper. */
const MOST_ROWS = 3;

/**
 * At the largest usual scale (ISO 5455; North American ones in feet and inches) at which the usual paper takes it, in as few rows
 * as will do; in one row on larger paper where none does.
 */
function developed(facade: Facade, { design: { project }, findings, reader }: DrawingFacts): Scene[] {
  const inFeet = reader.units === "feet-inch";
  const scales = inFeet ? [1 / 48, 1 / 96, 1 / 192] : [1 / 50, 1 / 100, 1 / 200];
  const drawn = (scale: number, rows: number): Scene[] =>
    inRows(facade.faces, rows).map((faces) =>
      developedElevation({ ...facade, faces }, project, { findings, scale }),
    );
  for (const scale of scales) {
    for (let rows = 1; rows <= MOST_ROWS; rows += 1) {
      const scenes = drawn(scale, rows);
      if (fittingPaper(scenes, usualPaper(reader))) return scenes;
    }
  }
  return drawn(scales[1] ?? 1, 1);
}

/** Faces in their order, in rows of about one length. */
function inRows(faces: readonly FaceLayout[], count: number): FaceLayout[][] {
  const longOf = (face: FaceLayout): number => intervalLength(faceExtent(face).x);
  const share = faces.reduce((sum, face) => sum + longOf(face), 0) / count;
  const rows: FaceLayout[][] = Array.from({ length: count }, () => []);
  let before = 0;
  for (const face of faces) {
    // By its middle: a face goes where most of it would lie.
    const row = Math.min(count - 1, Math.floor((before + longOf(face) / 2) / share));
    rows[row]?.push(face);
    before += longOf(face);
  }
  return rows.filter((row) => row.length > 0);
}

function faceDrawings(facade: Facade, face: FaceLayout, { project }: Drawable): Drawing[] {
  const elevation = faceElevation(facade, project, face.id);
  const battens = battenElevation(facade, project, face.id);
  const sections = face.zones.flatMap((zone): Drawing[] => {
    const x = sectionAt(face, zone);
    const scenes = [{}, ...details(face, zone, x)]
      .map((of) => verticalSection(facade, project, { face: face.id, x, ...of }))
      .filter((scene) => scene !== undefined);
    const type = message("drawing.document-type.section");
    return scenes.length === 0 ? [] : [{ name: `section-${face.id}-${zone.id}`, type, scenes }];
  });
  return [
    ...(elevation
      ? [{ name: `face-${face.id}`, type: message("drawing.document-type.set-out"), scenes: [elevation] }]
      : []),
    ...(battens
      ? [{ name: `battens-${face.id}`, type: message("drawing.document-type.battens"), scenes: [battens] }]
      : []),
    ...sections,
  ];
}

/**
 * Near the middle of the zone's first opening, whose sill and head are then seen; else near its own middle. Beside a joint
 * that stands there: a section down a joint shows no cladding.
 */
function sectionAt(face: FaceLayout, zone: ZoneLayout): number {
  const [left, right] = polygonBounds(zone.region).x;
  const through = face.openings
    .map(({ region: { x } }) => ({ x, from: Math.max(left, x[0]), to: Math.min(right, x[1]) }))
    .find(({ x, from, to }) => to - from > (x[1] - x[0]) / 2);
  const { from, to } = through ?? { from: left, to: right };
  const clad = face.pieces
    .filter((piece) => piece.zone === zone.id && (piece.kind === "board" || piece.kind === "sheet"))
    .map(({ outline }) => polygonBounds(outline).x);
  const cutBy = (x: number): number => clad.filter((span) => span[0] < x && x < span[1]).length;
  const [first = (from + to) / 2, ...others] = SHARES.map((share) => from + share * (to - from));
  return others.reduce((best, x) => (cutBy(x) > cutBy(best) ? x : best), first);
}

/** Where along an opening or zone a section may stand: the middle first. */
const SHARES: readonly number[] = [0.5, 0.42, 0.58, 0.3, 0.7];

/** Above and below an edge, as much as shows how the cladding ends there (mm). */
const BESIDE_EDGE = 250;

/** The details beside the whole section: the base, and sill and head where an opening is cut. */
function details(face: FaceLayout, zone: ZoneLayout, x: number): { y: Interval; title: Message }[] {
  const low = polygonBounds(zone.region).y[0];
  const cut = face.openings.find(({ region }) => x > region.x[0] && x < region.x[1]);
  const at = { face: heading(face.id), x };
  const edges = [
    { at: low, title: message("drawing.title.detail-base", at) },
    ...(cut
      ? [
          { at: cut.region.y[0], title: message("drawing.title.detail-sill", { ...at, opening: cut.id }) },
          { at: cut.region.y[1], title: message("drawing.title.detail-head", { ...at, opening: cut.id }) },
        ]
      : []),
  ];
  return edges
    .filter((edge, i) => edges.findIndex((other) => other.at === edge.at) === i)
    .map(({ at: y, title }) => ({ y: [y - BESIDE_EDGE, y + BESIDE_EDGE], title }));
}

const METRIC: readonly PaperName[] = ["A4", "A3", "A2", "A1", "A0"];
const NORTH_AMERICAN: readonly PaperName[] = ["letter", "tabloid", "17 × 22", "22 × 34"];

/** The first paper that takes the drawing, of the series that goes with the reader's units; else the bare drawing. */
function onPaper(
  { name, type, scenes }: Drawing,
  {
    design,
    reader,
    label,
    number,
    of,
  }: { design: Drawable; reader: Reader; label: string; number: number; of: number },
): Sheet | Scene | undefined {
  const series = reader.units === "feet-inch" ? [...NORTH_AMERICAN, ...METRIC] : METRIC;
  const size: PaperSize | undefined = fittingPaper(scenes, series);
  const viewports = size && arrange(scenes, drawingArea(size));
  const [first] = scenes;
  if (size === undefined || viewports === undefined) return first;
  const { title, revision = "" } = design.project;
  return makeSheet({
    id: name,
    size,
    titleBlock: {
      owner: "",
      identification: label,
      project: title,
      title: first?.title ?? title,
      documentType: type,
      creator: "",
      approvedBy: "",
      dateOfIssue: "",
      revision,
      sheet: { number, of },
    },
    viewports,
    cautions: [message("drawing.caution.codes"), message("drawing.caution.measure"), ...waiverTexts(design)],
  });
}

function initials(title: string): string {
  const words = title.match(/[\p{L}\p{N}]+/gu) ?? [];
  return words
    .slice(0, 4)
    .map((word) => [...word][0]?.toUpperCase() ?? "")
    .join("");
}

/** Someone answers for these: it is printed where the drawing is read. Many are counted, and stand in the findings. */
function waiverTexts({ project: { waivers = [] } }: Drawable): SceneText[] {
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

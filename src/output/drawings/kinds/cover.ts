/** The cover: the job, the index of the set, what is not settled, and who answers for what. */
import type { Finding } from "../../../findings/finding.ts";
import { blocks } from "../../../findings/finding.ts";
import { waiverOf } from "../../../project/waivers.ts";
import type { Scene } from "../../../scene/model.ts";
import { symbolOf } from "../../../scene/model.ts";
import { CAPTION_ROOM, GAP } from "../../../scene/sheet.ts";
import { tableScenes } from "../../../scene/table.ts";
import { type Paragraph, textBlock } from "../../../scene/text-block.ts";
import { type Message, message } from "../../../text/message.ts";
import type { Drawing, KindFacts, NumberedDrawing } from "../facts.ts";
import { grouped } from "../grouped.ts";
import { sheetState } from "../revision.ts";

export function coverSheets(facts: KindFacts, set: readonly NumberedDrawing[]): Drawing[] {
  const type = message("drawing.document-type.cover");
  const { room } = facts;
  const job = jobBlock(facts);
  const [low, high] = job.bounds.y;
  const firstHeight = room.height - (high - low) - CAPTION_ROOM - GAP;
  return [
    { name: "cover", type, scenes: [job, ...index({ ...facts, room: { ...room, firstHeight } }, set)] },
    { name: "changes", type: message("drawing.document-type.changes"), scenes: changes(facts) },
    { name: "open-findings", type: message("drawing.document-type.findings"), scenes: open(facts) },
  ].filter(({ scenes }) => scenes.length > 0);
}

function jobBlock({ design, room }: KindFacts): Scene {
  const { title, about, site, issued } = design.project;
  const { revision } = sheetState(design);
  const lines: Paragraph[] = [
    { text: title, height: 7, weight: "bold" },
    { text: message("drawing.cover.place", { place: site.place }), height: 3.5 },
    ...(about === undefined ? [] : [{ text: about }]),
    ...(revision === ""
      ? []
      : [{ text: message("drawing.cover.state", { revision }), weight: "bold" as const }]),
    ...(issued?.revisions ?? []).map((one) => ({
      text: message("drawing.cover.revision", { revision: one.revision, when: one.when, note: one.note }),
    })),
    { text: message("drawing.caution.codes") },
    { text: message("drawing.cover.caution") },
  ];
  return textBlock({
    id: "job",
    title: message("drawing.title.job"),
    paragraphs: lines,
    width: Math.min(room.width, 250),
  });
}

function index({ room }: KindFacts, set: readonly NumberedDrawing[]): Scene[] {
  return tableScenes({
    id: "index",
    title: message("drawing.title.index"),
    room,
    rows: set,
    columns: [
      { head: message("drawing.column.sheet"), cell: ({ number }) => String(number), align: "end" },
      {
        head: message("drawing.sheet.title"),
        cell: ({ title, name }) => ({ text: title, link: name }),
        wrap: 82,
      },
      { head: message("drawing.column.type"), cell: ({ type }) => type, wrap: 60 },
    ],
  });
}

/** What differs from the revision before, face by face; clouds stand round it on the elevations. */
function changes({ design, room }: KindFacts): Scene[] {
  const { changed, gone } = sheetState(design);
  const set = new Set(changed);
  const rows = design.facade.faces.flatMap((face) => {
    const marks = face.pieces.flatMap(({ mark }) => (set.has(mark) ? [mark] : []));
    const lost = gone.filter((mark) => mark.startsWith(face.code));
    return marks.length + lost.length === 0 ? [] : [{ face: face.id, marks, lost }];
  });
  return tableScenes({
    id: "changes",
    title: message("drawing.title.changes"),
    room,
    rows,
    columns: [
      { head: message("drawing.column.face"), cell: ({ face }) => face, bold: true },
      { head: message("drawing.column.changed"), cell: ({ marks }) => marks.join(", "), wrap: 220 },
      { head: message("drawing.column.gone"), cell: ({ lost }) => lost.join(", "), wrap: 80 },
    ],
  });
}

/** Findings of one rule that ask for attention stand in one line. */
interface OpenLine {
  readonly finding: Finding;
  readonly count: number;
  readonly places: string;
}

const PLACES_SHOWN = 6;

function open({ design: { project }, findings, room }: KindFacts): Scene[] {
  const lines: OpenLine[] = findings
    .filter(blocks)
    .map((finding) => ({ finding, count: 1, places: placesOf([finding]) }));
  const asking = grouped(
    findings.filter(({ outcome }) => outcome === "attention"),
    ({ code, says }) => `${code} ${says.key}`,
  );
  for (const group of asking.values()) {
    const [finding] = group;
    if (finding) lines.push({ finding, count: group.length, places: placesOf(group) });
  }
  return [
    ...tableScenes({
      id: "open-findings",
      title: message("drawing.title.open-findings"),
      room,
      rows: lines,
      columns: [
        { head: "", cell: ({ finding }) => outcomeCell(finding) },
        { head: message("drawing.column.rule"), cell: ({ finding }) => finding.code, bold: true },
        { head: message("drawing.column.count"), cell: ({ count }) => String(count), align: "end" },
        { head: message("drawing.column.where"), cell: ({ places }) => places, wrap: 70 },
        { head: message("drawing.column.says"), cell: ({ finding }) => finding.says, wrap: 190 },
        {
          head: message("drawing.column.answers"),
          cell: ({ finding }) => waiverOf(finding, project.waivers)?.who,
          wrap: 40,
        },
      ],
    }),
    ...waivers(project, room),
  ];
}

function outcomeCell(finding: Finding) {
  const symbol = symbolOf(finding);
  return symbol && { symbol };
}

function waivers(project: KindFacts["design"]["project"], room: KindFacts["room"]): Scene[] {
  const text = (value: string | undefined): Message | undefined =>
    value === undefined ? undefined : message("drawing.plain", { value });
  return tableScenes({
    id: "waivers",
    title: message("drawing.title.waivers"),
    room,
    rows: project.waivers ?? [],
    columns: [
      { head: message("drawing.column.rule"), cell: ({ code }) => code, bold: true },
      { head: message("drawing.column.where"), cell: ({ where }) => text(where) },
      { head: message("drawing.column.answers"), cell: ({ who }) => who },
      { head: message("drawing.sheet.date"), cell: ({ when }) => when },
      { head: message("drawing.column.why"), cell: ({ why }) => why, wrap: 180 },
    ],
  });
}

/** Faces with zone or opening, or marks, each once; the first few. */
function placesOf(group: readonly Finding[]): string {
  const places = group.map(({ where: { face, zone, opening, marks = [], path } }) => {
    const ids = [face, zone ?? opening].filter((id) => id !== undefined).join("/");
    return ids || marks[0] || path || "";
  });
  const all = [...new Set(places)].filter((place) => place !== "");
  return all.length > PLACES_SHOWN
    ? `${all.slice(0, PLACES_SHOWN).join(", ")}, +${all.length - PLACES_SHOWN}`
    : all.join(", ");
}

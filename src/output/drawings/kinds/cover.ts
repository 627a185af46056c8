/** The cover: the job, the index of the set, what is not settled, and who answers for what. */

import type { Finding } from "../../../findings/finding.ts";
import { blocks } from "../../../findings/finding.ts";
import type { Project } from "../../../project/schema/project.ts";
import { waiverOf } from "../../../project/waivers.ts";
import { placeInFile } from "../../../scene/book/place-in-file.ts";
import type { Scene, SceneText } from "../../../scene/model.ts";
import { symbolOf } from "../../../scene/model.ts";
import { CAPTION_ROOM, GAP } from "../../../scene/sheet.ts";
import { tableScenes } from "../../../scene/table.ts";
import { type Paragraph, textBlock } from "../../../scene/text-block.ts";
import { type Message, message } from "../../../text/message.ts";
import type { Drawing, KindFacts, ListedDrawing } from "../facts.ts";
import { grouped } from "../grouped.ts";
import { changedOn } from "../of-face.ts";
import { sheetState } from "../revision.ts";

type Room = Pick<KindFacts, "room">;
type Waiver = NonNullable<Project["waivers"]>[number];

export function coverSheets(facts: KindFacts, set: readonly ListedDrawing[]): Drawing[] {
  const type = message("drawing.document-type.cover");
  const { design, findings, room, memo } = facts;
  const { title, about, site, issued, waivers = [] } = design.project;
  const { revision, gone } = sheetState(design);
  const revisions = issued?.revisions ?? [];
  const job = memo.recall(jobBlock, { title, about, place: site.place, revision, revisions, room });
  const [low, high] = job.bounds.y;
  const firstHeight = room.height - (high - low) - CAPTION_ROOM - GAP;
  const rows = runsOf(set);
  const index = memo.recall(indexOf, { rows, room: { ...room, firstHeight } });
  const workings = new Map(set.flatMap(({ name, holds = [] }) => holds.map((held) => [held, name] as const)));
  const lines = findings.filter(isOpen).map((finding) => ({
    finding,
    link: workings.get(finding.code),
    place: placeOf(finding, design.project),
  }));
  const answered = waivers.map((waiver) => ({ ...waiver, place: sayWhere(waiver.where, design.project) }));
  return [
    { name: "cover", type, scenes: [job, ...index] },
    {
      name: "changes",
      type: message("drawing.document-type.changes"),
      scenes: memo.recall(changes, { rows: changesOf(facts, gone), room }),
    },
    {
      name: "open-findings",
      type: message("drawing.document-type.findings"),
      scenes: memo.recall(open, { findings: lines, waivers: answered, room }),
    },
  ].filter(({ scenes }) => scenes.length > 0);
}

interface Job extends Room, Pick<Project, "title" | "about"> {
  readonly place: string;
  readonly revision: SceneText;
  readonly revisions: NonNullable<Project["issued"]>["revisions"];
}

function jobBlock({ title, about, place, revision, revisions, room }: Job): Scene {
  const lines: Paragraph[] = [
    { text: title, height: 7, weight: "bold" },
    { text: message("drawing.cover.place", { place }), height: 3.5 },
    ...(about === undefined ? [] : [{ text: about }]),
    ...(revision === ""
      ? []
      : [{ text: message("drawing.cover.state", { revision }), weight: "bold" as const }]),
    ...revisions.map((one) => ({
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

interface Index extends Room {
  readonly rows: readonly IndexRow[];
}

interface IndexRow extends Pick<ListedDrawing, "number" | "name" | "title" | "type"> {
  /** Number of the last sheet of the run. */
  readonly to: number;
}

/** Sheets that follow one another under one title, such as the pages of a chapter, stand in one row, which leads to the first. */
function runsOf(set: readonly ListedDrawing[]): IndexRow[] {
  const rows: IndexRow[] = [];
  const titleOf = ({ title, type }: Pick<IndexRow, "title" | "type">): string =>
    JSON.stringify([title, type]);
  for (const { number, name, title, type } of set) {
    const last = rows.at(-1);
    if (last && titleOf(last) === titleOf({ title, type })) rows[rows.length - 1] = { ...last, to: number };
    else rows.push({ number, to: number, name, title, type });
  }
  return rows;
}

function indexOf({ rows, room }: Index): Scene[] {
  return tableScenes({
    id: "index",
    title: message("drawing.title.index"),
    room,
    rows,
    columns: [
      {
        head: message("drawing.column.sheet"),
        cell: ({ number, to }) => (number === to ? String(number) : `${number}–${to}`),
        align: "end",
      },
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
interface Changes extends Room {
  readonly rows: readonly {
    readonly face: string;
    readonly marks: readonly string[];
    readonly lost: readonly string[];
  }[];
}

function changesOf(facts: KindFacts, gone: readonly string[]): Changes["rows"] {
  return facts.design.facade.faces.flatMap((face) => {
    const marks = changedOn(facts, face);
    const lost = gone.filter((mark) => mark.startsWith(face.code));
    return marks.length + lost.length === 0 ? [] : [{ face: face.id, marks, lost }];
  });
}

function changes({ rows, room }: Changes): Scene[] {
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
interface OpenLine extends Linked {
  readonly count: number;
  readonly places: Message;
}

const PLACES_SHOWN = 6;

function isOpen(finding: Finding): boolean {
  return blocks(finding) || finding.outcome === "attention";
}

interface Linked {
  readonly finding: Finding;
  /** Sheet of the book where its rule is worked. */
  readonly link: string | undefined;
  readonly place: Message | undefined;
}

interface Answered extends Waiver {
  readonly place: Message | undefined;
}

interface Open extends Room {
  readonly findings: readonly Linked[];
  readonly waivers: readonly Answered[];
}

function open({ findings, waivers, room }: Open): Scene[] {
  const lines: OpenLine[] = findings
    .filter(({ finding }) => blocks(finding))
    .map((linked) => ({ ...linked, count: 1, places: placesOf([linked]) }));
  const asking = grouped(
    findings.filter(({ finding }) => finding.outcome === "attention"),
    ({ finding: { code, says } }) => `${code} ${says.key}`,
  );
  for (const group of asking.values()) {
    const [first] = group;
    if (first) lines.push({ ...first, count: group.length, places: placesOf(group) });
  }
  return [
    ...tableScenes({
      id: "open-findings",
      title: message("drawing.title.open-findings"),
      room,
      rows: lines,
      columns: [
        { head: "", cell: ({ finding }) => outcomeCell(finding) },
        { head: message("drawing.column.rule"), cell: ruleCell, bold: true },
        { head: message("drawing.column.count"), cell: ({ count }) => String(count), align: "end" },
        { head: message("drawing.column.where"), cell: ({ places }) => places, wrap: 70 },
        { head: message("drawing.column.says"), cell: ({ finding }) => finding.says, wrap: 190 },
        {
          head: message("drawing.column.answers"),
          cell: ({ finding }) => waiverOf(finding, waivers)?.who,
          wrap: 40,
        },
      ],
    }),
    ...waiverTable(waivers, room),
  ];
}

function ruleCell({ finding: { code }, link }: Linked) {
  return link === undefined ? code : { text: code, link };
}

function outcomeCell(finding: Finding) {
  const symbol = symbolOf(finding);
  return symbol && { symbol };
}

function waiverTable(waivers: readonly Answered[], room: KindFacts["room"]): Scene[] {
  return tableScenes({
    id: "waivers",
    title: message("drawing.title.waivers"),
    room,
    rows: waivers,
    columns: [
      { head: message("drawing.column.rule"), cell: ({ code }) => code, bold: true },
      { head: message("drawing.column.where"), cell: ({ place }) => place },
      { head: message("drawing.column.answers"), cell: ({ who }) => who },
      { head: message("drawing.sheet.date"), cell: ({ when }) => when },
      { head: message("drawing.column.why"), cell: ({ why }) => why, wrap: 180 },
    ],
  });
}

/** Face with zone or opening, or the first mark, or the place of the file in words. */
function placeOf({ where }: Finding, project: Project): Message | undefined {
  const { face, zone, opening, marks = [], path } = where;
  const ids = [face, zone ?? opening].filter((id) => id !== undefined).join("/");
  return sayWhere(ids || marks[0] || path, project);
}

/** @param where as a waiver names a place: a face, a zone or opening of it, a mark, or a path of the file */
function sayWhere(where: string | undefined, project: Project): Message | undefined {
  if (where === undefined) return undefined;
  return where.startsWith("/") ? placeInFile(where, project) : message("drawing.plain", { value: where });
}

/** Each place once; the first few. */
function placesOf(group: readonly Linked[]): Message {
  const byText = new Map(group.flatMap(({ place }) => (place ? [[JSON.stringify(place), place]] : [])));
  const all = [...byText.values()];
  const places = all.slice(0, PLACES_SHOWN);
  return all.length > PLACES_SHOWN
    ? message("drawing.at.places", { places, more: all.length - PLACES_SHOWN })
    : message("drawing.at.things", { things: places });
}
